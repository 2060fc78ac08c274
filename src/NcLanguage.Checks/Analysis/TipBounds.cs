using NcLanguage.Checks.Cutting;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Checks.Analysis;

/// <summary>Where a tool's tip has to stay, in work coordinates, so that nothing has to be asked about the machine's travel, about how deep its flutes reach below the top of the stock, and about
/// holes at its edge: what most moves are done with by. Not shared between threads.</summary>
sealed class TipBounds
{
    readonly Job _job;
    readonly bool _hasTravel;
    int _tool = -1;
    Point3 _toFrame;
    Point3 _toMachine;
    Point3 _low;
    Point3 _high;
    double _lowestCut;
    Point3 _leastHole;
    Point3 _mostHole;

    /// <summary>Whether an axis is bounded of which not even the datum tells where it stands.</summary>
    bool _isByMachine;

    public TipBounds(Job job)
    {
        _job = job;
        _hasTravel = job.Machine.HasTravel;
    }

    /// <summary>Whether nothing is bounded.</summary>
    public bool AreNone => !_hasTravel && !_job.HasStock;

    /// <summary>Takes up the bounds of a step.</summary>
    /// <returns>The events of the step that tell where it may leave them.</returns>
    public StepEvents Take(Step step)
    {
        if (step.After.Tool != _tool || step.ToFrame != _toFrame || step.ToMachine != _toMachine)
            Find(step);
        _isByMachine = _hasTravel && !_toMachine.IsKnown && IsPlacedByMachine(step);
        var events = _isByMachine ? PartScan.NearTravel : StepEvents.None;
        foreach (ref readonly var move in step.Moves.Items)
        {
            if (!move.IsMotion)
                continue;
            if (!HoldsWay(move))
                events |= PartScan.NearTravel;
            if ((step.Events & StepEvents.Path) != 0 && IsDeep(move))
                events |= PartScan.Deep;
        }
        foreach (ref readonly var hole in step.Holes.Items)
            if (!IsInside(hole.X, hole.Y))
                events |= PartScan.AtEdge;
        return events;
    }

    /// <summary>Whether a straight move from a place within the bounds of the last step stays in them.</summary>
    /// <param name="isCut">Whether it is a cut; otherwise it leads to the next hole of a run, which goes as deep as the one before it.</param>
    public bool Hold(in Point3 to, bool isCut) => !_isByMachine && IsWithin(to) && (isCut ? !(to.Z < _lowestCut) : IsInside(to.X, to.Y));

    /// <summary>Whether an arc in the XY plane stays in the bounds of the last step.</summary>
    public bool Hold(in Move arc) => !_isByMachine && HoldsWay(arc) && !IsDeep(arc);

    void Find(Step step)
    {
        (_tool, _toFrame, _toMachine) = (step.After.Tool, step.ToFrame, step.ToMachine);
        var machine = _job.Machine;
        _low = new Point3(Least(machine.TravelX), Least(machine.TravelY), Least(machine.TravelZ)) - _toMachine;
        _high = new Point3(Most(machine.TravelX), Most(machine.TravelY), Most(machine.TravelZ)) - _toMachine;
        (_lowestCut, _leastHole, _mostHole) = (double.NegativeInfinity, Point3.Unknown, Point3.Unknown);
        if (!_job.HasStock)
            return;
        if (ToolReach.Of(_job, _job.Setup.FindTool(_tool)) is { } reach)
            _lowestCut = _job.Stock.Max.Z - reach.Depth - _toFrame.Z;
        var radius = _job.ShapeOf(_tool).Radius;
        (_leastHole, _mostHole) = (_job.Stock.Min + new Point3(radius, radius, 0) - _toFrame, _job.Stock.Max - new Point3(radius, radius, 0) - _toFrame);
    }

    static double Least(Limits? travel) => travel?.Min ?? double.NegativeInfinity;

    static double Most(Limits? travel) => travel?.Max ?? double.PositiveInfinity;

    /// <summary>Whether machine coordinates tell where an axis stands of which work coordinates do not.</summary>
    bool IsPlacedByMachine(Step step)
    {
        for (var axis = 0; axis < 3; axis++)
            if (double.IsNaN(_toMachine[axis]) && !(double.IsNaN(step.Before.MachinePosition[axis]) && double.IsNaN(step.After.MachinePosition[axis])))
                return true;
        return false;
    }

    // A coordinate that is not known leaves no bound: of where it leads nothing can be told.
    bool IsWithin(in Point3 place) =>
        !(place.X < _low.X) && !(place.X > _high.X) && !(place.Y < _low.Y) && !(place.Y > _high.Y) && !(place.Z < _low.Z) && !(place.Z > _high.Z);

    bool IsInside(double x, double y) => !(x < _leastHole.X) && !(x > _mostHole.X) && !(y < _leastHole.Y) && !(y > _mostHole.Y);

    bool HoldsWay(in Move move)
    {
        if (!IsWithin(move.From) || !IsWithin(move.To))
            return false;
        if (move.Kind != MoveKind.Arc || !_hasTravel)
            return true;
        if (move.Plane != WorkPlane.XY)
            return false;
        // No radius is greater than the sum of its parts along X and Y.
        var (centre, radius) = (move.Center, Math.Max(Sides(move.From, move.Center), Sides(move.To, move.Center)));
        return !(centre.X - radius < _low.X) && !(centre.X + radius > _high.X) && !(centre.Y - radius < _low.Y) && !(centre.Y + radius > _high.Y);
    }

    static double Sides(in Point3 a, in Point3 b) => Math.Abs(a.X - b.X) + Math.Abs(a.Y - b.Y);

    bool IsDeep(in Move move) => move.From.Z < _lowestCut || move.To.Z < _lowestCut || (move.Kind == MoveKind.Arc && move.Plane != WorkPlane.XY && _lowestCut > double.NegativeInfinity);
}
