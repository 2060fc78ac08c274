using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Comparison;
using NcLanguage.Control.Flow;
using NcLanguage.Control.Moves;
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
        var motion = MotionComparison.Of(MotionList.Of(first.Text, first.Job, cancel), MotionList.Of(second.Text, second.Job, cancel));
        // Where every move is known and the same, so are the holes, whether a cycle drills them or plain moves do.
        var isSettled = motion.IsSame && motion.First.NotKnown == 0 && motion.Second.NotKnown == 0;
        return new ComparisonReport(first, second, motion, isSettled ? [] : HoleChanges.Of(HolesOf(first, cancel), HolesOf(second, cancel)));
    }

    static HoleTable HolesOf(ComparedProgram program, CancellationToken cancel) =>
        HoleTable.Of(ProgramRun.Create(program.Text, program.Job, [], [], cancel));

    /// <summary>Whether both make the machine do the same, as far as it is known.</summary>
    public bool IsSame => Motion.IsSame && Holes.Count == 0;

    /// <summary>What could not be compared, one clause each.</summary>
    public IEnumerable<string> NotCompared()
    {
        foreach (var (program, list) in new[] { (First, Motion.First), (Second, Motion.Second) })
        {
            if (list.NotKnown > 0)
                yield return $"{Say.Count(list.NotKnown, "move")} of {program.Path} whose place is not known";
            if (list.End is FlowEnd.TooLong or FlowEnd.Endless or FlowEnd.Stopped)
                yield return $"what comes behind the place where the run of {program.Path} stops";
        }
    }

    /// <summary>altered, removed or added.</summary>
    public static string Word(ChangeKind kind) => kind switch { ChangeKind.Altered => "altered", ChangeKind.Removed => "removed", _ => "added" };

    /// <summary>rapid, feed, arc, dwell, toolChange or stop, as in a trace.</summary>
    public static string Word(MoveKind kind) => Trace.TraceJson.Word(kind);
}
