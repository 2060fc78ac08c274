using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Flow;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Comparison;

/// <summary>The runs of a text, one after the other: that of its first program, and behind it the further programs in their order. One that no run before has come
/// to is run as if somebody began it.</summary>
sealed class TextRuns(SourceText text, Job job, CancellationToken cancel)
{
    readonly FlowText _flow = FlowText.Of(text, null);
    IReadOnlyList<(int Number, int First, int End)> _programs = [];
    HashSet<int> _unreached = [];

    /// <summary>Blocks that all runs together may still repeat.</summary>
    int _left = job.MostBlocks;
    FlowRunner? _before;
    int _at;

    /// <summary>Whether there is a further program that is not gone over yet: the next one.</summary>
    public bool HasNext => _at < _programs.Count;

    /// <summary>Number of the next further program; −1 where it is not plain.</summary>
    public int Number => _programs[_at].Number;

    /// <summary>Whether a run before has come to the next further program, so that what it does is seen there.</summary>
    public bool IsReached => !_unreached.Contains(_programs[_at].First);

    /// <summary>The run of the first program. Before another is begun it is followed to its end and given back to <see cref="Close"/>.</summary>
    public MotionReader OpenFirst()
    {
        _programs = _flow.FurtherPrograms();
        _unreached = _programs.Select(program => program.First).ToHashSet();
        return new MotionReader(new FlowRunner(job.Executor, _flow, job.Programs, _left), _unreached, cancel);
    }

    /// <summary>The run of the next further program, which no run has come to.</summary>
    public MotionReader OpenNext()
    {
        var (_, first, end) = _programs[_at++];
        return new MotionReader(FlowRunner.OfFurther(job.Executor, _flow, first, end, _before, job.Programs, _left), _unreached, cancel);
    }

    /// <summary>Passes over the next further program, which a run has come to.</summary>
    /// <returns>Begins it by itself all the same.</returns>
    public Func<CancellationToken, MotionReader> PassNext()
    {
        var (_, first, end) = _programs[_at++];
        _before = null;
        return wanted => new MotionReader(FlowRunner.OfFurther(job.Executor, _flow, first, end, null, job.Programs, job.MostBlocks), [], wanted);
    }

    /// <summary>Whether one of the further programs behind the next has this number.</summary>
    public bool HoldsBehind(int number)
    {
        for (var i = _at + 1; i < _programs.Count; i++)
            if (_programs[i].Number == number)
                return true;
        return false;
    }

    /// <summary>Takes back a run that was followed to its end.</summary>
    public void Close(MotionReader run)
    {
        // What runs but once is no more than the lines of the text.
        _left = Math.Clamp(_left - (run.Runner.Blocks - run.Runner.Text.Text.LineCount), 0, _left);
        _before = run.Runner;
    }
}
