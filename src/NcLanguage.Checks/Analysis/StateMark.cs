using NcLanguage.Control.State;

namespace NcLanguage.Checks.Analysis;

/// <summary>A place within a part of a run, and the state there. Kept of the last question: the next is mostly asked of the block behind, and need not run the part again from its beginning.</summary>
/// <param name="blocks">How many blocks of the part ran up to the place.</param>
/// <param name="state">The state behind them.</param>
sealed class StateMark(PartResult part, int blocks, in ControlState state)
{
    public PartResult Part { get; } = part;

    public int Blocks { get; } = blocks;

    public ControlState State { get; } = state;

    public bool IsOnTheWayTo(PartResult part, int blocks) => ReferenceEquals(Part, part) && Blocks <= blocks;
}
