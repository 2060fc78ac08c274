using System.Buffers;
using System.Buffers.Text;
using NcLanguage.Server.Protocol;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Server.Rpc;

/// <summary>The texts of large programs, taken out of their messages before those are read: the library goes through a string with escapes byte by byte and more than once,
/// and an escape ends every line. What stands in a text's place is resolved when the message's parameters are read, which is before the next message is.</summary>
sealed class LongTexts
{
    /// <summary>Shorter messages are read as they are, bytes.</summary>
    const int LongMessage = 16 * 1024;

    /// <summary>Shorter strings stay where they are, bytes.</summary>
    const int LongString = 4 * 1024;

    // What no reader takes for anything but a sign: it is taken as one only where this message has lost a text of that number.
    static ReadOnlySpan<byte> Sign => "\\u0000text "u8;

    static readonly SearchValues<byte> EndsOrOdd = SearchValues.Create([(byte)'"', (byte)'\\', .. Enumerable.Range(0, 0x20).Select(control => (byte)control)]);

    readonly List<SourceText> _texts = [];

    /// <summary>The message with a sign in the place of each long text that is opened or changed; as it was where it has none, or something about it is odd.</summary>
    public byte[] TakeFrom(byte[] message)
    {
        _texts.Clear();
        if (message.Length < LongMessage)
            return message;
        var scan = new Scan(message);
        while (scan.Next())
        {
            // Odd, and the library says best what is wrong with it.
            if (scan.Value.StartsWith(Sign))
                return message;
        }
        if (scan.IsOdd || !scan.BringsText)
            return message;
        foreach ((var start, var end) in scan.Long)
        {
            var text = new SourceTextBuilder();
            if (!JsonText.TryUnescape(message.AsSpan(start, end - start), text))
            {
                _texts.Clear();
                return message;
            }
            _texts.Add(text.Build());
        }
        return _texts.Count == 0 ? message : WithSigns(message, scan.Long);
    }

    /// <summary>The text whose place this string keeps; null where it is a text itself.</summary>
    /// <param name="raw">The string as it stands in the message.</param>
    public SourceText? TextOf(ReadOnlySpan<byte> raw) =>
        raw.StartsWith(Sign) && Utf8Parser.TryParse(raw[Sign.Length..], out int number, out var used) && used == raw.Length - Sign.Length && number >= 0 && number < _texts.Count
            ? _texts[number]
            : null;

    static byte[] WithSigns(byte[] message, List<(int Start, int End)> texts)
    {
        var rest = new ArrayBufferWriter<byte>(1024);
        var from = 0;
        for (var i = 0; i < texts.Count; i++)
        {
            rest.Write(message.AsSpan(from, texts[i].Start - from));
            rest.Write(Sign);
            Utf8Formatter.TryFormat(i, rest.GetSpan(11), out var digits);
            rest.Advance(digits);
            from = texts[i].End;
        }
        rest.Write(message.AsSpan(from));
        return rest.WrittenSpan.ToArray();
    }

    /// <summary>Goes through a message from string to string.</summary>
    ref struct Scan(byte[] message)
    {
        int _at;
        int _nameStart;
        int _nameEnd;

        /// <summary>The string it stands at, without its quotes, as it was sent.</summary>
        public ReadOnlySpan<byte> Value { get; private set; }

        /// <summary>Whether the message ends within a string, or has in one what may not stand there.</summary>
        public bool IsOdd { get; private set; }

        /// <summary>Whether it is one of the messages that bring texts.</summary>
        public bool BringsText { get; private set; }

        /// <summary>Where long texts begin and end.</summary>
        public List<(int Start, int End)> Long { get; } = [];

        public bool Next()
        {
            var quote = message.AsSpan(_at).IndexOf((byte)'"');
            if (quote < 0)
                return false;
            var start = _at + quote + 1;
            var end = EndOf(start);
            if (end < 0)
            {
                IsOdd = true;
                return false;
            }
            Value = message.AsSpan(start, end - start);
            var isValue = message.AsSpan(_at, quote).Contains((byte)':');
            ReadOnlySpan<byte> name = isValue ? message.AsSpan(_nameStart, _nameEnd - _nameStart) : default;
            if (name.SequenceEqual("method"u8))
                BringsText |= Value.SequenceEqual("textDocument/didOpen"u8) || Value.SequenceEqual("textDocument/didChange"u8);
            else if (name.SequenceEqual("text"u8) && Value.Length >= LongString)
                Long.Add((start, end));
            (_nameStart, _nameEnd) = (start, end);
            _at = end + 1;
            return true;
        }

        readonly int EndOf(int start)
        {
            for (var at = start; at < message.Length;)
            {
                var found = message.AsSpan(at).IndexOfAny(EndsOrOdd);
                if (found < 0)
                    return -1;
                at += found;
                if (message[at] == '"')
                    return at;
                if (message[at] != '\\')
                    return -1;
                at += 2;
            }
            return -1;
        }
    }
}
