using System.Globalization;
using NcLanguage.Checks;
using NcLanguage.Control.State;
using NcLanguage.Machine.Profiles;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing.Refactorings;

/// <summary>The numbers of words, in the way a program writes them.</summary>
/// <param name="HasPoints">Whether a whole number has a point: where the control asks for one, and where the program does so anyway.</param>
/// <param name="IsLower">Whether address letters are small ones.</param>
readonly record struct WordNumber(bool HasPoints, bool IsLower)
{
    /// <summary>More decimals than any control takes up: what is finer is rounding.</summary>
    const int MostDecimals = 6;

    const double Rounding = 1e-7;

    /// <summary>The way of a program: that of its first whole length.</summary>
    public static WordNumber Of(SourceText text, Readings readings)
    {
        const int LinesToLookAt = 2000;
        bool? hasPoints = null, isLower = null;
        for (var line = 0; line < text.LineCount && line < LinesToLookAt && (hasPoints is null || isLower is null); line++)
        {
            var block = text.BlockAt(line);
            foreach (ref readonly var token in block.Tokens)
            {
                if (token.Kind != TokenKind.Word || token.Letter == ':')
                    continue;
                isLower ??= block.Line[token.Start] >= 'a';
                if (token.Letter is (byte)'X' or (byte)'Y' or (byte)'Z' && !token.IsExpression && token.Value != 0 && token.Value == Math.Truncate(token.Value))
                    hasPoints ??= token.HasPoint;
            }
        }
        return new WordNumber(readings.Integers == IntegerReading.Increments || hasPoints == true, isLower == true);
    }

    /// <summary>X12.5</summary>
    /// <param name="value">In the unit of the program.</param>
    public string Word(char letter, double value) => Letter(letter) + Number(value);

    public string Letter(char letter) => (IsLower ? char.ToLowerInvariant(letter) : letter).ToString();

    /// <summary>A code such as G90, in the program's case.</summary>
    public string Code(string code) => IsLower ? code.ToLowerInvariant() : code;

    /// <summary>A number of a length with four decimals, or six where four would not say it.</summary>
    public string Number(double value) => Number(value, Math.Abs(Math.Round(value, 4) - value) < Rounding ? 4 : MostDecimals, HasPoints);

    /// <summary>A number with up to that many decimals.</summary>
    public static string Number(double value, int decimals, bool hasPoint)
    {
        // Not minus nought.
        var text = (Math.Round(value, decimals, MidpointRounding.AwayFromZero) + 0.0).ToString("0.##########", CultureInfo.InvariantCulture);
        return hasPoint ? Say.WithPoint(text) : text;
    }
}
