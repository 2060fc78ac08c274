using NcLanguage.Checks.Clearance;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Tests.Clearance;

/// <summary>Volumes that cuts take from the measuring field, against closed forms of elementary solid geometry.</summary>
public sealed class StockVolumeTests
{
    static readonly Box3 Stock = new(new(0, 0, -20), new(80, 50, 0));

    /// <summary>A wall takes or leaves whole cells by where their middles lie, so one place errs by chance. Over many places the error's root mean square
    /// falls with the size of the cells to the power 1.5 (common practice: points of a grid in a round figure), 2.8 times for a halving; at least 2 is
    /// demanded of each, over three halvings. Places are shifted by the golden ratio, not by chance.</summary>
    static void Converges(double exact, Action<StockField, Point3> cut)
    {
        var last = double.PositiveInfinity;
        foreach (var cell in new[] { 1, 0.5, 0.25, 0.125 })
        {
            const int Places = 40;
            var square = 0.0;
            for (var i = 0; i < Places; i++)
            {
                var field = new StockField(Stock, cell, CellRule.Middle);
                cut(field, new(i * 0.618034 % 1, i * 0.381966 * 1.7 % 1, 0));
                var removed = 80.0 * 50 * 20 - field.Volume;
                square += (removed - exact) * (removed - exact) / Places;
            }
            var error = Math.Sqrt(square);
            // Heights are held to some seven digits.
            Assert.True(error <= Math.Max(last / 2, exact * 1e-5), $"{error} mm³ at {cell}, {last} at twice that, of {exact}");
            last = error;
        }
        Assert.InRange(last, 0, exact * 0.01);
    }

    static void Plunge(StockField field, Point3 at, double z, in EndForm end) => field.Cut((at + new Point3(30, 20, 0)).With(2, 5), (at + new Point3(30, 20, 0)).With(2, z), end);

    [Fact] // Cylinder and cone; the point is r / tan(118°/2) long.
    public void A_drilled_hole_is_a_cylinder_on_a_cone()
    {
        var point = 4 / Math.Tan(59 * Math.PI / 180);
        Converges(Math.PI * 16 * (12 - point) + Math.PI * 16 * point / 3, (f, at) => Plunge(f, at, -12, EndForm.Cone(4, 118)));
    }

    [Fact] // The cylinder through the stock; what the tool sweeps below it does not count.
    public void A_through_hole_is_the_cylinder_of_the_stock() => Converges(Math.PI * 16 * 20, (f, at) => Plunge(f, at, -26, EndForm.Cone(4, 118)));

    [Fact] // Cone of 90°: as deep as its radius. 1/3 π r² h.
    public void A_countersink_is_a_cone() => Converges(Math.PI * 5 * 5 * 5 / 3, (f, at) => Plunge(f, at, -5, EndForm.Cone(8, 90)));

    [Fact] // A countersink round a through hole: the frustum less the hole's own cylinder. π h (R² + R r + r²) / 3.
    public void A_countersunk_hole_is_a_cylinder_and_a_frustum() => Converges(Math.PI * 9 * 18 + Math.PI * 2 * (25 + 15 + 9) / 3, (f, at) =>
    {
        Plunge(f, at, -22, EndForm.Flat(3));
        Plunge(f, at, -5, EndForm.Cone(8, 90));
    });

    [Fact] // Cap of a ball: π d² (3R − d) / 3.
    public void A_ball_leaves_a_cap() => Converges(Math.PI * 9 * (3 * 5 - 3) / 3, (f, at) => Plunge(f, at, -3, EndForm.Round(5, 5)));

    [Fact] // Half a ball and a cylinder.
    public void A_ball_plunged_deeper_than_its_radius_leaves_half_a_ball_below_a_cylinder() =>
        Converges(2.0 / 3 * Math.PI * 64 + Math.PI * 16 * 5, (f, at) => Plunge(f, at, -9, EndForm.Round(4, 4)));

    [Fact] // Flat of radius a with a corner c: the integral of π (a + √(2cz − z²))² over z from 0 to c is π (a²c + a π c²/2 + 2c³/3); a cylinder above.
    public void A_round_corner_leaves_its_corner() =>
        Converges(Math.PI * (9 * 2 + 3 * Math.PI * 4 / 2 + 2.0 / 3 * 8) + Math.PI * 25 * 3, (f, at) => Plunge(f, at, -5, EndForm.Round(5, 2)));

    [Fact] // (2 r L + π r²) · depth; 48, 14, 50 along a slant.
    public void A_slot_has_round_ends() => Converges((2 * 4 * 50 + Math.PI * 16) * 5, (f, at) =>
        f.Cut(at + new Point3(15, 8, -5), at + new Point3(63, 22, -5), EndForm.Flat(4)));

    [Fact] // Segment of a circle R² acos((R − d)/R) − (R − d) √(2Rd − d²) times the length, and at the ends the two halves of a cap.
    public void A_ball_leaves_a_round_groove()
    {
        var segment = 25 * Math.Acos(2.0 / 5) - 2 * Math.Sqrt(2 * 5 * 3 - 9);
        Converges(segment * 50 + Math.PI * 9 * 12 / 3, (f, at) => f.Cut(at + new Point3(15, 8, -3), at + new Point3(63, 22, -3), EndForm.Round(5, 5)));
    }

    [Fact] // A triangle of 90°, d² in section, times the length, and at the ends the two halves of a cone π d³ / 3.
    public void A_pointed_cutter_leaves_a_groove_of_its_angle() => Converges(16 * 50 + Math.PI * 64 / 3, (f, at) =>
        f.Cut(at + new Point3(15, 8, -4), at + new Point3(63, 22, -4), EndForm.Cone(6, 90)));

    [Fact] // Length, breadth and depth less the four corners (4 − π) r².
    public void A_pocket_has_round_corners() => Converges((50 * 30 - (4 - Math.PI) * 9) * 6, (f, at) =>
    {
        for (var y = 10.0; y <= 34; y += 4)
            f.Cut(at + new Point3(13, y, -6), at + new Point3(57, y, -6), EndForm.Flat(3));
        f.Cut(at + new Point3(13, 10, -6), at + new Point3(13, 34, -6), EndForm.Flat(3));
        f.Cut(at + new Point3(57, 10, -6), at + new Point3(57, 34, -6), EndForm.Flat(3));
    });

    [Theory] // A bent slot: φ · 2 r R + π r², times the depth; a whole turn has no ends.
    [InlineData(60, false)]
    [InlineData(60, true)]
    [InlineData(270, false)]
    [InlineData(360, true)]
    public void A_slot_along_an_arc_is_a_bent_bar(double degrees, bool clockwise)
    {
        var angle = degrees * Math.PI / 180;
        var plan = angle * 2 * 3 * 14 + (degrees == 360 ? 0 : Math.PI * 9);
        Converges(plan * 7, (f, at) =>
        {
            var center = at + new Point3(39, 24, -7);
            var (sin, cos) = Math.SinCos(0.3 + (clockwise ? -angle : angle));
            f.CutArc(center + new Point3(14 * Math.Cos(0.3), 14 * Math.Sin(0.3), 0), center + new Point3(14 * cos, 14 * sin, 0), center, clockwise, 17, 0, EndForm.Flat(3));
        });
    }

    [Fact] // A hole bored along a helix with a round at its floor: the whole cylinder, for no core is left where the path's radius is below the tool's.
    public void A_hole_along_a_helix_is_a_cylinder() => Converges(Math.PI * 81 * 8, (f, at) =>
    {
        var center = at + new Point3(39, 24, 0);
        var start = center + new Point3(4, 0, 0);
        f.CutArc(start, start.With(2, -8), center.With(2, -8), false, 17, 3, EndForm.Flat(5));
        f.CutArc(start.With(2, -8), start.With(2, -8), center, false, 17, 0, EndForm.Flat(5));
    });

    [Fact] // A groove that falls all along the stock. Square to X a falling cylinder is an ellipse of half axes R and R/cos θ, of which a segment lies in the stock;
           // the segments are summed by Simpson's rule.
    public void A_ball_on_a_slope_leaves_a_falling_groove()
    {
        const double Radius = 6, Slope = 0.05;
        var height = Radius * Math.Sqrt(1 + Slope * Slope);
        double Section(double x)
        {
            // The tip runs from Z-1 at X0; the ellipse's bottom lies lower than the tip, by R/cos θ − R.
            var h = 1 - (1 + Slope * x + height - Radius) / height;
            return Radius * height * (Math.Acos(h) - h * Math.Sqrt(1 - h * h));
        }
        const int Steps = 400;
        var sum = 0.0;
        for (var i = 0; i <= Steps; i++)
            sum += (i is 0 or Steps ? 1 : i % 2 == 1 ? 4 : 2) * Section(80.0 * i / Steps);
        Converges(sum * 80 / Steps / 3, (f, at) => f.Cut(new(-100, 20 + at.Y, 4), new(160, 20 + at.Y, -9), EndForm.Round(Radius, Radius)));
    }

    [Fact] // What the cuts say they took adds up to what is gone; the deepest of a pass is its depth.
    public void Cuts_tell_what_they_take()
    {
        var field = new StockField(Stock, 0.2, CellRule.Middle);
        var first = field.Cut(new(-10, 20, -3), new(90, 20, -3), EndForm.Flat(5));
        var second = field.Cut(new(-10, 22, -5), new(90, 22, -5), EndForm.Flat(5));
        var third = field.CutArc(new(30, 40, -2), new(30, 40, -2), new(24, 40, -2), true, 17, 0, EndForm.Round(3, 3));
        var again = field.Cut(new(-10, 20, -3), new(90, 20, -3), EndForm.Flat(5));
        Assert.Equal(80 * 10 * 3, first.Removed, 0.1);
        Assert.Equal(80 * (10 * 5 - 8 * 3), second.Removed, 0.1);
        Assert.Equal((3, 5), (first.Deepest, Math.Round(second.Deepest, 5)));
        Assert.Equal(default, again);
        Assert.Equal(80.0 * 50 * 20 - field.Volume, first.Removed + second.Removed + third.Removed, 0.5);
        Assert.InRange(third.Deepest, 1.99, 2);
    }
}
