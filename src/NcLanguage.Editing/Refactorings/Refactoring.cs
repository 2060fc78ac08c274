using NcLanguage.Checks.Analysis;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing.Refactorings;

/// <summary>The lines (0-based, both included) that a refactoring is asked for.</summary>
/// <param name="IsCursor">Nothing is marked: what stands at the cursor is meant or, where that makes no sense, the whole program.</param>
public readonly record struct Lines(int First, int Last, bool IsCursor)
{
    public static Lines At(int line) => new(line, line, true);

    /// <summary>Whether a line is meant, where a cursor stands for the whole program.</summary>
    public bool Means(int line) => IsCursor || (line >= First && line <= Last);

    public bool Holds(int line) => line >= First && line <= Last;

    /// <summary>The lines of a text that are meant, where a cursor stands for the whole program.</summary>
    public (int First, int Last) MeantOf(SourceText text) => IsCursor ? (0, text.LineCount - 1) : (First, Last);

    /// <summary>Line after line, for what may go over a whole text.</summary>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static IEnumerable<int> Each(int first, int last, CancellationToken cancel)
    {
        for (var line = first; line <= last; line++)
        {
            cancel.ThrowIfCancellationRequested();
            yield return line;
        }
    }
}

/// <summary>What of a program a refactoring takes.</summary>
public enum Reach
{
    /// <summary>All of it, wherever the cursor stands.</summary>
    Program,

    /// <summary>The lines marked; all of it where none are.</summary>
    Lines,

    /// <summary>What stands at the cursor or in the lines marked.</summary>
    Place,
}

/// <summary>What a refactoring comes to: edits in the order of the text, or one sentence why there are none.</summary>
public sealed record RefactoringResult(IReadOnlyList<RangeEdit> Edits, string? Refusal)
{
    public static RefactoringResult Refuse(string sentence) => new([], sentence);
}

/// <summary>Another way to write a program or a part of it. Nothing is handed out before the new text was run and held against the old.</summary>
public abstract class Refactoring
{
    /// <summary>By which it is known between the offer and the edits; also the last part of the kind of one that takes the whole program.</summary>
    public abstract string Name { get; }

    /// <summary>What editors sort it under: refactor.rewrite, refactor.extract, refactor.inline or a name behind "source.".</summary>
    public abstract string Kind { get; }

    /// <summary>What of the program it takes.</summary>
    public abstract Reach Reach { get; }

    /// <summary>What it is called for these lines; null where it does not fit. Quick: nothing is run for it but the blocks of the lines.</summary>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public abstract string? TitleFor(ProgramAnalysis analysis, Lines lines, CancellationToken cancel = default);

    /// <summary>The new text as edits, not yet proven.</summary>
    protected abstract Draft Write(ProgramAnalysis analysis, Lines lines, CancellationToken cancel);

    /// <summary>How far apart places of both texts may be, mm: 0 where no number is worked out anew.</summary>
    protected virtual double Tolerance => 0;

    /// <summary>Whether blocks come to depend on others that they may run behind. Not where each block says of itself what it said before.</summary>
    protected virtual bool NeedsEveryWay => true;

    /// <summary>Why the new text must not be handed out; null where it may.</summary>
    protected virtual string? Judge(ProgramAnalysis analysis, SourceText edited, CancellationToken cancel) => MotionProof.Refuse(analysis, edited, Tolerance, NeedsEveryWay, cancel);

    /// <summary>The edits, after the edited text was run: motion that is not what it has to be is refused.</summary>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public RefactoringResult Of(ProgramAnalysis analysis, Lines lines, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        if (TitleFor(analysis, lines, cancel) is null)
            return RefactoringResult.Refuse("It does not fit here.");
        var draft = Write(analysis, lines, cancel);
        if (draft.Refusal is not null)
            return RefactoringResult.Refuse(draft.Refusal);
        var edits = draft.Edits;
        if (edits.Count == 0)
            return RefactoringResult.Refuse("There is nothing to change here.");
        return Judge(analysis, Draft.Apply(analysis.Text, edits), cancel) is { } sentence ? RefactoringResult.Refuse(sentence) : new RefactoringResult(edits, null);
    }
}
