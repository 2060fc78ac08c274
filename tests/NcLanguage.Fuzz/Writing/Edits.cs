using System.Text;
using NcLanguage.Fuzz.Cases;
using NcLanguage.Fuzz.Running;

namespace NcLanguage.Fuzz.Writing;

/// <summary>Programs with edits as they are typed, pasted and cut.</summary>
static class Edits
{
    const string Keys = "GXYZRPQFSTMNIJKLO0123456789.-+#[]()%/; \r\n\n=";

    /// <summary>Lines of a program that is shown before all of it has run.</summary>
    const int Large = 5000;

    public static FuzzCase Of(Dice dice)
    {
        if (dice.OneIn(40))
            return OfLarge(dice);
        var of = dice.OneIn(4) ? Programs.Near(dice) : Programs.Long(dice);
        var at = dice.Below(of.Program.Length + 1);
        for (var count = dice.From(1, 8); count > 0; count--)
        {
            var edit = Edit(dice, of.Program.Length, at);
            at = edit.At + edit.Text.Length;
            of = of with { Edits = of.Edits.Add(edit) };
        }
        return of;
    }

    static FuzzCase OfLarge(Dice dice)
    {
        var of = Programs.Near(dice);
        // Blocks that steer are left out: a program with loops is run whole.
        var once = Programs.Lines(of.Program).Where(line => line.AsSpan().IndexOfAny("%O#[]") < 0 && !line.Contains("M30", StringComparison.Ordinal) && !line.Contains("M9", StringComparison.Ordinal)).Append("G0 Z50").ToList();
        of = of with { Program = Programs.Join([.. Enumerable.Repeat(once, 1 + Large / once.Count).SelectMany(lines => lines)], dice) };
        return of with { Edits = [new CaseEdit(dice.OneIn(2) ? dice.Below(200) : dice.Below(of.Program.Length), dice.Few(40), Encoding.UTF8.GetBytes("\n" + Blocks.Words(dice) + "\n"))] };
    }

    static CaseEdit Edit(Dice dice, int length, int near)
    {
        // Most keys are struck where the last one was.
        var at = dice.OneIn(2) ? near : dice.Below(length + 1);
        return dice.Below(9) switch
        {
            < 3 => new CaseEdit(at, 0, [(byte)Keys[dice.Below(Keys.Length)]]),
            3 => new CaseEdit(at, 1, []),
            4 => new CaseEdit(at, dice.Few(200), Encoding.UTF8.GetBytes(Blocks.Any(dice) + "\n")),
            5 => new CaseEdit(at, 0, Encoding.UTF8.GetBytes(string.Join('\n', Enumerable.Range(0, dice.From(1, 1 + dice.Few(300))).Select(_ => Blocks.Any(dice))) + "\n")),
            6 => new CaseEdit(at, dice.Few(8000), []),
            7 => new CaseEdit(at, dice.Below(4), dice.Of<byte[]>(["G91"u8.ToArray(), "\r\n"u8.ToArray(), "\r"u8.ToArray(), "\n"u8.ToArray(), "("u8.ToArray(), ")"u8.ToArray(), "%"u8.ToArray(), "M30\n"u8.ToArray(), "G41 "u8.ToArray(), "/"u8.ToArray(), [0xC3], [0]])),
            _ => new CaseEdit(0, dice.OneIn(2) ? 0 : 300, Encoding.UTF8.GetBytes(Blocks.Any(dice) + "\n")),
        };
    }
}
