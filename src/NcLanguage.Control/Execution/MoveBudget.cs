namespace NcLanguage.Control.Execution;

/// <summary>How many moves are followed. Repeats and pecks would let a short file keep the control model busy without end.</summary>
public static class MoveBudget
{
    /// <summary>Moves of one block; what goes beyond is not followed.</summary>
    public const int OfBlock = 100_000;

    /// <summary>A block that makes more is a long one: a row of 200 holes has fewer.</summary>
    public const int ManyMoves = 1_000;

    /// <summary>Moves of all long blocks of a program together; behind that each is followed for no more than <see cref="ManyMoves"/>.</summary>
    public const int OfLongBlocks = 3_000_000;
}
