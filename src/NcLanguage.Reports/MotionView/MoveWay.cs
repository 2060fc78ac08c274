using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Moves;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Reports.MotionView;

/// <summary>The way of a move as a row of places: the ends of a straight one, the corners of a bent rapid, chords of an arc.</summary>
static class MoveWay
{
    /// <summary>Angle of one chord of an arc, radians: 4 degrees, which on a radius of 50 mm keeps within 0.03 mm.</summary>
    const double ChordAngle = Math.PI / 45;

    const int MostChords = 2000;

    /// <summary>Puts the places of a move, both ends included, into a list that is emptied first; none for what does not travel.</summary>
    /// <param name="shift">Added to each place, mm.</param>
    public static void Points(in Move move, Point3 shift, Job job, List<Point3> points)
    {
        points.Clear();
        if (!move.IsMotion)
            return;
        if (move.Kind == MoveKind.Arc && move.From.IsKnown && move.To.IsKnown && !double.IsNaN(CentreSum(move)))
        {
            AddArc(move, shift, points);
            return;
        }
        points.Add(move.From + shift);
        AddBends(move, shift, job, points);
        points.Add(move.To + shift);
    }

    /// <summary>The corners between the ends of a rapid where each axis goes at its own rate.</summary>
    public static void AddBends(in Move move, Point3 shift, Job job, List<Point3> points)
    {
        if (move.Kind != MoveKind.Rapid || job.Readings.RapidPath != RapidPathReading.PerAxis)
            return;
        Span<Point3> path = stackalloc Point3[4];
        var count = BentRapid.Points(move.From, move.To, job.Machine.Rapid, path);
        for (var i = 1; i < count - 1; i++)
            points.Add(path[i] + shift);
    }

    static double CentreSum(in Move arc)
    {
        var (first, second, _) = Arcs.Axes(arc.Plane);
        return arc.Center[first] + arc.Center[second];
    }

    static void AddArc(in Move arc, Point3 shift, List<Point3> points)
    {
        var (first, second, third) = Arcs.Axes(arc.Plane);
        var sweep = Arcs.Sweep(arc);
        var chords = Math.Clamp((int)Math.Ceiling(sweep / ChordAngle), 1, MostChords);
        var (a0, b0) = (arc.From[first] - arc.Center[first], arc.From[second] - arc.Center[second]);
        var (a1, b1) = (arc.To[first] - arc.Center[first], arc.To[second] - arc.Center[second]);
        var (start, startRadius, endRadius) = (Math.Atan2(b0, a0), double.Hypot(a0, b0), double.Hypot(a1, b1));
        points.Add(arc.From + shift);
        for (var i = 1; i < chords; i++)
        {
            var t = (double)i / chords;
            var (sin, cos) = Math.SinCos(start + (arc.Clockwise ? -sweep : sweep) * t);
            var radius = startRadius + (endRadius - startRadius) * t;
            points.Add(shift + arc.From
                .With(first, arc.Center[first] + radius * cos)
                .With(second, arc.Center[second] + radius * sin)
                .With(third, arc.From[third] + (arc.To[third] - arc.From[third]) * t));
        }
        points.Add(arc.To + shift);
    }
}
