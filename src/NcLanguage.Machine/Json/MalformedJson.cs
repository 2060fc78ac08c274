using System.Text;
using System.Text.Json;

namespace NcLanguage.Machine.Json;

/// <summary>Says in a reader's words why a file is not JSON: what was expected, what stands there instead. The library's own
/// messages speak of its internals and vanish in trimmed builds.</summary>
static class MalformedJson
{
    const string NameOrClose = "a name in double quotes or '}'";
    const string ValueOrClose = "a value or ']'";

    /// <summary>The fault just after the last sound token of <paramref name="progress"/>.</summary>
    public static JsonFault Explain(ReadOnlySpan<byte> bytes, ReadProgress progress)
    {
        var at = progress.TokenEnd;
        if (SkipBlank(bytes, ref at) is { } openComment)
            return openComment;

        var open = progress.Innermost;
        var close = open is { IsObject: true } ? "'}'" : "']'";
        var expected = progress.LastToken switch
        {
            JsonTokenType.None => "'{'",
            JsonTokenType.PropertyName => "a value",
            JsonTokenType.StartObject => NameOrClose,
            JsonTokenType.StartArray => ValueOrClose,
            _ when open is null => "nothing more after the closing bracket",
            _ => "',' or " + close,
        };

        // What follows a comma is expected anew: the comma itself was sound.
        if (expected.StartsWith("',' or", StringComparison.Ordinal) && at < bytes.Length && bytes[at] == ',')
        {
            at++;
            if (SkipBlank(bytes, ref at) is { } afterComma)
                return afterComma;
            expected = open is { IsObject: true } ? NameOrClose : ValueOrClose;
        }

        // The reader takes a name and its colon for one token, so a name without a colon stops it before the name.
        if (expected == NameOrClose && at < bytes.Length && bytes[at] == '"' && ExplainText(bytes, at) is null)
        {
            at = EndOfText(bytes, at, out _);
            if (SkipBlank(bytes, ref at) is { } afterName)
                return afterName;
            expected = "':' and a value";
        }

        if (at >= bytes.Length)
            return AtEnd(bytes, open, expected);
        if (bytes[at] is (byte)'{' or (byte)'[' && progress.Depth >= JsonTree.MaxDepth)
            return new JsonFault(new(at, at + 1), $"Brackets are nested more than {JsonTree.MaxDepth} deep");
        if (bytes[at] == '"' && ExplainText(bytes, at) is { } inText)
            return inText;
        var end = EndOfWord(bytes, at);
        return new JsonFault(new(at, end), $"Expected {expected}, but found {(BeginsAsObject(bytes) ? Quote(bytes[at..end]) : QuoteOne(bytes[at..]))}{Hint(bytes[at], expected)}{Before(bytes, progress, at, expected)}");
    }

    /// <summary>Whether a file is meant as one of ours: it begins with a brace, behind blanks and comments. Any file may be named in the place of one, a
    /// secret one too: of others nothing is shown but the character that is wrong.</summary>
    public static bool BeginsAsObject(ReadOnlySpan<byte> bytes)
    {
        var at = bytes.StartsWith(JsonTree.ByteOrderMark) ? JsonTree.ByteOrderMark.Length : 0;
        return SkipBlank(bytes, ref at) is null && at < bytes.Length && bytes[at] == '{';
    }

    /// <summary>What is wrong within the quoted text that starts at <paramref name="at"/>, or null when it is sound.</summary>
    public static JsonFault? ExplainText(ReadOnlySpan<byte> bytes, int at)
    {
        var end = EndOfText(bytes, at, out var closed);
        if (!closed)
            return new JsonFault(new(at, end), "The text that starts here is not closed by '\"' on its line");
        for (var i = at + 1; i < end - 1; i++)
        {
            if (bytes[i] < 0x20)
                return new JsonFault(new(i, i + 1), $"The control character 0x{bytes[i]:X2} cannot stand in text; write it as \\u{bytes[i]:x4}");
            if (bytes[i] != '\\')
                continue;
            var length = EscapeLength(bytes[i..(end - 1)], out var sound);
            if (!sound)
                return new JsonFault(new(i, i + length), $"{Encoding.UTF8.GetString(bytes.Slice(i, length))} is no character that text can hold; a backslash is written \\\\, a folder's sign /");
            i += length - 1;
        }
        return null;
    }

    static JsonFault AtEnd(ReadOnlySpan<byte> bytes, (bool IsObject, int Start)? open, string expected)
    {
        if (open is not { } bracket)
            return new JsonFault(new(0, 0), $"The file holds no value: expected {expected}");
        var line = new LineMap(bytes).At(bracket.Start).Line;
        var sign = bracket.IsObject ? '{' : '[';
        return new JsonFault(new(bytes.Length, bytes.Length), $"The file ends although the '{sign}' of line {line} is not closed: expected {expected}");
    }

    static string Hint(byte first, string expected)
    {
        if (first == '\'')
            return " (text stands in double quotes)";
        if (!expected.Contains("value", StringComparison.Ordinal))
            return "";
        if (first is (byte)'+' or (byte)'.' or (byte)'-' || char.IsAsciiDigit((char)first))
            return " (a number is written like 12, -0.5 or 3.25)";
        return char.IsAsciiLetter((char)first) ? " (text stands in double quotes; for a number that is not known write null or leave it out)" : "";
    }

    /// <summary>A missing comma is missed at the next value but belongs after the last one: names that line where it differs.</summary>
    static string Before(ReadOnlySpan<byte> bytes, ReadProgress progress, int at, string expected)
    {
        if (!expected.StartsWith("','", StringComparison.Ordinal))
            return "";
        var lines = new LineMap(bytes);
        var last = lines.At(progress.TokenEnd).Line;
        return last == lines.At(at).Line ? "" : $" (the value before it ends on line {last})";
    }

    static string QuoteOne(ReadOnlySpan<byte> rest)
    {
        Rune.DecodeFromUtf8(rest, out var one, out _);
        return $"'{one}'";
    }

    static string Quote(ReadOnlySpan<byte> word)
    {
        // More than any message shows of it: a file of one long word is not decoded for that.
        const int most = 1024;
        var text = MessageText.Clip(Encoding.UTF8.GetString(word[..Math.Min(word.Length, most)]));
        return text.StartsWith('"') ? text : $"'{text}'";
    }

    static int EscapeLength(ReadOnlySpan<byte> escape, out bool sound)
    {
        const int unicodeLength = 6;
        if (escape.Length < 2 || escape[1] != 'u')
        {
            sound = escape.Length >= 2 && "\"\\/bfnrt"u8.Contains(escape[1]);
            return Math.Min(2, escape.Length);
        }
        var unit = CodeUnit(escape);
        var next = escape.Length > unicodeLength && escape[unicodeLength] == '\\' ? CodeUnit(escape[unicodeLength..]) : null;
        if (unit is { } high && next is { } low && char.IsHighSurrogate((char)high) && char.IsLowSurrogate((char)low))
        {
            sound = true;
            return 2 * unicodeLength;
        }
        sound = unit is { } single && !char.IsSurrogate((char)single);
        return Math.Min(unicodeLength, escape.Length);
    }

    static int? CodeUnit(ReadOnlySpan<byte> escape) =>
        escape.Length >= 6 && escape[1] == 'u'
        && int.TryParse(escape.Slice(2, 4), System.Globalization.NumberStyles.AllowHexSpecifier, null, out var unit) ? unit : null;

    /// <summary>Moves behind white space and comments; a comment that never ends is the fault.</summary>
    static JsonFault? SkipBlank(ReadOnlySpan<byte> bytes, ref int at)
    {
        while (at < bytes.Length)
        {
            var rest = bytes[at..];
            if (rest[0] is (byte)' ' or (byte)'\t' or (byte)'\r' or (byte)'\n')
            {
                at++;
            }
            else if (rest.StartsWith("//"u8))
            {
                var length = rest.IndexOfAny((byte)'\n', (byte)'\r');
                at = length < 0 ? bytes.Length : at + length;
            }
            else if (rest.StartsWith("/*"u8))
            {
                var length = rest[2..].IndexOf("*/"u8);
                if (length < 0)
                    return new JsonFault(new(at, at + 2), "The comment that starts here with /* is not closed by */");
                at += length + 4;
            }
            else
            {
                break;
            }
        }
        return null;
    }

    static int EndOfText(ReadOnlySpan<byte> bytes, int at, out bool closed)
    {
        closed = false;
        var i = at + 1;
        for (; i < bytes.Length && bytes[i] is not ((byte)'\n' or (byte)'\r'); i++)
        {
            if (bytes[i] == '"')
            {
                closed = true;
                return i + 1;
            }
            if (bytes[i] == '\\' && i + 1 < bytes.Length && bytes[i + 1] is not ((byte)'\n' or (byte)'\r'))
                i++;
        }
        return i;
    }

    static int EndOfWord(ReadOnlySpan<byte> bytes, int at)
    {
        if (bytes[at] == '"')
            return EndOfText(bytes, at, out _);
        var i = at;
        while (i < bytes.Length && bytes[i] > ' ' && !",:{}[]\"/"u8.Contains(bytes[i]))
            i++;
        return Math.Max(i, at + 1);
    }
}
