using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Reports.Trace;

/// <summary>Runs a program block by block and shows each step once: nothing is kept, however long the program.</summary>
public static class TraceRun
{
    /// <summary>Takes a block that ran, and what came of it.</summary>
    public delegate void OnStep(in Block block, in TracedStep step);

    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static TraceTotals Run(SourceText text, Job job, OnStep onStep, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(onStep);
        var totals = new TraceTotals();
        var state = job.Executor.Start();
        var step = new Step();
        for (var chunk = 0; chunk < text.Chunks.Length; chunk++)
        {
            cancel.ThrowIfCancellationRequested();
            var blocks = text.Chunks[chunk].Blocks;
            for (var line = 0; line < blocks.Count; line++)
            {
                var block = blocks[line];
                if (block.Tokens.Length == 0)
                    continue;
                job.Executor.Run(block, ref state, step);
                if ((step.Events & (StepEvents.NotRun | StepEvents.Skipped)) != 0)
                    continue;
                foreach (ref readonly var move in step.Moves.Items)
                    totals.Add(move, job.LengthOf(move));
                onStep(block, new TracedStep(text.FirstLineOf(chunk) + line, step, job));
            }
        }
        return totals;
    }
}
