namespace NcLanguage.Reports.Explain;

/// <summary>Names as parts of file names.</summary>
static class Slug
{
    /// <summary>Letters, digits and points as they are, all between them as one hyphen.</summary>
    public static string Of(string text) =>
        string.Join('-', new string([.. text.Select(letter => char.IsAsciiLetterOrDigit(letter) || letter == '.' ? letter : ' ')])
            .Split(' ', StringSplitOptions.RemoveEmptyEntries));
}
