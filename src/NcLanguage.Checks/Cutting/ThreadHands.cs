using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>An arc of a milled thread that turns against the others.</summary>
/// <param name="Line">Its block, from 0.</param>
/// <param name="IsLeftHand">Whether it is the one that cuts a left-hand helix.</param>
readonly record struct OddHand(RoundCut Arc, int Line, WorkCoordinates Coordinates, bool IsLeftHand);

/// <summary>Which hand the arcs of thread mills cut.</summary>
static class ThreadHands
{
    /// <summary>An arc that rises by less is level and has no hand, mm.</summary>
    const double Level = 0.01;

    /// <summary>The most arcs of one helix that are held against each other; beyond them it begins anew.</summary>
    const int MostArcs = 1000;

    /// <summary>Of each helix that turns both ways the first of the arcs that are fewer.</summary>
    public static IEnumerable<OddHand> OddOnes(ProgramRun run)
    {
        var row = new List<(RoundCut Arc, int Part)>();
        for (var part = 0; part < run.Results.Length; part++)
        {
            foreach (var arc in run.Results[part].Rounds)
            {
                if (row.Count > 0 && (row.Count == MostArcs || !arc.GoesOnAbout(row[^1].Arc)))
                {
                    if (OddOneOf(run, row) is { } odd)
                        yield return odd;
                    row.Clear();
                }
                if (arc.Tool.Kind == ToolKind.ThreadMill)
                    row.Add((arc, part));
            }
        }
        if (OddOneOf(run, row) is { } last)
            yield return last;
    }

    static OddHand? OddOneOf(ProgramRun run, List<(RoundCut Arc, int Part)> row)
    {
        // Of as many of both the left-hand ones are odd: threads are right-hand where nothing is said.
        var isLeft = Swept(row, isLeft: true) <= Swept(row, isLeft: false);
        var others = row.FindIndex(other => IsLeftHand(other.Arc) == !isLeft);
        // One that turns as the others do and goes the other way up has a wrong level.
        var odd = others < 0 ? -1 : row.FindIndex(arc => IsLeftHand(arc.Arc) == isLeft && arc.Arc.Clockwise != row[others].Arc.Clockwise);
        if (odd < 0)
            return null;
        var (arc, part) = row[odd];
        return new OddHand(arc, run.LineOf(part, arc.Line), run.Results[part].CoordinatesAt(arc.Line), isLeft);
    }

    static double Swept(List<(RoundCut Arc, int Part)> row, bool isLeft)
    {
        var sum = 0.0;
        foreach (var (arc, _) in row)
            sum += IsLeftHand(arc) == isLeft ? arc.Sweep : 0;
        return sum;
    }

    /// <summary>Null where it is level. Going up counterclockwise, as seen from above, is a right-hand helix, and so is the same path backwards.</summary>
    static bool? IsLeftHand(in RoundCut arc) => Math.Abs(arc.To.Z - arc.From.Z) <= Level ? null : arc.Clockwise == arc.To.Z > arc.From.Z;
}
