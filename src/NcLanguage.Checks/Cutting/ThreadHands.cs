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

    /// <summary>The most threads that are held against themselves.</summary>
    const int MostThreads = 1000;

    /// <summary>Of each thread that is cut both ways, in one pass or in several, the first of the arcs that are fewer.</summary>
    public static IEnumerable<OddHand> OddOnes(ProgramRun run)
    {
        var threads = new List<List<(RoundCut Arc, int Part)>>();
        for (var part = 0; part < run.Results.Length; part++)
            foreach (var arc in run.Results[part].Rounds)
                if (arc.Tool.Kind == ToolKind.ThreadMill)
                    Add(arc, part, threads);
        return threads.Select(thread => OddOneOf(run, thread)).OfType<OddHand>();
    }

    static void Add(in RoundCut arc, int part, List<List<(RoundCut Arc, int Part)>> threads)
    {
        // Most go on where the one before was.
        for (var i = threads.Count - 1; i >= 0; i--)
            if (arc.IsAboutTheSame(threads[i][0].Arc))
            {
                threads[i].Add((arc, part));
                return;
            }
        if (threads.Count < MostThreads)
            threads.Add([(arc, part)]);
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
