using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Comparison;
using NcLanguage.Control.Flow;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Reports.Comparison;

/// <summary>One of two programs that are compared.</summary>
public sealed record ComparedProgram(string Path, SourceText Text, Job Job);

/// <summary>Two programs held against each other: what the machine would do otherwise.</summary>
public sealed record ComparisonReport(ComparedProgram First, ComparedProgram Second, MotionComparison Motion, IReadOnlyList<HoleChange> Holes)
{
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static ComparisonReport Of(ComparedProgram first, ComparedProgram second, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        var motion = MotionComparison.Of(MotionList.Of(first.Text, first.Job, cancel), MotionList.Of(second.Text, second.Job, cancel), cancel: cancel);
        var (run, other) = (RunOf(first, cancel), RunOf(second, cancel));
        var (holes, others) = (HoleTable.Of(run), HoleTable.Of(other));
        // Where every move is the same, so are the holes whose places are known, whether a cycle drills them or plain moves do.
        var changes = motion.IsSame ? HoleChanges.Of(holes.Where(IsUnplaced), others.Where(IsUnplaced)) : HoleChanges.Of(holes, others);
        return new ComparisonReport(first, second, motion, changes)
        {
            NamesCoordinates = changes.Count > 0 && (holes.NamesCoordinates || others.NamesCoordinates || AreApart(holes, others)),
            Lengths = new LengthText(run.Units == other.Units ? run.Units : LengthUnit.Millimetre),
        };
    }

    /// <summary>Whether holes have to be told with their coordinates.</summary>
    public bool NamesCoordinates { get; private init; }

    /// <summary>Lengths in the unit that both programs end in; in mm where it is not the same.</summary>
    public LengthText Lengths { get; private init; }

    // Each under one work offset only: of both, the first holes tell which.
    static bool AreApart(HoleTable holes, HoleTable others) => holes.Count > 0 && others.Count > 0 && !holes[0].Coordinates.PlacesAs(others[0].Coordinates, MotionComparison.UsualTolerance);

    static bool IsUnplaced(HoleRow row) => double.IsNaN(row.Hole.X + row.Hole.Y + row.Hole.Bottom);

    static ProgramRun RunOf(ComparedProgram program, CancellationToken cancel) => ProgramRun.Create(program.Text, program.Job, [], [], cancel);

    /// <summary>Whether both make the machine do the same, as far as it is known.</summary>
    public bool IsSame => Motion.IsSame && Holes.Count == 0;

    /// <summary>Whether the way of both runs is known to its end; else what they do alike is what they do as far as they were followed.</summary>
    public bool IsWayKnown => Motion.First.LineOfLostWay is null && Motion.Second.LineOfLostWay is null;

    /// <summary>What could not be compared, one clause each.</summary>
    public IEnumerable<string> NotCompared()
    {
        foreach (var (program, list) in new[] { (First, Motion.First), (Second, Motion.Second) })
        {
            if (list.NotKnown > 0)
                yield return $"{Say.Count(list.NotKnown, "move")} of {program.Path} whose place is not known";
            if (list.LineOfLostWay is { } line)
                yield return $"what runs again or otherwise behind line {line + 1} of {program.Path}, for which way it leads is not known";
            if (list.LineOfRotation is { } turn)
                yield return $"turns about A, B or C, from line {turn + 1} of {program.Path} on";
            if (list.End is FlowEnd.TooLong or FlowEnd.Endless or FlowEnd.Stopped)
                yield return $"what comes behind the place where the run of {program.Path} stops";
        }
    }

    /// <summary>altered, removed or added.</summary>
    public static string Word(ChangeKind kind) => kind switch { ChangeKind.Altered => "altered", ChangeKind.Removed => "removed", _ => "added" };

    /// <summary>rapid, feed, arc, dwell, toolChange or stop, as in a trace.</summary>
    public static string Word(MoveKind kind) => Trace.TraceJson.Word(kind);
}
