using System.Collections.Immutable;
using System.Text;
using System.Text.Json;

namespace NcLanguage.Editing;

/// <summary>Where a cursor stands in a JSON text, however unfinished the text is: comments are passed over, nothing has to be closed.</summary>
/// <param name="Path">The members that lead to the place; an entry of a list is "[]". For a member's name the object it belongs to.</param>
/// <param name="IsName">Whether a member's name stands or may stand there.</param>
/// <param name="IsValue">Whether a value stands or may stand there.</param>
/// <param name="Start">Byte offset where what stands there begins, its opening quote included; the cursor where nothing does.</param>
/// <param name="End">Byte offset behind it.</param>
/// <param name="Text">What stands there, without quotes and escapes.</param>
/// <param name="Names">Names of all members of the innermost object, that at the cursor left out.</param>
/// <param name="HasColon">Whether a colon follows the name.</param>
sealed record JsonCursor(
    ImmutableArray<string> Path, bool IsName, bool IsValue, int Start, int End, string Text, ImmutableHashSet<string> Names, bool HasColon)
{
    public const string Entry = "[]";

    /// <summary>Byte offset where a comma is missing before the place, behind the value that ends there; −1 where none is.</summary>
    public int CommaAt { get; init; } = -1;

    /// <summary>Whether a comma is missing behind the place: something else begins there.</summary>
    public bool NeedsCommaBehind { get; init; }

    sealed class Level(bool isObject, int start)
    {
        public bool IsObject => isObject;

        /// <summary>Offset of the bracket, by which the level is known again.</summary>
        public int Start => start;

        /// <summary>The member whose value is next; null where a name is next.</summary>
        public string? Name { get; set; }

        /// <summary>Whether a value stands there since the last comma.</summary>
        public bool HasValue { get; set; }

        public List<string> Names { get; } = [];

        /// <summary>Whether a name is next: behind a value too, where only the comma is missing.</summary>
        public bool TakesName => IsObject && (Name is null || HasValue);

        public void Begin() => (Name, HasValue) = (null, false);
    }

    /// <param name="text">The whole text.</param>
    /// <param name="offset">Byte offset of the cursor.</param>
    public static JsonCursor At(ReadOnlySpan<byte> text, int offset)
    {
        var levels = new Stack<Level>();
        JsonCursor? found = null;
        Level? within = null;
        var (at, endOfValue) = (0, -1);
        while (at < text.Length && (found is null || levels.Contains(within!)))
        {
            var start = at;
            var c = text[at];
            if (c == '/' && at + 1 < text.Length && text[at + 1] is (byte)'/' or (byte)'*')
            {
                at = EndOfComment(text, at);
                // Behind // the comment goes on to where the line ends.
                if (offset > start && (offset < at || (offset == at && text[start + 1] == '/')))
                    return Nowhere(offset);
                continue;
            }
            if (c == '"' || IsBare(c))
            {
                at = c == '"' ? EndOfString(text, at) : EndOfBare(text, at);
                var content = c == '"' ? ContentOf(text, start, at) : Encoding.UTF8.GetString(text[start..at]);
                var level = levels.Count > 0 ? levels.Peek() : null;
                var isName = level is { TakesName: true };
                var comma = level is { HasValue: true } ? endOfValue : -1;
                if (isName)
                    level!.Begin();
                if (found is null && offset >= start && offset <= at)
                    (found, within) = (Place(levels, isName, start, at, content) with { HasColon = Colon(text, at), CommaAt = comma, NeedsCommaBehind = Begins(text, at) }, level);
                else if (isName)
                    level!.Names.Add(content);
                if (isName)
                    level!.Name = content;
                else if (level is not null)
                    (level.HasValue, endOfValue) = (true, at);
                continue;
            }
            if (found is null && offset <= start)
                (found, within) = Blank(text, levels, offset, endOfValue);
            at++;
            switch (c)
            {
                case (byte)'{' or (byte)'[':
                    if (levels.TryPeek(out var outer))
                        outer.HasValue = true;
                    levels.Push(new Level(c == '{', start));
                    break;
                case (byte)'}' or (byte)']':
                    if (found is not null && within is not null && levels.TryPeek(out var closed) && closed == within)
                        return found with { Names = [.. within.Names] };
                    levels.TryPop(out _);
                    endOfValue = at;
                    break;
                case (byte)',':
                    if (levels.TryPeek(out var level))
                        level.Begin();
                    break;
            }
        }
        if (found is null)
            (found, within) = Blank(text, levels, offset, endOfValue);
        return found with { Names = within is null ? [] : [.. within.Names] };
    }

    /// <summary>Whether a text holds nothing but blanks and comments.</summary>
    public static bool IsBlank(ReadOnlySpan<byte> text)
    {
        for (var at = 0; at < text.Length;)
        {
            if (text[at] == '/' && at + 1 < text.Length && text[at + 1] is (byte)'/' or (byte)'*')
                at = EndOfComment(text, at);
            else if (text[at] is (byte)' ' or (byte)'\t' or (byte)'\r' or (byte)'\n' or 0xEF or 0xBB or 0xBF)
                at++;
            else
                return false;
        }
        return true;
    }

    static JsonCursor Nowhere(int offset) => new([], false, false, offset, offset, "", [], false);

    static JsonCursor Place(Stack<Level> levels, bool isName, int start, int end, string text)
    {
        var path = ImmutableArray.CreateBuilder<string>();
        foreach (var level in levels.Reverse())
            if (!level.IsObject)
                path.Add(Entry);
            else if (level.Name is { } name)
                path.Add(name);
        return new JsonCursor(path.ToImmutable(), isName, !isName, start, end, text, [], false);
    }

    /// <summary>The place of a cursor that stands on nothing.</summary>
    static (JsonCursor, Level?) Blank(ReadOnlySpan<byte> text, Stack<Level> levels, int offset, int endOfValue)
    {
        var level = levels.Count > 0 ? levels.Peek() : null;
        var comma = level is { HasValue: true } ? endOfValue : -1;
        var isName = level is { TakesName: true };
        if (isName)
            level!.Begin();
        return (Place(levels, isName, offset, offset, "") with { CommaAt = comma, NeedsCommaBehind = level is not null && Begins(text, offset) }, level);
    }

    /// <summary>Whether a name or value begins behind a place, so that a comma belongs between.</summary>
    static bool Begins(ReadOnlySpan<byte> text, int at)
    {
        while (at < text.Length)
        {
            var c = text[at];
            if (c is (byte)' ' or (byte)'\t' or (byte)'\r' or (byte)'\n')
                at++;
            else if (c == '/' && at + 1 < text.Length && text[at + 1] is (byte)'/' or (byte)'*')
                at = EndOfComment(text, at);
            else
                return c is (byte)'"' or (byte)'{' or (byte)'[' || IsBare(c);
        }
        return false;
    }

    static bool Colon(ReadOnlySpan<byte> text, int at)
    {
        while (at < text.Length && text[at] is (byte)' ' or (byte)'\t' or (byte)'\r' or (byte)'\n')
            at++;
        return at < text.Length && text[at] == ':';
    }

    static bool IsBare(byte c) => (uint)((c | 0x20) - 'a') < 26 || (uint)(c - '0') <= 9 || c is (byte)'-' or (byte)'+' or (byte)'.' or (byte)'_' or (byte)'#' or >= 0x80;

    static int EndOfBare(ReadOnlySpan<byte> text, int at)
    {
        while (at < text.Length && IsBare(text[at]))
            at++;
        return at;
    }

    // A string that is never closed ends with its line.
    static int EndOfString(ReadOnlySpan<byte> text, int at)
    {
        for (at++; at < text.Length && text[at] is not ((byte)'\n' or (byte)'\r'); at++)
        {
            if (text[at] == '"')
                return at + 1;
            if (text[at] == '\\')
                at++;
        }
        return Math.Min(at, text.Length);
    }

    /// <summary>The content of a string; where it is never closed, or holds an escape that says nothing, as it is written.</summary>
    static string ContentOf(ReadOnlySpan<byte> text, int start, int end)
    {
        var isClosed = end - start >= 2 && text[end - 1] == '"';
        var inside = text[(start + 1)..(isClosed ? end - 1 : end)];
        if (isClosed && inside.Contains((byte)'\\'))
        {
            var reader = new Utf8JsonReader(text[start..end]);
            try
            {
                return reader.Read() ? reader.GetString()! : "";
            }
            catch (Exception e) when (e is JsonException or InvalidOperationException)
            {
                // It is being written, or is no text: half of a character, bytes that are no UTF-8.
            }
        }
        return Encoding.UTF8.GetString(inside);
    }

    static int EndOfComment(ReadOnlySpan<byte> text, int at)
    {
        var rest = text[(at + 2)..];
        var length = text[at + 1] == '/' ? rest.IndexOfAny((byte)'\n', (byte)'\r') : rest.IndexOf("*/"u8) is >= 0 and var end ? end + 2 : -1;
        return length < 0 ? text.Length : at + 2 + length;
    }
}
