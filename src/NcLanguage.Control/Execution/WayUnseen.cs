using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Control.Execution;

/// <summary>A rapid that goes lower than something the setup lists while it is not known where the tool stands in X or Y.</summary>
/// <param name="IsSideways">Whether it goes across; else straight down.</param>
/// <param name="Level">The lowest level that is known of it, in the setup's frame, mm.</param>
/// <param name="Under">The highest of what the setup lists: the name of an obstacle, else "the clamps" or "the stock".</param>
/// <param name="Top">The top of that, in the setup's frame, mm.</param>
public readonly record struct WayUnseen(bool IsSideways, double Level, string Under, double Top)
{
    /// <summary>What has happened by it.</summary>
    public Happened Marks => IsSideways ? Happened.WentAcrossUnseen : Happened.WentDownUnseen;

    /// <summary>Null where a move is none: its way or no level of it is known, it is no rapid in work coordinates, or it goes up or above everything by the setup's clearance.</summary>
    public static WayUnseen? Of(in Move move, in Point3 toFrame, Setup setup)
    {
        ArgumentNullException.ThrowIfNull(setup);
        if (move.Kind != MoveKind.Rapid || move.Role is not (MoveRole.Plain or MoveRole.FirstTraverse) || !double.IsNaN(move.From.X + move.From.Y))
            return null;
        var isSideways = !move.From.X.Equals(move.To.X) || !move.From.Y.Equals(move.To.Y);
        var (from, to) = (move.From.Z + toFrame.Z, move.To.Z + toFrame.Z);
        if (!isSideways && to >= from)
            return null;
        var level = double.IsNaN(from) ? to : double.IsNaN(to) ? from : Math.Min(from, to);
        return HighestOf(setup) is { } highest && level < highest.Top + highest.Clearance ? new WayUnseen(isSideways, level, highest.Name, highest.Top) : null;
    }

    static (string Name, double Top, double Clearance)? HighestOf(Setup setup)
    {
        (string, double Top, double)? highest = setup.Stock is { } stock ? ("the stock", stock.Max.Z, 0) : null;
        if (setup.Obstacles.IsEmpty && setup.ClampHeight is { } clamps && !(highest?.Top > clamps))
            highest = ("the clamps", clamps, setup.Clearance);
        foreach (var obstacle in setup.Obstacles)
            if (!(highest?.Top > obstacle.Top))
                highest = (obstacle.Name, obstacle.Top, setup.Clearance);
        return highest;
    }
}
