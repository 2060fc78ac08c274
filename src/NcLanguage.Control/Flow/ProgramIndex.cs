namespace NcLanguage.Control.Flow;

/// <summary>Which program or subroutine of a text a line belongs to. A rule asks it for each jump, an editor for each call: what that costs must not grow with the text.</summary>
/// <param name="first">The first program of the text.</param>
/// <param name="further">Those behind it, in the order of the text.</param>
/// <param name="begins">The lines (0-based) on which any of them begins by its number, in their order.</param>
/// <param name="subroutines">Those of the text, in the order in which they begin.</param>
/// <param name="lines">How many lines the text has.</param>
sealed class ProgramIndex(Region first, IReadOnlyList<(int Number, int First, int End)> further, int[] begins, IReadOnlyList<(int Number, int First, int Last)> subroutines, int lines)
{
    readonly int[] _reach = ReachOf(subroutines);

    public IReadOnlyList<(int Number, int First, int Last)> Subroutines => subroutines;

    /// <summary>The subroutine or program that a line belongs to.</summary>
    public Region At(int line)
    {
        if (SubroutineAt(line) is { } subroutine)
            return subroutine;
        var region = ProgramAt(line);
        // What stands behind the % that ends a program is one of its own, as far as the next.
        return region.Holds(line) ? region : new Region(region.End, NextProgram(line));
    }

    /// <summary>The last program that begins at or before a line; the first where none does.</summary>
    public Region ProgramAt(int line)
    {
        var (low, high) = (0, further.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (further[middle].First <= line)
                low = middle + 1;
            else
                high = middle;
        }
        return low == 0 ? first : new Region(further[low - 1].First, further[low - 1].End);
    }

    /// <summary>The line where the next program behind a line begins; the number of lines where none does.</summary>
    public int NextProgram(int line)
    {
        var next = Array.BinarySearch(begins, line + 1);
        next = next < 0 ? ~next : next;
        return next < begins.Length ? begins[next] : lines;
    }

    /// <summary>The one of those around a line that begins first: none before it reaches as far as the line.</summary>
    Region? SubroutineAt(int line)
    {
        var at = Array.BinarySearch(_reach, line);
        at = at < 0 ? ~at : at;
        while (at > 0 && _reach[at - 1] == line)
            at--;
        return at < _reach.Length && subroutines[at].First <= line ? new Region(subroutines[at].First, subroutines[at].Last + 1) : null;
    }

    /// <summary>For each of them the last line of all that begin no later.</summary>
    static int[] ReachOf(IReadOnlyList<(int Number, int First, int Last)> subroutines)
    {
        var reach = new int[subroutines.Count];
        for (var i = 0; i < reach.Length; i++)
            reach[i] = Math.Max(i == 0 ? -1 : reach[i - 1], subroutines[i].Last);
        return reach;
    }
}
