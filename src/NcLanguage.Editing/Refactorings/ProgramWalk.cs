using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Flow;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing.Refactorings;

/// <summary>Looks at each block of a program as often as it runs, in the control's order.</summary>
static class ProgramWalk
{
    const int BlocksBetweenLooks = 1024;

    /// <param name="onBlock">Told the line (0-based) of a block of the program itself, what it did, and within how many calls it ran.</param>
    /// <returns>The line of the first call that led to another file; −1 where none did.</returns>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static int Over(SourceText text, Job job, CancellationToken cancel, Action<int, Step, int> onBlock)
    {
        var elsewhere = -1;
        var runner = new FlowRunner(job.Executor, FlowText.Of(text, null), job.Programs, job.MostBlocks);
        while (runner.MoveNext())
        {
            if (runner.Blocks % BlocksBetweenLooks == 0)
                cancel.ThrowIfCancellationRequested();
            if (runner.CalledNumber >= 0)
                elsewhere = elsewhere < 0 ? runner.OwnLine : elsewhere;
            else if ((runner.Step.Events & (StepEvents.Skipped | StepEvents.NotRun)) == 0)
                onBlock(runner.Line, runner.Step, runner.CallDepth);
        }
        return elsewhere;
    }
}
