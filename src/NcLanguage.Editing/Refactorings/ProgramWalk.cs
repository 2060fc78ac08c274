using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Flow;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing.Refactorings;

/// <summary>Looks at each block of a program as often as it runs, in the control's order; blocks of other files are passed over.</summary>
sealed class ProgramWalk(SourceText text, Job job, CancellationToken cancel)
{
    const int BlocksBetweenLooks = 1024;

    readonly FlowRunner _runner = new(job.Executor, FlowText.Of(text, null), job.Programs, job.MostBlocks);

    /// <summary>The line (0-based) of the block.</summary>
    public int Line => _runner.Line;

    /// <summary>What it did.</summary>
    public Step Step => _runner.Step;

    /// <summary>Within how many calls it ran.</summary>
    public int Depth => _runner.CallDepth;

    /// <summary>The line of the first call that led to another file; −1 where none did.</summary>
    public int Elsewhere { get; private set; } = -1;

    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public bool MoveNext()
    {
        while (_runner.MoveNext())
        {
            if (_runner.Blocks % BlocksBetweenLooks == 0)
                cancel.ThrowIfCancellationRequested();
            if (_runner.CalledNumber >= 0)
                Elsewhere = Elsewhere < 0 ? _runner.OwnLine : Elsewhere;
            else if ((_runner.Step.Events & (StepEvents.Skipped | StepEvents.NotRun)) == 0)
                return true;
        }
        return false;
    }
}
