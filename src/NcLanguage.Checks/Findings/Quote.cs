using System.Text;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Checks;

/// <summary>Pieces of a program as messages quote them.</summary>
public static class Quote
{
    const int Longest = 24;

    /// <summary>A word as it stands in the program, in upper case and without blanks inside: "X12.5", "G81".</summary>
    public static string Word(in Block block, in Token token) =>
        Text(block.TextOf(token)).Replace(" ", "", StringComparison.Ordinal).ToUpperInvariant();

    /// <summary>The first control character among the bytes, which no quotation can show: "the control character 00 (hexadecimal)"; null where there is none.</summary>
    public static string? ControlCharacter(ReadOnlySpan<byte> bytes)
    {
        foreach (var one in bytes)
            if (one is < (byte)' ' and not (byte)'\t' or 0x7F)
                return FormattableString.Invariant($"the control character {one:X2} (hexadecimal)");
        return null;
    }

    /// <summary>Bytes of a program: what cannot be shown becomes a mark, what is long is cut short.</summary>
    public static string Text(ReadOnlySpan<byte> bytes)
    {
        var text = new StringBuilder();
        foreach (var rune in Encoding.UTF8.GetString(bytes.Length > 4 * Longest ? bytes[..(4 * Longest)] : bytes).EnumerateRunes())
        {
            if (text.Length >= Longest)
                return text.Append('…').ToString();
            if (rune.Value == '\t')
                text.Append(' ');
            else
                text.Append(Rune.IsControl(rune) ? Rune.ReplacementChar.ToString() : rune.ToString());
        }
        return text.ToString();
    }
}
