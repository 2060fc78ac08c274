using System.Text.Json;

namespace NcLanguage.Machine.Json;

/// <summary>How far a read has come: the last sound token and the brackets still open. It tells what was expected when the read stops.</summary>
sealed class ReadProgress
{
    readonly int _skipped;
    readonly Stack<(bool IsObject, int Start)> _open = new();

    /// <param name="skipped">Bytes before the reader's first, which its own offsets do not count.</param>
    public ReadProgress(int skipped) => (_skipped, TokenStart, TokenEnd) = (skipped, skipped, skipped);

    public JsonTokenType LastToken { get; private set; } = JsonTokenType.None;

    /// <summary>Byte offset in the file of the last sound token.</summary>
    public int TokenStart { get; private set; }

    /// <summary>Byte offset in the file just after the last sound token.</summary>
    public int TokenEnd { get; private set; }

    /// <summary>How many brackets are open.</summary>
    public int Depth => _open.Count;

    /// <summary>The innermost open bracket, or null outside all.</summary>
    public (bool IsObject, int Start)? Innermost => _open.TryPeek(out var open) ? open : null;

    public void Note(JsonTokenType token, int start, int end)
    {
        LastToken = token;
        TokenStart = start + _skipped;
        TokenEnd = end + _skipped;
        if (token is JsonTokenType.StartObject or JsonTokenType.StartArray)
            _open.Push((token == JsonTokenType.StartObject, TokenStart));
        else if (token is JsonTokenType.EndObject or JsonTokenType.EndArray)
            _open.Pop();
    }
}
