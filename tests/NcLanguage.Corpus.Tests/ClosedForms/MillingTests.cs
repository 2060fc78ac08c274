using NcLanguage.Control.Moves;
using static NcLanguage.Corpus.Tests.ClosedForms.Moves;

namespace NcLanguage.Corpus.Tests.ClosedForms;

/// <summary>Lengths, places and times of milled ways, from plane geometry and not from the trace.</summary>
/// <remarks>Sources: length of a helix √((r θ)² + Δz²) with the feed along it (NISTIR 6556 §4.3.6.1); tangents and circles (plane geometry);
/// inverse time F = 1 / minutes (NISTIR 6556 §3.5.19); feed per turn times speed.</remarks>
public sealed class MillingTests
{
    [Fact]
    public void Facing_by_increments()
    {
        var cuts = CutsOf("facing-steps");
        Assert.Equal([10.0, 30, 50, 70, 90], cuts.Select(move => move.To.Y));
        Assert.All(cuts, cut => Near(200, cut.Length));
        Near(5 * 200 / 900.0 * 60, cuts.Sum(cut => cut.Seconds));
    }

    [Fact]
    public void Rectangular_pocket_by_nested_loops()
    {
        // A level: 12 forth on a slope of 2 and back, to the first rectangle, four rectangles of 40 + 30 k, three ways between them.
        var level = Slope(12, 2) + 12 + Slope(7.75, 3.75) + 4 * 40 + 30 * (1 + 2 + 3 + 4) + 3 * Slope(3.75, 3.75);
        // Straight down from Z2 to where the level before ended.
        Near(3 * level + 2 + 4 + 6, CutLength("tray-pocket"));
        var cuts = CutsOf("tray-pocket");
        Near(25, cuts.Max(cut => cut.To.X));
        Near(-15, cuts.Min(cut => cut.To.Y));
        Near(-6, cuts.Min(cut => cut.To.Z));
    }

    [Fact]
    public void Round_pocket_as_half_circles()
    {
        var arcs = ArcsOf("cup-pocket");
        // Down from Z1 to -2.5 and to -5 on radius 2, and once round on the floor.
        Near(Slope(4 * Math.PI, 3.5) + Slope(4 * Math.PI, 2.5) + 4 * Math.PI, arcs.Take(3).Sum(arc => arc.Length));
        double[] radii = [4, 8, 12, 16, 19];
        for (var i = 0; i < radii.Length; i++)
            Near(Math.PI * radii[i], arcs[3 + i].Length);
        Near(2 * Math.PI * 20, arcs[^1].Length);
        Assert.All(arcs, arc => Assert.False(arc.Clockwise));
    }

    /// <summary>Groove of a snap ring for a bore of 30: 31.4 by 1.3 (DIN 472, from memory).</summary>
    [Fact]
    public void Groove_in_a_bore()
    {
        // A cutter of 20 runs round on half of 31.4 - 20; half circles lead in and out.
        var arcs = ArcsOf("snap-ring-seat");
        double[] lengths = [Math.PI * 2.85, 2 * Math.PI * 5.7, Math.PI * 2.85];
        Assert.Equal(lengths.Length, arcs.Count);
        for (var i = 0; i < lengths.Length; i++)
            Near(lengths[i], arcs[i].Length);
        At(0, 0, -12.3, arcs[1].Center);
        At(0, 0, -12.3, arcs[2].To);
    }

    [Fact]
    public void Bore_as_a_helix()
    {
        var arcs = ArcsOf("bearing-bore-helix");
        Assert.Equal(13, arcs.Count);
        for (var k = 0; k < 12; k++)
        {
            Near(-(k + 1), arcs[k].To.Z);
            Near(Slope(24 * Math.PI, 1), arcs[k].Length);
            Near(Slope(24 * Math.PI, 1) / 500 * 60, arcs[k].Seconds);
        }
        Near(24 * Math.PI, arcs[12].Length);
    }

    [Fact]
    public void Thread_climbs_by_its_pitch()
    {
        var arcs = ArcsOf("gland-thread");
        Assert.Equal(3, arcs.Count);
        double[] z = [-9 + 0.375, -9 + 0.375 + 1.5, -9 + 0.375 + 1.5 + 0.375];
        for (var i = 0; i < 3; i++)
            Near(z[i], arcs[i].To.Z);
        Near(Slope(18 * Math.PI, 1.5), arcs[1].Length);
        Near(Slope(2.25 * Math.PI, 0.375), arcs[0].Length);
    }

    [Fact]
    public void Slot_is_ramped_in() => Near(0.5 + 4 * Slope(60, 2) + 60, CutLength("slide-slot"));

    [Fact]
    public void Chamfers_by_arguments()
    {
        var arcs = ArcsOf("port-chamfer");
        double[] centres = [30, 75, 120];
        double[] bores = [24, 30, 18];
        Assert.Equal(3, arcs.Count);
        for (var i = 0; i < 3; i++)
        {
            var radius = (bores[i] + 2) / 2 - 3;
            At(centres[i], 30, arcs[i].Center);
            At(centres[i] + radius, 30, -3, arcs[i].To);
            Near(2 * Math.PI * radius, arcs[i].Length);
        }
    }

    [Fact]
    public void Inverse_time_gives_each_block_its_minutes()
    {
        var cuts = CutsOf("throttle-cam").Skip(1).ToList();
        double[] number = [9.549, 9.549, 6.366, 30];
        double[] length = [20 * Math.PI, 20 * Math.PI, 30 * Math.PI, 20];
        Assert.Equal(4, cuts.Count);
        for (var i = 0; i < 4; i++)
        {
            Near(length[i], cuts[i].Length);
            Near(60 / number[i], cuts[i].Seconds);
        }
    }

    [Fact]
    public void Feed_per_turn_times_speed()
    {
        Assert.Equal([0.24 * 2000, 0.18 * 2000], CutsOf("roller-groove").Select(cut => Math.Round(cut.Feed, 9)));
        Near(104 / 480.0 * 60 + 104 / 360.0 * 60, CutsOf("roller-groove").Sum(cut => cut.Seconds));
    }

    [Fact]
    public void Gaps_by_a_subroutine()
    {
        var cuts = CutsOf("rack-teeth");
        Assert.Equal(9, cuts.Count);
        for (var k = 0; k < 9; k++)
        {
            At(10 + 6.5 * k, 28, k % 2 == 0 ? -3 : -2, cuts[k].To);
            Near(36, cuts[k].Length);
        }
    }

    [Fact]
    public void Hollow_of_arcs_in_the_XZ_plane()
    {
        var arcs = ArcsOf("tube-cradle");
        Assert.Equal(22, arcs.Count);
        Assert.All(arcs, arc =>
        {
            // 10, 24, 26: Pythagorean.
            Near(26 * 2 * Math.Asin(24 / 26.0), arc.Length);
            Near(0, arc.Center.X);
            Near(10, arc.Center.Z);
            Near(arc.From.Y, arc.To.Y);
        });
        Assert.Equal(Enumerable.Range(0, 22).Select(k => 2.0 * k), arcs.Select(arc => arc.To.Y));
    }

    [Fact]
    public void Engraved_scale()
    {
        // Twelve plunges of 1.2; lines of 8 and 5; a zero of two straights of 2 and a circle of radius 1.5.
        Near(12 * 1.2 + 3 * 8 + 8 * 5 + 4 + 3 * Math.PI, CutLength("scale-plate"));
        Near(10 + 10 * 7, CutsOf("scale-plate").Max(cut => cut.To.X));
    }

    [Fact]
    public void Circles_by_a_file_beside()
    {
        var arcs = ArcsOf("lug-plate");
        Assert.Equal([25.0, 75], arcs.Select(arc => arc.Center.X));
        Near(2 * 30 * Math.PI, arcs.Sum(arc => arc.Length));
    }

    [Fact]
    public void Lever_contour_runs_on_the_common_tangents()
    {
        // Circles of radius 20 about 0,0 and 15 about 80,0: the outer tangent is √(80² − 5²) long; its normal has the cosine 5 / 80.
        var angle = Math.Acos(5 / 80.0);
        var round = 2 * 20 * (Math.PI - angle) + 2 * 15 * angle;
        var once = round + 2 * Math.Sqrt(80 * 80 - 5 * 5);
        // In and out along Y, 6 mm down each time, 2 mm up.
        Near(2 * (once + 20 + 20 + 6 + 2), CutLength("lever-contour"), 0.01);
        At(20 * Math.Cos(angle), 20 * Math.Sin(angle), ArcsOf("lever-contour")[1].To);
        At(80 + 15 * Math.Cos(angle), 15 * Math.Sin(angle), ArcsOf("lever-contour")[2].From);
    }

    [Fact]
    public void Preset_moves_the_second_circle()
    {
        var arcs = ArcsOf("spigot-preset");
        Near(2 * Math.PI * (18 + 12), arcs.Sum(arc => arc.Length));
        // Behind the preset places count from X60 Y15; without it again the tool stands at 60 + 12.
        Assert.Contains(Of("spigot-preset"), move => move.Kind == MoveKind.Rapid && move.To.X == 72 && move.To.Y == 15);
    }
}
