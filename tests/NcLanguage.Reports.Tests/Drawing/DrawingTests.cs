using System.Globalization;
using System.Xml.Linq;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;
using NcLanguage.Reports.Drawing;

namespace NcLanguage.Reports.Tests.Drawing;

/// <summary>What all drawings are made of.</summary>
public sealed class DrawingTests
{
    static readonly Box3 Plate = new(new Point3(0, 0, -16), new Point3(160, 90, 22));
    static readonly Rectangle Paper = new(10, 10, 280, 190);

    /// <summary>ISO 5456-2 and ISO 128-3 (from memory): in first-angle projection the plan lies below the front view and the view from the left to its
    /// right, so that what is nearer to the viewer of the front stands farther from it; in third-angle the plan lies above, the view from the right to its right.</summary>
    [Theory]
    [InlineData(ProjectionMethod.FirstAngle)]
    [InlineData(ProjectionMethod.ThirdAngle)]
    public void Views_stand_in_line_as_the_projection_has_them(ProjectionMethod method)
    {
        var views = ThreeViews.Fit(Plate, method, Paper, 12);
        var place = new Point3(37, 21, 5);
        var (plan, front, side) = (views.Plan.At(place), views.Front.At(place), views.Side.At(place));
        Assert.Equal(plan.X, front.X, 9);
        Assert.Equal(front.Y, side.Y, 9);
        Assert.True(views.Side.Window.Left > views.Front.Window.Right);
        var isFirst = method == ProjectionMethod.FirstAngle;
        Assert.Equal(isFirst, views.Plan.Window.Top > views.Front.Window.Bottom);
        // X to the right, Y and Z up; across the side view Y grows away from where the front is looked at from.
        Assert.True(views.Plan.At(place with { X = 38 }).X > plan.X);
        Assert.True(views.Plan.At(place with { Y = 22 }).Y < plan.Y);
        Assert.True(views.Front.At(place with { Z = 6 }).Y < front.Y);
        Assert.Equal(isFirst, views.Side.At(place with { Y = 22 }).X < side.X);
        foreach (var view in new[] { views.Plan, views.Front, views.Side })
        {
            var drawn = view.Of(Plate);
            Assert.True(drawn.Left >= Paper.Left && drawn.Right <= Paper.Right && drawn.Top >= Paper.Top && drawn.Bottom <= Paper.Bottom);
            Assert.False(drawn.Overlaps(views.Free));
        }
    }

    [Fact]
    public void A_place_that_is_not_known_is_drawn_only_in_the_view_that_does_not_look_at_it()
    {
        var views = ThreeViews.Fit(Plate, ProjectionMethod.FirstAngle, Paper, 12);
        var place = new Point3(37, 21, double.NaN);
        Assert.False(double.IsNaN(views.Plan.At(place).X + views.Plan.At(place).Y));
        Assert.True(double.IsNaN(views.Front.At(place).Y));
        var path = new SvgPath(views.Front.Window);
        path.Line(views.Front.At(place), views.Front.At(new Point3(0, 0, 0)));
        Assert.True(path.IsEmpty);
    }

    /// <summary>A box without extent, as of a program that drills one hole, must not become a picture of endless scale.</summary>
    [Fact]
    public void A_world_of_one_point_is_drawn_in_the_middle()
    {
        var point = new Point3(5, 5, 5);
        var views = ThreeViews.Fit(new Box3(point, point), ProjectionMethod.FirstAngle, Paper, 12);
        Assert.True(double.IsFinite(views.Plan.Scale));
        Assert.True(views.Plan.Window.Contains(views.Plan.At(point).X, views.Plan.At(point).Y));
    }

    [Fact]
    public void Text_is_data_and_the_file_is_well_formed()
    {
        var svg = new SvgWriter(100, 50, "</title><script>alert(1)</script>", isFile: true);
        svg.Text(10.123456, -0.0001, "(a < b & \"c\") </text><script>\u0000\uD800𝔊", degrees: 30);
        svg.Line(0, 0, 1.0 / 3, 12345.678, LineKind.Axis);
        var root = XDocument.Parse(svg.End()).Root!;
        XNamespace ns = "http://www.w3.org/2000/svg";
        Assert.Empty(root.Descendants(ns + "script"));
        var text = root.Element(ns + "text")!;
        Assert.Equal("(a < b & \"c\") </text><script> \uFFFD𝔊", text.Value);
        Assert.Equal(("10.12", "0"), (text.Attribute("x")!.Value, text.Attribute("y")!.Value));
        Assert.Equal("0.33", root.Element(ns + "line")!.Attribute("x2")!.Value);
        Assert.Contains("</title><script>", root.Attribute("aria-label")!.Value, StringComparison.Ordinal);
    }

    /// <summary>ISO 128-2 (published-values 3.9, from memory): wide to narrow is 2 to 1; dashes 12d with gaps of 3d, long dashes 24d, dots 0.5d.</summary>
    [Fact]
    public void Lines_have_the_widths_and_dashes_of_the_standard()
    {
        Assert.Equal(2, DrawingStyle.Wide / DrawingStyle.Narrow);
        var d = DrawingStyle.Narrow;
        Assert.Equal([12 * d, 3 * d], DashesOf("d-hidden"));
        Assert.Equal([24 * d, 3 * d, 0.5 * d, 3 * d], DashesOf("d-axis"));
        Assert.Equal([24 * d, 3 * d, 0.5 * d, 3 * d, 0.5 * d, 3 * d], DashesOf("d-adjacent"));
        Assert.NotEqual(DashesOf("d-rapid"), DashesOf("d-hidden"));
    }

    /// <summary>Against dense sampling of the line.</summary>
    [Fact]
    public void Clipping_keeps_what_lies_inside()
    {
        var random = new Random(4);
        var window = new Rectangle(20, 30, 40, 20);
        for (var i = 0; i < 2000; i++)
        {
            double x1 = random.Next(100), y1 = random.Next(80), x2 = random.Next(100), y2 = random.Next(80);
            var inside = Enumerable.Range(0, 1001).Select(n => n / 1000.0).Where(t => window.Contains(x1 + t * (x2 - x1), y1 + t * (y2 - y1))).ToList();
            var (a, b, c, d) = (x1, y1, x2, y2);
            var isSeen = window.Clip(ref a, ref b, ref c, ref d);
            if (inside.Count > 0)
            {
                Assert.True(isSeen);
                var length = Math.Max(Math.Abs(x2 - x1), Math.Abs(y2 - y1));
                Assert.InRange(Math.Abs(a - (x1 + inside[0] * (x2 - x1))) + Math.Abs(d - (y1 + inside[^1] * (y2 - y1))), 0, 0.003 * length);
            }
            else if (isSeen)
            {
                Assert.InRange(Math.Abs(a - c) + Math.Abs(b - d), 0, 0.3);
            }
        }
    }

    /// <summary>Lines at 45 degrees that end at the outline and stand evenly.</summary>
    [Fact]
    public void Hatching_fills_a_clamp_and_nothing_else()
    {
        var box = XDocument.Parse(Drawn(svg => Hatching.Box(svg, new Rectangle(10, 20, 30, 15), 2)));
        var lines = LinesOf(box);
        Assert.InRange(lines.Count, (30 + 15) / (2 * Math.Sqrt(2)) - 1, (30 + 15) / (2 * Math.Sqrt(2)) + 1);
        Assert.All(lines, line => Assert.Equal(line.X2 - line.X1, -(line.Y2 - line.Y1), 0.11));
        Assert.All(lines, line => Assert.True(new Rectangle(10, 20, 30, 15).Grown(0.06).Contains(line.X1, line.Y1)));
        var disc = LinesOf(XDocument.Parse(Drawn(svg => Hatching.Disc(svg, 50, 50, 10, 2))));
        Assert.All(disc, line => Assert.Equal(10, Math.Sqrt(Math.Pow(line.X1 - 50, 2) + Math.Pow(line.Y1 - 50, 2)), 0.11));
        Assert.InRange(disc.Count, 9, 11);
    }

    [Fact]
    public void A_solid_is_drawn_where_it_stands()
    {
        var view = ViewFrame.Fit(View.Plan, ProjectionMethod.FirstAngle, Plate, new Rectangle(0, 0, 160, 90));
        Assert.Equal(1, view.Scale, 9);
        var clamp = new BoxObstacle("clamp A", new Box3(new Point3(10, 20, 0), new Point3(40, 30, 22)));
        Assert.Equal(new Rectangle(10, 60, 30, 10), view.Of(clamp.Bounds));
        var stud = XDocument.Parse(Drawn(svg => Solids.Obstacle(svg, view, new CylinderObstacle("stud", 80, 45, 16, 0, 30))));
        XNamespace ns = "http://www.w3.org/2000/svg";
        var circle = stud.Descendants(ns + "circle").Single();
        Assert.Equal(("80", "45", "8"), (circle.Attribute("cx")!.Value, circle.Attribute("cy")!.Value, circle.Attribute("r")!.Value));
    }

    [Theory]
    [InlineData(37, 20)]
    [InlineData(50, 50)]
    [InlineData(0.4, 0.2)]
    [InlineData(999, 500)]
    [InlineData(double.NaN, 1)]
    public void A_scale_bar_has_a_round_length(double longest, double length) => Assert.Equal(length, Marks.RoundLength(longest), 9);

    [Fact]
    public void Labels_are_never_written_over_each_other()
    {
        var space = new LabelSpace(new Rectangle(-5, -5, 75, 35));
        var taken = new List<Rectangle>();
        for (var x = 0; x < 60; x++)
            for (var y = 0; y < 20; y++)
                if (space.Beside(x, y, 1, $"{x * 20 + y}") is { } at)
                    taken.Add(new Rectangle(at.X, at.Y - DrawingStyle.SmallText, Dimensions.WidthOf($"{x * 20 + y}"), DrawingStyle.SmallText));
        Assert.InRange(taken.Count, 50, 600);
        Assert.All(taken, one => Assert.True(one.Left >= -5 && one.Right <= 70 && one.Top >= -5 && one.Bottom <= 30));
        Assert.All(taken, one => Assert.Equal(1, taken.Count(other => one.Overlaps(other))));
    }

    [Fact]
    public void A_long_way_back_and_forth_is_drawn_once()
    {
        var path = new SvgPath(new Rectangle(0, 0, 100, 100));
        for (var i = 0; i < 1000; i++)
            path.Line((10, 10 + i % 2 * 50), (10, 60 - i % 2 * 50));
        Assert.Equal("M10 10L10 60", path.Data.ToString());
    }

    static double[] DashesOf(string name)
    {
        var line = DrawingStyle.Css.Split('\n').Single(row => row.Contains($".{name} ", StringComparison.Ordinal));
        var dashes = line[(line.IndexOf("dasharray: ", StringComparison.Ordinal) + 11)..];
        return [.. dashes[..dashes.IndexOf(';', StringComparison.Ordinal)].Split(' ').Select(part => double.Parse(part, CultureInfo.InvariantCulture))];
    }

    static string Drawn(Action<SvgWriter> draw)
    {
        var svg = new SvgWriter(100, 100, "test");
        draw(svg);
        return svg.End();
    }

    static List<(double X1, double Y1, double X2, double Y2)> LinesOf(XDocument svg)
    {
        XNamespace ns = "http://www.w3.org/2000/svg";
        var numbers = svg.Descendants(ns + "path").Single().Attribute("d")!.Value
            .Split(['M', 'L', ' '], StringSplitOptions.RemoveEmptyEntries).Select(part => double.Parse(part, CultureInfo.InvariantCulture)).ToArray();
        return [.. numbers.Chunk(4).Select(line => (line[0], line[1], line[2], line[3]))];
    }
}
