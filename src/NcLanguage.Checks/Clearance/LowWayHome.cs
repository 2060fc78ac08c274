using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Clearance;

/// <summary>A rapid to the reference point or in machine coordinates that goes sideways below what stands on the table, where it is not
/// known, or by the clamp height need not be, where it leads.</summary>
/// <param name="Level">The lowest level that is known of it, in work coordinates, mm.</param>
/// <param name="Above">What it is below: "the clamps' top", an obstacle's name, "the stock's top".</param>
/// <param name="Top">The top of that, in work coordinates, mm.</param>
/// <param name="Clears">The level from which it would clear, mm.</param>
readonly record struct LowWayHome(int Move, bool AlongX, bool AlongY, double Level, string Above, double Top, double Clears)
{
    /// <summary>The first such rapid of a step; null where there is none.</summary>
    public static LowWayHome? FirstOf(in StepContext step)
    {
        var moves = step.Step.Moves;
        for (var i = 0; i < moves.Count; i++)
        {
            ref readonly var move = ref moves[i];
            if (move.Kind != MoveKind.Rapid || move.Role != MoveRole.Machine)
                continue;
            var isLast = i + 1 == moves.Count || moves[i + 1].Role != MoveRole.Machine;
            var (alongX, alongY) = (Goes(step, move, 0, isLast), Goes(step, move, 1, isLast));
            if ((alongX || alongY) && Of(step, i, alongX, alongY) is { } found)
                return found;
        }
        return null;
    }

    static LowWayHome? Of(in StepContext step, int index, bool alongX, bool alongY)
    {
        ref readonly var move = ref step.Step.Moves[index];
        var toFrame = step.Step.ToFrame;
        var (from, to) = (move.From + toFrame, move.To + toFrame);
        var level = double.IsNaN(from.Z) ? to.Z : double.IsNaN(to.Z) ? from.Z : Math.Min(from.Z, to.Z);
        var setup = step.Job.Setup;
        if (double.IsNaN(level))
            return null;
        if (step.Job.Obstacles.IsEmpty && setup.ClampHeight is { } clamps && level < clamps + setup.Clearance - Sweep.ClearanceTolerance)
            return new(index, alongX, alongY, level - toFrame.Z, "the clamps' top", clamps - toFrame.Z, clamps + setup.Clearance - toFrame.Z);
        // A way that is known is held against obstacles and stock as any rapid is.
        if (from.IsKnown && to.IsKnown)
            return null;
        if (Tallest(step, from, alongX, alongY) is { } tallest && level < tallest.Top + setup.Clearance - Sweep.ClearanceTolerance)
            return new(index, alongX, alongY, level - toFrame.Z, $"the top of {tallest.Name}", tallest.Top - toFrame.Z, tallest.Top + setup.Clearance - toFrame.Z);
        var isDeep = setup.Stock is { } stock && level < stock.Max.Z - Sweep.ClearanceTolerance && (IsOver(stock, from) || IsOver(stock, to));
        return isDeep
            ? new(index, alongX, alongY, level - toFrame.Z, "the stock's top", setup.Stock!.Value.Max.Z - toFrame.Z, setup.Stock.Value.Max.Z + setup.Clearance - toFrame.Z)
            : null;
    }

    /// <summary>The highest obstacle that may lie in the way: along one axis the tool keeps to its own strip.</summary>
    static Obstacle? Tallest(in StepContext step, Point3 from, bool alongX, bool alongY)
    {
        var beside = step.Job.ShapeOf(step.Step.After.Tool).Radius + step.Job.Setup.Clearance;
        Obstacle? tallest = null;
        foreach (var obstacle in step.Job.Obstacles)
        {
            var bounds = obstacle.Bounds;
            var isBeside = (!alongX && (from.X < bounds.Min.X - beside || from.X > bounds.Max.X + beside))
                || (!alongY && (from.Y < bounds.Min.Y - beside || from.Y > bounds.Max.Y + beside));
            if (!isBeside && !(obstacle.Top <= tallest?.Top))
                tallest = obstacle;
        }
        return tallest;
    }

    static bool IsOver(Box3 stock, Point3 place) =>
        place.X >= stock.Min.X && place.X <= stock.Max.X && place.Y >= stock.Min.Y && place.Y <= stock.Max.Y;

    /// <summary>True when the move goes along an axis. From one place not known to another the machine's own coordinates tell it, and for
    /// a reference point that is not known the block's words.</summary>
    static bool Goes(in StepContext step, in Move move, int axis, bool isLast)
    {
        if (!move.From[axis].Equals(move.To[axis]))
            return true;
        if (!double.IsNaN(move.From[axis]) || !isLast)
            return false;
        var words = step.Step.Words;
        var isNamed = words.Has((char)('X' + axis)) || !(words.Has('X') || words.Has('Y') || words.Has('Z'));
        var end = step.Step.After.MachinePosition[axis];
        return isNamed && (double.IsNaN(end) || !step.Step.Before.MachinePosition[axis].Equals(end));
    }
}
