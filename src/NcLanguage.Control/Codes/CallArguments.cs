namespace NcLanguage.Control.Codes;

/// <summary>Which local variable of the program called each word of a call (G65) becomes: every letter but G, L, N, O and P (common practice).</summary>
public static class CallArguments
{
    const string ByNumber = "ABCIJKDEF_H_M___QRSTUVWXYZ";

    /// <summary>The letters that become variables, A to Z.</summary>
    public static IEnumerable<char> Letters => ByNumber.Where(char.IsLetter).Order();

    /// <summary>The number of the variable, from 1; 0 for a letter that becomes none.</summary>
    /// <param name="letter">Upper case.</param>
    public static int NumberOf(char letter) => letter == '_' ? 0 : ByNumber.IndexOf(letter, StringComparison.Ordinal) + 1;

    /// <summary>The letter that becomes a variable; '\0' where none does.</summary>
    /// <param name="number">From 1.</param>
    public static char LetterOf(double number) => number is >= 1 and <= 26 && ByNumber[(int)number - 1] is var letter and not '_' ? letter : '\0';
}
