using System.Globalization;
using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Checks.Rules;

/// <summary>How a program writes its block numbers.</summary>
static class BlockNumbering
{
    /// <summary>Greatest block number (NISTIR 6556 §3.3.1: five digits).</summary>
    public const int Greatest = 99999;

    const int MostDigits = 5;

    const int UsualStep = 10;

    /// <summary>How far to look back for the step between numbers, lines.</summary>
    const int LinesBack = 50;

    /// <summary>A number in as many digits as its neighbours have, where they are written with leading zeros.</summary>
    public static string Digits(int number, int width, bool padded)
    {
        var digits = number.ToString(CultureInfo.InvariantCulture);
        return padded ? digits.PadLeft(Math.Min(width, MostDigits), '0') : digits;
    }

    /// <summary>True when the numbers of each program of the file rise throughout, which its chunks tell without a look at each number.</summary>
    public static bool Rises(ProgramRun run)
    {
        var last = -1;
        foreach (var text in run.Texts)
        {
            var range = text.NumberRange;
            if (!range.Rises || (range.First >= 0 && range.First <= last))
                return false;
            if (range.BeginsProgram || range.Last >= 0)
                last = range.Last;
        }
        return true;
    }

    /// <summary>The N word of a block that has one.</summary>
    public static Token NumberToken(in Block block) => block.Tokens[block.NumberIndex];

    /// <summary>Another number for the block on a line (0-based), written as the one it has.</summary>
    public static Edit Renumber(ProgramRun run, int line, int number)
    {
        var block = run.BlockAt(line);
        var token = NumberToken(block);
        var digits = Digits(number, token.End - token.ValueStart, block.Line[token.ValueStart] == '0');
        return new Edit(line, token.Start, token.End, Encoding.ASCII.GetString(block.Line[token.Start..token.ValueStart]) + digits);
    }

    /// <summary>The N word and blank that a block put in after a line (0-based) would have; empty where that line has no number, and where
    /// none is left.</summary>
    public static string NumberAfter(ProgramRun run, int line)
    {
        var block = run.BlockAt(line);
        if (Number(block) is not { } last)
            return "";
        var step = UsualStep;
        for (var back = line - 1; back >= Math.Max(0, line - LinesBack); back--)
        {
            if (Number(run.BlockAt(back)) is not { } before)
                continue;
            step = last > before ? last - before : UsualStep;
            break;
        }
        if (run.FreeNumbers.Behind(line, last, last + step) is not { } number)
            return "";
        var token = block.Tokens[block.NumberIndex];
        var letter = Encoding.ASCII.GetString(block.Line[token.Start..token.ValueStart]);
        var blank = block.Line.Length > token.End && block.Line[token.End] is (byte)' ' or (byte)'\t' ? " " : "";
        return letter + Digits(number, token.End - token.ValueStart, block.Line[token.ValueStart] == '0') + blank;
    }

    static int? Number(in Block block) =>
        block.NumberIndex is >= 0 and var at && block.Tokens[at].Value is >= 0 and <= Greatest and var value ? (int)value : null;
}
