namespace NcLanguage.Machine.Json;

/// <summary>Text of a file or a path as messages quote it.</summary>
static class MessageText
{
    /// <summary>Characters of it that are shown, in UTF-16 code units.</summary>
    const int Shown = 40;

    /// <summary>The text short enough, and free of control characters, for one line of a message.</summary>
    public static string Clip(string text)
    {
        // A character of two code units is shown whole or not at all.
        var end = text.Length <= Shown ? text.Length : char.IsHighSurrogate(text[Shown - 1]) ? Shown - 1 : Shown;
        string oneLine = new([.. text.Take(end).Select(c => char.IsControl(c) ? '·' : c)]);
        return text.Length > Shown ? oneLine + "…" : oneLine;
    }

    /// <summary>As a sentence begins.</summary>
    public static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
