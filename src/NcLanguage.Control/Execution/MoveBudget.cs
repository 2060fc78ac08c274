namespace NcLanguage.Control.Execution;

/// <summary>How many moves are followed. Repeats and pecks would let a short file keep the control model busy without end.</summary>
public static class MoveBudget
{
    /// <summary>Moves of one block; what goes beyond is not followed.</summary>
    public const int OfBlock = 100_000;

    /// <summary>A block that makes more is a long one: a row of 200 holes has fewer.</summary>
    public const int ManyMoves = 1_000;

    /// <summary>Moves of all long blocks of a program together; behind that each is followed for no more than <see cref="ManyMoves"/>.</summary>
    public const int OfLongBlocks = 1_000_000;

    /// <summary>Moves that are followed of all blocks together that make still more; behind that each block is followed for no more than <see cref="FewMoves"/>.</summary>
    public const int OfCutBlocks = 250_000;

    /// <summary>A row of 20 holes has fewer.</summary>
    public const int FewMoves = 200;

    /// <summary>How many moves of a block are followed.</summary>
    /// <param name="counted">Those of long and cut blocks before it.</param>
    public static int Allowed(int counted) => counted < OfLongBlocks ? OfBlock : counted < OfLongBlocks + OfCutBlocks ? ManyMoves : FewMoves;
}
