using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Flow;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Reports.Trace;

/// <summary>Runs a program block by block, in the order in which the control runs it, and shows each step once: nothing is kept, however long the program.</summary>
public static class TraceRun
{
    /// <summary>Blocks between two looks at whether the trace is still wanted.</summary>
    const int BlocksBetweenLooks = 1024;

    /// <summary>Takes a block that ran, and what came of it.</summary>
    public delegate void OnStep(in Block block, in TracedStep step);

    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static TraceTotals Run(SourceText text, Job job, OnStep onStep, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(onStep);
        var totals = new TraceTotals();
        var flowText = FlowText.Of(text, null);
        if (flowText.Steers)
            Follow(flowText, job, onStep, totals, cancel);
        else
            ReadOn(text, flowText.IsCalled, job, onStep, totals, cancel);
        return totals;
    }

    static void ReadOn(SourceText text, bool isCalled, Job job, OnStep onStep, TraceTotals totals, CancellationToken cancel)
    {
        var state = job.Executor.StartOf(isCalled, Leader.LinesOf(text) > 0);
        var ahead = new TextAhead(text);
        var step = new Step { Ahead = ahead };
        var buffer = new BlockBuffer();
        for (var chunk = 0; chunk < text.Chunks.Length; chunk++)
        {
            cancel.ThrowIfCancellationRequested();
            var blocks = buffer.Read(text.Chunks[chunk]);
            for (var line = 0; line < blocks.Count; line++)
            {
                var block = blocks[line];
                if (block.Tokens.Length == 0)
                    continue;
                ahead.Line = text.FirstLineOf(chunk) + line;
                job.Executor.Run(block, ref state, step);
                Show(block, new TracedStep(text.FirstLineOf(chunk) + line, step, job), onStep, totals);
            }
        }
    }

    static void Follow(FlowText text, Job job, OnStep onStep, TraceTotals totals, CancellationToken cancel)
    {
        var runner = new FlowRunner(job.Executor, text, job.Programs, job.MostBlocks);
        while (runner.MoveNext())
        {
            if (runner.Blocks % BlocksBetweenLooks == 0)
                cancel.ThrowIfCancellationRequested();
            Show(runner.Text.BlockAt(runner.Line), new TracedStep(runner.Line, runner.Step, job, runner.Text.Name), onStep, totals);
        }
        totals.End = runner.End;
    }

    static void Show(in Block block, in TracedStep step, OnStep onStep, TraceTotals totals)
    {
        if ((step.Step.Events & (StepEvents.NotRun | StepEvents.Skipped)) != 0)
            return;
        foreach (ref readonly var move in step.Step.Moves.Items)
            totals.Add(move, step.Job.LengthOf(move));
        onStep(block, step);
    }
}
