using System.Globalization;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Codes;
using NcLanguage.Control.State;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Editing;

/// <summary>How the blocks above write their words, so that what is put in looks like them.</summary>
/// <param name="IsLower">Letters are small.</param>
/// <param name="HasPoints">Whole lengths have a decimal point.</param>
/// <param name="Padded">Letters, as bits, whose one-digit numbers are written with two: G01, M03.</param>
/// <param name="IsInch">The unit in force.</param>
readonly record struct WritingStyle(bool IsLower, bool HasPoints, uint Padded, bool IsInch)
{
    /// <summary>Blocks above that are looked at.</summary>
    const int LinesAbove = 100;

    /// <summary>The style above a line (0-based).</summary>
    public static WritingStyle Above(ProgramAnalysis analysis, int line, LengthUnit unit)
    {
        var (lower, upper, points, wholes) = (0, 0, 0, 0);
        uint padded = 0, plain = 0;
        for (var at = Math.Max(0, line - LinesAbove); at < line; at++)
        {
            var block = analysis.Main.BlockAt(at);
            foreach (ref readonly var token in block.Tokens)
            {
                if (token.Kind != Syntax.Lexing.TokenKind.Word || token.Letter == ':')
                    continue;
                _ = block.Line[token.Start] >= 'a' ? lower++ : upper++;
                if (token.IsExpression || token.Value != Math.Floor(token.Value))
                    continue;
                if ((char)token.Letter is 'X' or 'Y' or 'Z' or 'R' or 'I' or 'J' or 'Q')
                    _ = token.HasPoint ? points++ : wholes++;
                else if (token.Value is >= 0 and < 10)
                    _ = block.Line[token.ValueStart] == '0' && token.End - token.ValueStart == 2 ? padded |= Bit((char)token.Letter) : plain |= Bit((char)token.Letter);
            }
        }
        // Of a letter not seen yet the other code letter tells.
        foreach (var (one, other) in new[] { ('G', 'M'), ('M', 'G'), ('T', 'M') })
            if (((padded | plain) & Bit(one)) == 0)
                padded |= (padded & Bit(other)) != 0 ? Bit(one) : 0;
        var asksForPoints = analysis.Machine.Readings.Integers == IntegerReading.Increments;
        return new WritingStyle(lower > upper, asksForPoints || points > wholes, padded, unit == LengthUnit.Inch);
    }

    /// <summary>A code as the program writes it: G1, G01, g1.</summary>
    public string Code(CodeEntry code) => code.Tenths < 100 && code.Tenths % 10 == 0 ? Whole(code.Letter, code.Tenths / 10) : Case(code.Text);

    /// <summary>A word with a whole number that counts or names: T4, T04.</summary>
    public string Whole(char letter, int number) =>
        Case(letter + number.ToString((Padded & Bit(letter)) != 0 ? "00" : "0", CultureInfo.InvariantCulture));

    /// <summary>A word of a length, mm.</summary>
    public string Length(char letter, double mm) => Case(letter + LengthNumber(mm));

    /// <summary>The number of a length, mm, in the unit of the program.</summary>
    public string LengthNumber(double mm)
    {
        var text = new LengthText(IsInch).Number(mm);
        return HasPoints ? Say.WithPoint(text) : text;
    }

    /// <summary>Letters as the program has them.</summary>
    public string Case(string text) => IsLower ? text.ToLowerInvariant() : text;

    static uint Bit(char letter) => 1u << (letter - 'A');
}
