using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Flow;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Comparison;

/// <summary>All that a program makes the machine do, in order. What only says it again in other words, and moves of no length, leave no trace in it.</summary>
public sealed class MotionList
{
    readonly List<Motion> _motions = [];

    readonly List<FurtherProgram> _further = [];

    /// <summary>What the run of the text's first program does.</summary>
    public IReadOnlyList<Motion> Motions => _motions;

    /// <summary>How the run has ended; where that of a further program was broken off, how that one has.</summary>
    public FlowEnd End { get; private set; }

    /// <summary>How the run of the text's first program has ended.</summary>
    public FlowEnd OwnEnd { get; private set; }

    /// <summary>How many further programs no run before has come to.</summary>
    public int ProgramsByThemselves => _further.Count(program => !program.IsReached);

    /// <summary>Motions of which some place is not known.</summary>
    public int NotKnown { get; private set; }

    /// <summary>The first line (0-based) behind which it is not known which way the run goes, so that blocks may run again, or otherwise, than they did here; null where
    /// there is none.</summary>
    public int? LineOfLostWay { get; private set; }

    /// <summary>The first line (0-based) that turns an axis of rotation, which is not followed; null where none does.</summary>
    public int? LineOfRotation { get; private set; }

    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static MotionList Of(SourceText text, Job job, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(job);
        var runs = new TextRuns(text, job, cancel);
        var first = runs.OpenFirst();
        var list = Of(first);
        list.OwnEnd = list.End;
        runs.Close(first);
        while (runs.HasNext)
        {
            var number = runs.Number;
            if (runs.IsReached)
            {
                list._further.Add(new FurtherProgram(number, runs.PassNext()));
                continue;
            }
            var run = runs.OpenNext();
            var further = Of(run);
            runs.Close(run);
            list.Take(further);
            list._further.Add(new FurtherProgram(number, further));
        }
        return list;
    }

    /// <summary>What a run does, which is followed to its end.</summary>
    internal static MotionList Of(MotionReader run)
    {
        var list = new MotionList();
        while (run.MoveNext())
            list._motions.Add(run.Current);
        (list.End, list.NotKnown, list.LineOfLostWay, list.LineOfRotation) = (run.Runner.End, run.NotKnown, run.LineOfLostWay, run.LineOfRotation);
        return list;
    }

    /// <summary>All that has to be held against another list: what the run does, and behind it the further programs of the text that it does not come to, or that of the other text does not.</summary>
    /// <param name="most">Motions of the run of the first program that are held against the other at most.</param>
    public IReadOnlyList<Motion> Against(MotionList other, int most, CancellationToken cancel)
    {
        if (_further.Count == 0 && most >= _motions.Count)
            return _motions;
        var all = new List<Motion>(_motions.Take(most));
        var byThemselves = other._further.Where(program => !program.IsReached).Select(program => program.Number).ToHashSet();
        foreach (var program in _further)
            if (!program.IsReached || byThemselves.Contains(program.Number))
                all.AddRange(program.Followed(cancel)._motions);
        return all;
    }

    /// <summary>What is not known of a further program is not known of the text.</summary>
    void Take(MotionList further)
    {
        NotKnown += further.NotKnown;
        LineOfLostWay ??= further.LineOfLostWay;
        LineOfRotation ??= further.LineOfRotation;
        if (further.End is FlowEnd.TooLong or FlowEnd.Endless)
            End = further.End;
    }
}
