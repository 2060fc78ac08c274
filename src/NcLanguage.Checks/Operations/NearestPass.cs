using NcLanguage.Checks.Clearance;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Operations;

/// <summary>Where an operation comes nearest to one obstacle: of several places as near, the first.</summary>
/// <param name="Obstacle">Index of the obstacle in the setup's list.</param>
/// <param name="Distance">Least distance, mm; 0 or less is contact: how deep.</param>
/// <param name="Line">Line (0-based) of the block, in the file named.</param>
/// <param name="File">The name of the file that the block stands in, where it is another than the program's own.</param>
/// <param name="Tool">The tool in the spindle; −1 not known.</param>
/// <param name="Part">The part of the tool that comes nearest.</param>
/// <param name="Tip">Where the tip then is, in work coordinates, mm.</param>
/// <param name="IsRapid">Whether the move is a rapid.</param>
public sealed record NearestPass(int Obstacle, double Distance, int Line, string? File, int Tool, ToolPart Part, Point3 Tip, bool IsRapid)
{
    /// <summary>The coordinates that <see cref="Tip"/> is meant in.</summary>
    public required WorkCoordinates Coordinates { get; init; }

    /// <summary>Whether the setup does not give the tool's diameter: a contact is then one of its axis, and how deep the tool goes is not known.</summary>
    public bool IsAxisOnly { get; init; }

    /// <summary>Touches, to within <see cref="Sweep.ClearanceTolerance"/>.</summary>
    public bool IsContact => Distance <= Sweep.ClearanceTolerance;
}
