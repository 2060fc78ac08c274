using System.Collections.Immutable;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Drawing;

/// <summary>What became of a hole that the drawing asks for.</summary>
public enum HoleStatus
{
    /// <summary>Made, as far as size and depth are given and known.</summary>
    Drilled,

    /// <summary>No hole of any size is made there; at most it is spotted.</summary>
    Missing,

    /// <summary>Of the right size, but not deep enough, or its thread is not.</summary>
    Shallow,

    /// <summary>Made, but in another size, or with another thread.</summary>
    WrongSize,

    /// <summary>Made where the drawing has none.</summary>
    Extra,
}

/// <summary>One place where the drawing asks for a hole, or the program makes one. Lengths in mm, in the setup's frame.</summary>
public sealed record DrawingMatch
{
    /// <summary>What the drawing asks for; null for an extra hole.</summary>
    public DrawingHole? Wanted { get; init; }

    public required double X { get; init; }

    public required double Y { get; init; }

    /// <summary>Null where the program drills at places that are not known, and this may be one of them.</summary>
    public required HoleStatus? Status { get; init; }

    /// <summary>Diameter of the tool that decides; NaN where not known.</summary>
    public double Diameter { get; init; } = double.NaN;

    /// <summary>How deep that tool cuts at its full diameter, from the top of the stock; NaN where not known.</summary>
    public double Depth { get; init; } = double.NaN;

    /// <summary>How deep the tap goes, from the top of the stock; NaN where there is none or it is not known.</summary>
    public double ThreadDepth { get; init; } = double.NaN;

    /// <summary>The drawing asks for a thread, the hole is there, and nothing taps it.</summary>
    public bool IsThreadMissing { get; init; }

    /// <summary>A spot is there, and nothing drills it.</summary>
    public bool IsSpotOnly { get; init; }

    /// <summary>Numbers (from 1) of the program's holes at this place, in the order drilled.</summary>
    public ImmutableArray<int> Holes { get; init; } = [];
}
