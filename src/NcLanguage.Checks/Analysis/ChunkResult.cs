using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Analysis;

/// <summary>A hole and the block that drilled it (0-based line within its chunk).</summary>
/// <param name="Traverse">Nearest approach of the traverse that reached it; farther than the setup's clearance counts as infinite.</param>
/// <param name="ToFrame">What to add to work coordinates to stand in the setup's frame, mm.</param>
/// <param name="Plane">The plane the cycle works in; X and Y are the hole's place in XY only.</param>
/// <param name="Return">G98 or G99 as in force in its block.</param>
/// <param name="CutsBefore">How many of the chunk's cuts were made before its block.</param>
public readonly record struct HoleResult(Hole Hole, int Line, Approach Traverse, Point3 ToFrame, WorkPlane Plane, ReturnLevel Return, int CutsBefore)
{
    /// <summary>The hole's place in the setup's frame at a level of the work coordinates, mm.</summary>
    public Point3 PlaceAt(double level) => new Point3(Hole.X, Hole.Y, level) + ToFrame;
}

/// <summary>A block number and where it stands (0-based line within its chunk); a number of −1 marks the beginning of a program.</summary>
public readonly record struct BlockNumber(int Number, int Line);

/// <summary>A rapid in the setup's frame that goes below the top of the stock and over its footprint, and how many cuts of its chunk came before it.</summary>
/// <param name="AtR">It is a cycle's traverse that runs no higher than the R level.</param>
public readonly record struct LowRapid(Point3 From, Point3 To, Point3 ToFrame, int Tool, int Line, int CutsBefore, bool AtR);

/// <summary>A cut below the top of the stock, in the setup's frame, for the question what still stands. Arcs come as chords. A place that is
/// not known makes all that stands not known.</summary>
public readonly record struct StockCut(Point3 From, Point3 To, int Tool);

/// <summary>A tool change: the tool now in the spindle (0 none, −1 not known) and the block's 0-based line within its chunk.</summary>
public readonly record struct ToolTaken(int Tool, int Line);

/// <summary>What running one chunk from one entry state gave. Immutable; reused for as long as both stay the same.</summary>
public sealed class ChunkResult
{
    public required Chunk Chunk { get; init; }

    public required ControlState Entry { get; init; }

    public required ControlState Exit { get; init; }

    /// <summary>Findings with lines counted within the chunk.</summary>
    public required Finding[] Findings { get; init; }

    public required HoleResult[] Holes { get; init; }

    /// <summary>What each block set.</summary>
    public required Slot[] Sets { get; init; }

    /// <summary>All that the chunk set.</summary>
    public required Slot AllSets { get; init; }

    public required BlockNumber[] Numbers { get; init; }

    /// <summary>Least and greatest of <see cref="Numbers"/>, and whether each is greater than the one before.</summary>
    public required NumberRange NumberRange { get; init; }

    public required StockCut[] Cuts { get; init; }

    public required LowRapid[] LowRapids { get; init; }

    /// <summary>Whether a comment in it asks for silence.</summary>
    public required bool HasAllow { get; init; }

    /// <summary>Whether a block in it can be skipped.</summary>
    public required bool HasSkip { get; init; }

    /// <summary>Known seconds of its moves; moves whose time is not known are left out and counted.</summary>
    public required double Seconds { get; init; }

    public required int UntimedMoves { get; init; }

    /// <summary>Known seconds of each block's moves.</summary>
    public required float[] LineSeconds { get; init; }

    /// <summary>The lines with moves whose time is not known, in order.</summary>
    public required int[] UntimedLines { get; init; }

    /// <summary>The tools its blocks change to.</summary>
    public required ToolTaken[] Tools { get; init; }

    HolePlaces? _places;
    HoleComparison? _comparison;

    /// <summary>The holes' places in short, for rules that walk the holes of a whole file at every keystroke. Worked out once.</summary>
    internal HolePlaces Places => _places ??= HolePlaces.Of(Holes);

    /// <summary>How its holes compare with those of the same chunk under another reading. The last comparison is kept.</summary>
    internal HoleComparison CompareTo(ChunkResult other)
    {
        if (_comparison is not { } known || !ReferenceEquals(known.Other, other))
            _comparison = known = HoleComparison.Of(this, other);
        return known;
    }
}
