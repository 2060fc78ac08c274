using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Operations;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Reports.Trace;

/// <summary>The operations of a program, from one run through it.</summary>
public static class OperationRun
{
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static OperationList Of(SourceText text, Job job, CancellationToken cancel) =>
        Of(text, job, static (in Block _, in TracedStep _) => { }, cancel).Operations;

    /// <summary>The same, while each step is shown to <paramref name="onStep"/> too.</summary>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static (OperationList Operations, TraceTotals Totals) Of(SourceText text, Job job, TraceRun.OnStep onStep, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(onStep);
        var scan = new OperationScan(job);
        var totals = TraceRun.Run(text, job, (in Block block, in TracedStep step) =>
        {
            scan.Add(block, step.Step, step.Line, step.File);
            onStep(block, step);
        }, cancel);
        return (scan.Finish(), totals);
    }
}
