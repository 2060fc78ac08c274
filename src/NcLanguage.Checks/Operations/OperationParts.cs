using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;

namespace NcLanguage.Checks.Operations;

/// <summary>What a stretch of moves comes to, before it is known which operation it belongs to.</summary>
sealed class OperationParts(Job job)
{
    public MoveTotals Totals { get; private set; } = new();

    public PassTally Passes { get; } = new(job);

    /// <summary>Stops until somebody lets the machine go on; the program's end is none.</summary>
    public int Stops { get; private set; }

    /// <summary>First line of its moves; −1 where it has none.</summary>
    public int FirstLine { get; private set; } = -1;

    public int LastLine { get; private set; } = -1;

    /// <summary>The file that its first move stands in.</summary>
    public string? File { get; private set; }

    /// <summary>Whether the tool travels in it at rapid, other than from hole to hole of a cycle.</summary>
    public bool Travels { get; set; }

    public bool IsEmpty => FirstLine < 0;

    public void Add(Step step, int move, int line, string? file)
    {
        Totals.Add(step.Moves[move], job.LengthOf(step.Moves[move]));
        Passes.Add(step, move, line, file);
        if (step.Moves[move].Kind == MoveKind.Stop && (step.Events & StepEvents.ProgramEnd) == 0)
            Stops++;
        Extend(line, line, file);
    }

    /// <summary>Takes what comes behind it, and leaves that empty.</summary>
    public void Take(OperationParts later)
    {
        if (later.IsEmpty)
            return;
        Totals.Add(later.Totals);
        Passes.Add(later.Passes);
        Extend(later.FirstLine, later.LastLine, later.File);
        Stops += later.Stops;
        Travels |= later.Travels;
        later.Clear();
    }

    void Clear()
    {
        Totals = new MoveTotals();
        Passes.Clear();
        (FirstLine, LastLine, File, Travels, Stops) = (-1, -1, null, false, 0);
    }

    void Extend(int first, int last, string? file)
    {
        if (FirstLine < 0)
            (FirstLine, LastLine, File) = (first, last, file);
        else if (file == File)
            (FirstLine, LastLine) = (Math.Min(FirstLine, first), Math.Max(LastLine, last));
    }
}
