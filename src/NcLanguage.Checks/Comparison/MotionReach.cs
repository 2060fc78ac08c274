using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Flow;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Comparison;

/// <summary>How far what a text makes the machine do is known, without the motions: see <see cref="MotionList"/>.</summary>
/// <param name="End">How the run has ended; where that of a further program was broken off, how that one has.</param>
/// <param name="LineOfLostWay">The first line (0-based) behind which it is not known which way the run goes; null where there is none.</param>
public readonly record struct MotionReach(FlowEnd End, int? LineOfLostWay)
{
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static MotionReach Of(SourceText text, Job job, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(job);
        var runs = new TextRuns(text, job, cancel);
        var run = runs.OpenFirst();
        run.Finish();
        var reach = new MotionReach(run.Runner.End, run.LineOfLostWay);
        runs.Close(run);
        while (runs.HasNext)
        {
            if (runs.IsReached)
            {
                runs.PassNext();
                continue;
            }
            run = runs.OpenNext();
            run.Finish();
            runs.Close(run);
            var end = run.Runner.End is FlowEnd.TooLong or FlowEnd.Endless ? run.Runner.End : reach.End;
            reach = new MotionReach(end, reach.LineOfLostWay ?? run.LineOfLostWay);
        }
        return reach;
    }
}
