using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Checks.Operations;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Reports.Trace;

/// <summary>The operations of a program, from one more run through it.</summary>
public static class OperationRun
{
    /// <summary>Cells of the field that removed volumes are measured in: some tenths of a millimetre wide on a common plate, so that volumes are right to a
    /// percent or two and a trace of a small program is told at once.</summary>
    const int Cells = 500_000;

    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static OperationList Of(ProgramRun run, CancellationToken cancel) =>
        Of(run, static (in Block _, in TracedStep _) => { }, cancel).Operations;

    /// <summary>The same, while each step is shown to <paramref name="onStep"/> too.</summary>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static (OperationList Operations, TraceTotals Totals) Of(ProgramRun run, TraceRun.OnStep onStep, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(run);
        ArgumentNullException.ThrowIfNull(onStep);
        var scan = new OperationScan(run.Job, StockLeft.Of(run, Cells, cancel));
        var totals = TraceRun.Run(run.Text, run.Job, (in Block block, in TracedStep step) =>
        {
            scan.Add(block, step.Step, step.Line, step.File);
            onStep(block, step);
        }, cancel);
        return (scan.Finish(), totals);
    }
}
