using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Flow;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing.Refactorings;

/// <summary>Looks at each block of a program as often as it runs, in the control's order; blocks of other files are passed over.</summary>
sealed class ProgramWalk(SourceText text, Job job, CancellationToken cancel)
{
    /// <summary>Blocks and moves between two looks at whether the answer is still wanted.</summary>
    const int WorkBetweenLooks = 4096;

    readonly FlowRunner _runner = new(job.Executor, FlowText.Of(text, null), job.Programs, job.MostBlocks);

    long _nextLook = WorkBetweenLooks;

    /// <summary>The line (0-based) of the block.</summary>
    public int Line => _runner.Line;

    /// <summary>What it did.</summary>
    public Step Step => _runner.Step;

    /// <summary>Within how many calls it ran.</summary>
    public int Depth => _runner.CallDepth;

    /// <summary>Blocks and moves so far, those of other files with them.</summary>
    public long Work { get; private set; }

    /// <summary>The line of the first call that led to another file; −1 where none did.</summary>
    public int Elsewhere { get; private set; } = -1;

    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public bool MoveNext()
    {
        while (_runner.MoveNext())
        {
            Work += 1 + _runner.Step.Moves.Count;
            if (Work >= _nextLook)
            {
                cancel.ThrowIfCancellationRequested();
                _nextLook = Work + WorkBetweenLooks;
            }
            if (_runner.CalledNumber >= 0)
                Elsewhere = Elsewhere < 0 ? _runner.OwnLine : Elsewhere;
            else if ((_runner.Step.Events & (StepEvents.Skipped | StepEvents.NotRun)) == 0)
                return true;
        }
        return false;
    }

    /// <summary>Whether a program, run as often as a refactoring is judged by (<see cref="MotionProof.JobsOf"/>), comes to its end within so many blocks and moves.</summary>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static bool TakesAtMost(int most, ProgramAnalysis analysis, CancellationToken cancel)
    {
        foreach (var job in MotionProof.JobsOf(analysis))
        {
            var walk = new ProgramWalk(analysis.Text, job, cancel);
            while (walk.MoveNext())
                if (walk.Work > most)
                    return false;
            if (walk.Work > most)
                return false;
        }
        return true;
    }
}
