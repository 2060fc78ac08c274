namespace NcLanguage.Server.Logging;

/// <summary>Names and sentences that a client sent, as a message repeats them: the middle of a long one is left out, since nobody knows how long they are.</summary>
static class Excerpt
{
    /// <summary>UTF-16 units that are told of a name at most: of a method, a document, a command.</summary>
    public const int LongestName = 200;

    /// <summary>UTF-16 units that a message has at most; it may name several.</summary>
    public const int LongestMessage = 1000;

    public static string OfName(string name) => Of(name, LongestName);

    public static string OfMessage(string message) => Of(message, LongestMessage);

    static string Of(string text, int longest)
    {
        if (text.Length <= longest)
            return text;
        var (head, tail) = (longest / 2, text.Length - (longest - 1) / 2);
        // No half of a pair is left: it stands for nothing.
        if (char.IsHighSurrogate(text[head - 1]))
            head--;
        if (char.IsLowSurrogate(text[tail]))
            tail++;
        return $"{text.AsSpan(0, head)}…{text.AsSpan(tail)}";
    }
}
