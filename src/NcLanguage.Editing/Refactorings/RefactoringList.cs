using System.Collections.Immutable;
using NcLanguage.Checks.Analysis;

namespace NcLanguage.Editing.Refactorings;

/// <summary>A refactoring that fits, under the name it has there.</summary>
public readonly record struct RefactoringOffer(Refactoring Refactoring, string Title);

/// <summary>All refactorings. One that is not in this list is not offered.</summary>
public static class RefactoringList
{
    public static ImmutableArray<Refactoring> All { get; } =
    [
        new Renumber(),
        new RemoveNumbers(),
        new AddPoints(),
        new DropIdleWords(),
        new WritePositions(Control.State.DistanceMode.Incremental),
        new WritePositions(Control.State.DistanceMode.Absolute),
        new ArcToRadius(),
        new ArcToCentre(),
        new ConvertUnits(),
        new SetReturnLevels(Reach.Place),
        new SetReturnLevels(Reach.Program),
        new OrderHoles(),
        new WriteOutCycle(),
        new GatherCycle(),
        new WriteOutCall(),
        new LiftBlocks(),
        new HolesToLoop(),
        new WriteOutLoop(),
    ];

    /// <summary>Blocks and moves of a run that all that fits is worked out for in one go: each refactoring runs a program several times.</summary>
    public const int MostAtOnce = 200_000;

    /// <summary>Whether the program is short enough, in blocks and moves of its runs, that all that fits it may be worked out in one go.</summary>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static bool CanWorkOutAll(ProgramAnalysis analysis, CancellationToken cancel) => ProgramWalk.TakesAtMost(MostAtOnce, analysis, cancel);

    /// <summary>What fits the lines, in the order of the list.</summary>
    /// <param name="isWanted">By its kind; all where it is null.</param>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static IEnumerable<RefactoringOffer> For(ProgramAnalysis analysis, Lines lines, Func<string, bool>? isWanted = null, CancellationToken cancel = default)
    {
        foreach (var refactoring in All)
            if (isWanted?.Invoke(refactoring.Kind) != false && refactoring.TitleFor(analysis, lines, cancel) is { } title)
                yield return new RefactoringOffer(refactoring, title);
    }

    /// <summary>The refactoring of this name; null where there is none.</summary>
    public static Refactoring? Find(string name)
    {
        foreach (var refactoring in All)
            if (refactoring.Name == name)
                return refactoring;
        return null;
    }
}
