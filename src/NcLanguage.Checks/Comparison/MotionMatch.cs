using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Flow;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Comparison;

/// <summary>Whether a motion counts; one that counts in another shape is changed.</summary>
public delegate bool MotionChoice(ref Motion motion);

/// <summary>Two texts motion for motion, as <see cref="MotionComparison"/> holds them, but only as far as where they first differ. Both are run side by side and no motion is
/// kept, so that it takes the same memory however many there are.</summary>
/// <param name="IsSame">Whether no motion differs and the runs end alike, each of the first program of its text, and of the further ones that no run has come to.</param>
/// <param name="First">The motion of the first text that the other does not make there; null where it has none left, or ends otherwise.</param>
/// <param name="Second">The same of the second text.</param>
public sealed record MotionMatch(bool IsSame, Motion? First, Motion? Second)
{
    /// <param name="tolerance">How far apart places may be, mm.</param>
    /// <param name="share">How far apart feeds, speeds and dwells may be as a share of the greater.</param>
    /// <param name="choice">Which motions count; null where all do.</param>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static MotionMatch Of(
        SourceText first, SourceText second, Job job, double tolerance, CancellationToken cancel, double share = MotionComparison.Share, MotionChoice? choice = null)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        ArgumentNullException.ThrowIfNull(job);
        var pairs = new Pairs(tolerance, share, choice);
        var (runs, others) = (new TextRuns(first, job, cancel), new TextRuns(second, job, cancel));
        var (run, other) = (runs.OpenFirst(), others.OpenFirst());
        if (pairs.Differ(run, other) is { } atOnce)
            return atOnce;
        if (run.Runner.End != other.Runner.End)
            return Different;
        runs.Close(run);
        others.Close(other);
        while (runs.HasNext || others.HasNext)
            if (Next(runs, others, pairs, cancel) is { } difference)
                return difference;
        return Same;
    }

    static MotionMatch Same { get; } = new(true, null, null);

    static MotionMatch Different { get; } = new(false, null, null);

    /// <summary>The next further program of both texts, or of the one that alone has it.</summary>
    static MotionMatch? Next(TextRuns runs, TextRuns others, Pairs pairs, CancellationToken cancel)
    {
        var isPair = runs.HasNext && others.HasNext && runs.Number == others.Number;
        var isFirst = isPair || (runs.HasNext && !(others.HasNext && others.HoldsBehind(runs.Number)));
        var isSecond = isPair || !isFirst;
        var (isReached, isOtherReached) = (!isFirst || runs.IsReached, !isSecond || others.IsReached);
        var isRun = !isReached || !isOtherReached;
        var run = isFirst ? Open(runs, isReached, isRun, cancel) : null;
        var other = isSecond ? Open(others, isOtherReached, isRun, cancel) : null;
        if (!isRun)
            return null;
        if (pairs.Differ(run, other) is { } difference)
            return difference;
        // Of one that only a call comes to in one of the texts, nothing is proven by a beginning.
        if (BrokenOff(run) != BrokenOff(other) || (isReached != isOtherReached && BrokenOff(run) != FlowEnd.None))
            return Different;
        if (run is not null && !isReached)
            runs.Close(run);
        if (other is not null && !isOtherReached)
            others.Close(other);
        return null;
    }

    static MotionReader? Open(TextRuns runs, bool isReached, bool isRun, CancellationToken cancel)
    {
        if (!isReached)
            return runs.OpenNext();
        var begin = runs.PassNext();
        return isRun ? begin(cancel) : null;
    }

    /// <summary>How a further program ends tells nothing but whether it was followed to its end.</summary>
    static FlowEnd BrokenOff(MotionReader? run) => run?.Runner.End is FlowEnd.TooLong or FlowEnd.Endless ? run.Runner.End : FlowEnd.None;

    /// <summary>Two runs side by side.</summary>
    sealed class Pairs(double tolerance, double share, MotionChoice? choice)
    {
        /// <summary>Where two runs differ, a run that is null makes no motion; null where nowhere.</summary>
        public MotionMatch? Differ(MotionReader? run, MotionReader? other)
        {
            while (true)
            {
                var (has, otherHas) = (Next(run, out var motion), Next(other, out var otherMotion));
                if (!has && !otherHas)
                    return null;
                if (has && otherHas)
                {
                    if (!motion.GoesAs(otherMotion, tolerance) || !motion.IsDoneAs(otherMotion, share))
                        return new MotionMatch(false, motion, otherMotion);
                    continue;
                }
                // Where both are broken off as too long, what one has more at its end the other would have made later.
                var (ended, longer) = has ? (other, run) : (run, other);
                if (ended?.Runner.End == FlowEnd.TooLong)
                {
                    longer!.Finish();
                    if (longer.Runner.End == FlowEnd.TooLong)
                        return null;
                }
                return new MotionMatch(false, has ? motion : null, otherHas ? otherMotion : null);
            }
        }

        bool Next(MotionReader? run, out Motion motion)
        {
            while (run is not null && run.MoveNext())
            {
                motion = run.Current;
                if (choice is null || choice(ref motion))
                    return true;
            }
            motion = default;
            return false;
        }
    }
}
