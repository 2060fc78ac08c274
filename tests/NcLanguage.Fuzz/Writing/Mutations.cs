using System.Globalization;
using System.Text.RegularExpressions;
using NcLanguage.Fuzz.Running;

namespace NcLanguage.Fuzz.Writing;

/// <summary>Changes to the lines of a program that know its grammar.</summary>
static partial class Mutations
{
    /// <summary>A change by chance, in place.</summary>
    public static void Apply(List<string> lines, Dice dice)
    {
        if (lines.Count == 0)
            lines.Add("");
        var at = dice.Below(lines.Count);
        switch (dice.Below(21))
        {
            case 0:
                SwapWords(lines, at, dice.OneIn(2) ? at : dice.Below(lines.Count), dice);
                break;
            case 1:
                lines.InsertRange(dice.Below(lines.Count + 1), Some(lines, at, dice));
                break;
            case 2:
                lines.RemoveRange(at, Math.Min(dice.From(1, 4), lines.Count - at));
                break;
            case 3:
                var moved = Some(lines, at, dice);
                lines.RemoveRange(at, moved.Count);
                lines.InsertRange(dice.Below(lines.Count + 1), moved);
                break;
            case 4:
                lines[at] = lines[at][..dice.Below(lines[at].Length + 1)];
                break;
            case 5 or 6:
                Replace(lines, at, AnyNumber(), _ => Blocks.Number(dice), dice);
                break;
            case 7:
                Replace(lines, at, AnyCode(), _ => Blocks.Code(dice), dice);
                break;
            case 8:
                Replace(lines, at, AnyNumber(), number => number.Value.StartsWith('-') ? number.Value[1..] : "-" + number.Value, dice);
                break;
            case 9:
                Replace(lines, at, AnyWord(), _ => "", dice);
                break;
            case 10:
                Replace(lines, at, AnyWord(), word => word.Value + " " + Blocks.Word(dice), dice);
                break;
            case 11:
                Nest(lines, at, dice);
                break;
            case 12:
                lines.Insert(at, Blocks.Steer(dice));
                break;
            case 13 or 14:
                lines.Insert(at, Blocks.Any(dice));
                break;
            case 15:
                lines[at] = dice.OneIn(2) ? "/" + lines[at] : lines[at].ToLowerInvariant();
                break;
            case 16:
                Replace(lines, at, AnyNumber(), number => number.Value.TrimEnd('.') + dice.Of(["0", "9", ".", ".001", "00"]), dice);
                break;
            case 17:
                Replace(lines, at, AnyComment(), _ => "", dice);
                break;
            case 18 or 19:
                Comment(lines, dice.OneIn(3) ? lines.Count - 1 : at, dice);
                break;
            default:
                lines[at] += " " + Blocks.Words(dice);
                break;
        }
    }

    static List<string> Some(List<string> lines, int at, Dice dice) => lines.GetRange(at, Math.Min(dice.From(1, 1 + dice.Few(30)), lines.Count - at));

    static void SwapWords(List<string> lines, int a, int b, Dice dice)
    {
        var (first, second) = (AnyWord().Matches(lines[a]), AnyWord().Matches(lines[b]));
        if (first.Count == 0 || second.Count == 0)
            return;
        var (one, other) = (first[dice.Below(first.Count)], second[dice.Below(second.Count)]);
        if (a != b)
            (lines[a], lines[b]) = (Put(lines[a], one, other.Value), Put(lines[b], other, one.Value));
        else if (one.Index < other.Index)
            lines[a] = Put(Put(lines[a], other, one.Value), one, other.Value);
    }

    static void Replace(List<string> lines, int at, Regex what, Func<Match, string> by, Dice dice)
    {
        // The line itself may hold none.
        for (var i = 0; i < lines.Count; i++, at = (at + 1) % lines.Count)
        {
            var found = what.Matches(lines[at]);
            if (found.Count == 0)
                continue;
            var one = found[dice.Below(found.Count)];
            lines[at] = Put(lines[at], one, by(one));
            return;
        }
    }

    /// <summary>A comment that runs to the end of the line, before any of its words: it takes in what stands behind.</summary>
    static void Comment(List<string> lines, int at, Dice dice)
    {
        var words = AnyWord().Matches(lines[at]);
        var place = words.Count == 0 || dice.OneIn(3) ? lines[at].Length : words[dice.Below(words.Count)].Index;
        lines[at] = string.Concat(lines[at].AsSpan(0, place), dice.Of(["(", ";", " ( ", " ; ", " (END", " ;END", "(("]), lines[at].AsSpan(place));
    }

    static void Nest(List<string> lines, int at, Dice dice)
    {
        var end = Math.Min(lines.Count, at + dice.From(1, 6));
        var number = dice.From(1, 4);
        var times = dice.OneIn(6) ? "99999" : dice.From(1, 4).ToString(CultureInfo.InvariantCulture);
        (var before, var behind) = dice.Below(4) switch
        {
            0 => ((string[])[$"#{number}=0", $"WHILE [#{number} LT {times}] DO{Math.Min(number, 3)}"], (string[])[$"#{number}=#{number}+1", $"END{Math.Min(number, 3)}"]),
            1 => ([$"O{number}10 REPEAT [{times}]"], [$"O{number}10 ENDREPEAT"]),
            2 => ([$"O{number}00 SUB"], [$"O{number}00 ENDSUB", $"O{number}00 CALL"]),
            _ => ([$"O{number}20 IF [#{number} LT {times}]"], [$"O{number}20 ENDIF"]),
        };
        lines.InsertRange(end, behind);
        lines.InsertRange(at, before);
    }

    static string Put(string line, Match at, string text) => string.Concat(line.AsSpan(0, at.Index), text, line.AsSpan(at.Index + at.Length));

    [GeneratedRegex(@"[-+]?[0-9.]+")]
    private static partial Regex AnyNumber();

    [GeneratedRegex(@"[GM][0-9.]+")]
    private static partial Regex AnyCode();

    [GeneratedRegex(@"\([^)]*\)|[A-Za-z][-+]?(?:[0-9.]+|#[0-9]+|\[[^\]]*\])|#[0-9]+=?")]
    private static partial Regex AnyWord();

    [GeneratedRegex(@"\([^)]*\)?|;.*|\)")]
    private static partial Regex AnyComment();
}
