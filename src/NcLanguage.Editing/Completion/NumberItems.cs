using System.Globalization;
using System.Text;
using NcLanguage.Control.Codes;
using NcLanguage.Control.Flow;

namespace NcLanguage.Editing;

/// <summary>Numbers that name a place of the program or another program: block numbers, programs, subroutines.</summary>
static class NumberItems
{
    /// <summary>Numbers that are shown at once.</summary>
    const int Most = 100;

    const int LongestShown = 40;

    /// <summary>Block numbers of this program behind GOTO, nearest first.</summary>
    public static void AddBlockNumbers(Spot spot, CompletionItems items)
    {
        var found = new PriorityQueue<BlockNumber, int>();
        foreach (var mark in TextOf(spot).NumbersAround(spot.Line))
        {
            if (!mark.Number.ToString(CultureInfo.InvariantCulture).StartsWith(spot.Place.Typed, StringComparison.Ordinal))
                continue;
            // The farthest leaves first, so that memory does not grow with the program.
            found.Enqueue(mark, -Math.Abs(mark.Line - spot.Line));
            if (found.Count <= Most)
                continue;
            found.Dequeue();
            items.IsIncomplete = true;
        }
        while (found.TryDequeue(out var mark, out var far))
        {
            var number = mark.Number.ToString(CultureInfo.InvariantCulture);
            items.Add(-far, new CompletionEntry(number, CompletionKind.BlockNumber, $"line {mark.Line + 1}: {Shown(spot, mark.Line)}", number));
        }
    }

    /// <summary>Whether a P of this block names a program.</summary>
    public static bool CallsByP(Spot spot) => spot.Step.Words.HasCode('M', 980) || spot.Step.Words.HasCode('G', 650);

    /// <summary>P words of a call: programs of this file, then those beside it.</summary>
    public static void AddPrograms(Spot spot, CompletionItems items)
    {
        var seen = new HashSet<int>();
        var text = TextOf(spot);
        var own = text.NumberedPrograms().Where(program => program.Line <= spot.Line).Select(program => program.Line).DefaultIfEmpty(-1).Last();
        foreach (var (number, line) in text.NumberedPrograms().Take(Most))
            if (seen.Add(number) && line != own)
                AddNumber(spot, items, 0, "P", number, $"in this file, line {line + 1}{Title(spot, line)}");
        foreach (var (number, name) in (spot.Analysis.Options.Programs?.List() ?? []).Take(Most))
            if (seen.Add(number))
                AddNumber(spot, items, 2, "P", number, $"{name}, beside this file");
    }

    /// <summary>Calls of the subroutines of this file.</summary>
    public static void AddSubroutines(Spot spot, CompletionItems items)
    {
        foreach (var (number, first, _) in TextOf(spot).Subroutines().Take(Most))
            AddNumber(spot, items, 0, "O", number, $"subroutine of this file, line {first + 1}{Title(spot, first)}", " CALL");
    }

    static void AddNumber(Spot spot, CompletionItems items, int rank, string letter, int number, string detail, string behind = "")
    {
        var digits = number.ToString(CultureInfo.InvariantCulture);
        if (digits.StartsWith(spot.Place.Typed.TrimStart('0'), StringComparison.Ordinal))
            items.Add(rank, new CompletionEntry(spot.Style.Case(letter + digits + behind), CompletionKind.Program, detail, spot.Style.Case(letter + digits + behind)));
    }

    static FlowText TextOf(Spot spot) => new Symbols(spot.Analysis).Flow;

    static string Title(Spot spot, int line) => Titles.Above(spot.Analysis, line) is { } title ? ": " + title : "";

    /// <summary>The beginning of a block, as it stands.</summary>
    static string Shown(Spot spot, int line)
    {
        var bytes = spot.Analysis.Text.Line(line).Trim(" \t"u8);
        // A character takes four bytes at most: what is cut here is not shown anyway.
        bytes = bytes[..Math.Min(bytes.Length, 4 * (LongestShown + 1))];
        var text = new StringBuilder();
        foreach (var rune in Encoding.UTF8.GetString(bytes).EnumerateRunes())
        {
            if (text.Length >= LongestShown)
                return text.ToString().TrimEnd() + "…";
            text.Append(rune);
        }
        return text.ToString();
    }
}
