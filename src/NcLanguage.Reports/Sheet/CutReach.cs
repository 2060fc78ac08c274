using NcLanguage.Control.Moves;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Reports.Sheet;

/// <summary>How far the tip goes while the tool cuts, mm in the setup's frame.</summary>
sealed class CutReach
{
    /// <summary>Angle between two places of an arc that are looked at, radians: 2 degrees, so that less than 0.0002 of the radius is missed.</summary>
    const double Step = Math.PI / 90;

    public Point3 Low { get; private set; } = new(double.PositiveInfinity, double.PositiveInfinity, double.PositiveInfinity);

    public Point3 High { get; private set; } = new(double.NegativeInfinity, double.NegativeInfinity, double.NegativeInfinity);

    /// <summary>Whether there is any cut whose place is known.</summary>
    public bool IsKnown => Low.X <= High.X;

    /// <summary>Cuts whose place is not known.</summary>
    public int Unknown { get; private set; }

    public void Add(in Move move, Point3 toFrame)
    {
        if (!(move.From + toFrame).IsKnown || !(move.To + toFrame).IsKnown)
        {
            Unknown++;
            return;
        }
        Add(move.From + toFrame);
        Add(move.To + toFrame);
        if (move.Kind == MoveKind.Arc)
            AddArc(move, toFrame);
    }

    void AddArc(in Move arc, Point3 toFrame)
    {
        var (first, second, _) = Arcs.Axes(arc.Plane);
        var (a, b) = (arc.From[first] - arc.Center[first], arc.From[second] - arc.Center[second]);
        var sweep = Math.Min(Arcs.Sweep(arc), 2 * Math.PI);
        for (var angle = Step; angle < sweep; angle += Step)
        {
            var (sin, cos) = Math.SinCos(arc.Clockwise ? -angle : angle);
            Add(arc.From.With(first, arc.Center[first] + a * cos - b * sin).With(second, arc.Center[second] + a * sin + b * cos) + toFrame);
        }
    }

    void Add(Point3 place)
    {
        if (!place.IsKnown)
            return;
        Low = new(Math.Min(Low.X, place.X), Math.Min(Low.Y, place.Y), Math.Min(Low.Z, place.Z));
        High = new(Math.Max(High.X, place.X), Math.Max(High.Y, place.Y), Math.Max(High.Z, place.Z));
    }
}
