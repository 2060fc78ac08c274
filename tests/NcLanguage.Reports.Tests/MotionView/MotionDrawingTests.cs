using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Reports.Drawing;
using NcLanguage.Reports.MotionView;

namespace NcLanguage.Reports.Tests.MotionView;

/// <summary>The drawing of a program.</summary>
public sealed class MotionDrawingTests
{
    static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    [Fact]
    public void The_demonstration_shows_its_contacts_holes_and_what_it_was_read_with()
    {
        var example = Example.FromDisk(Example.Repository("src", "NcLanguage.Cli", "Demo", "Job", "cover-plate-faulty.nc"));
        var root = XDocument.Parse(MotionDrawing.Of(example.Recording)).Root!;
        var words = root.Descendants(Svg + "text").Select(text => text.Value).ToList();
        Assert.Contains("contact: clamp A, 4.5 mm deep, line 31", words);
        Assert.Contains("contact: clamp B, 8.5 mm deep, line 36", words);
        Assert.Contains("clamp B, 8.5 mm deep, line 36", words);
        Assert.Contains("Read for demonstration mill", words);
        Assert.Contains("First-angle projection", words);
        Assert.Contains("160 mm", words);
        Assert.Contains(words, text => text.StartsWith("A picture is no proof", StringComparison.Ordinal));
        Assert.Contains(words, text => text.Contains("dwell milliseconds", StringComparison.Ordinal));
        // Holes 3, 15 and 28 lie upon one another; the numbers are those of the hole table.
        var place = example.Recording.Holes.Where(row => row.Hole is { X: 57, Y: 78 }).Select(row => row.Number);
        Assert.Contains(string.Join(", ", place), words);
        Assert.All(root.Descendants(Svg + "text"), text => Assert.InRange(double.Parse(text.Attribute("x")!.Value, CultureInfo.InvariantCulture), 0, 420));
    }

    /// <summary>The rapid of a straight line along X stands in the plan at its scale; a dashed line for it, a whole one for the feed.</summary>
    [Fact]
    public void Moves_are_drawn_where_they_lead()
    {
        var example = Example.Of("G21 G90 G54 T1 M6\nG0 X0 Y30 Z10\nG0 X100\nG1 Z-5 F100\nX0\nM30\n", Example.Plate);
        var root = XDocument.Parse(MotionDrawing.Of(example.Recording)).Root!;
        var plan = root.Elements(Svg + "g").Single(group => group.Attribute("class")!.Value == "g-plan");
        var stock = plan.Elements(Svg + "rect").Single(rect => rect.Attribute("class")!.Value.Contains("d-stock", StringComparison.Ordinal));
        var rapid = Ends(plan.Elements(Svg + "path").Single(path => path.Attribute("class")!.Value == "d-rapid"));
        var feed = Ends(plan.Elements(Svg + "path").Single(path => path.Attribute("class")!.Value == "d-feed"));
        var (left, width) = (Number(stock, "x"), Number(stock, "width"));
        var middle = Number(stock, "y") + Number(stock, "height") / 2;
        Assert.Equal([left, middle, left + width, middle], rapid, new Near(0.06));
        Assert.Equal([left + width, middle, left, middle], feed, new Near(0.06));
    }

    /// <summary>In the plan the outline of a hollow within the stock; from the front its walls, dashed, and its floor where it has one. Tenths of the plate's width and height give the places.</summary>
    [Fact]
    public void A_hollow_is_drawn_where_it_is()
    {
        var hollows = Example.Plate with { Hollows = [new Hollow("bore", 20, 20, 40, 40, 10, -10) { IsRound = true }, new Hollow("step", 90, -5, 105, 65, 0, -4)] };
        var root = XDocument.Parse(MotionDrawing.Of(Example.Of("G21 G90 G54\nM30\n", hollows).Recording)).Root!;
        var (plan, front) = (Group(root, "g-plan"), Group(root, "g-front"));
        var (left, width, top, height) = Place(plan);
        var outlines = plan.Elements(Svg + "path").Where(path => path.Attribute("class")!.Value == "d-outline").Select(Numbers).ToList();
        double[] bore = [left + 0.2 * width, left + 0.4 * width, top + height / 3, top + height * 2 / 3];
        Assert.Equal(bore, Extent(outlines[0]), new Near(0.06));
        Assert.Equal([left + 0.9 * width, left + 0.9 * width, top, top + height], Extent(outlines[1]), new Near(0.06));
        (left, width, top, height) = Place(front);
        var walls = front.Elements(Svg + "path").Where(path => path.Attribute("class")!.Value == "d-hidden").Select(Numbers).ToList();
        Assert.Equal(8, walls[0].Length);
        Assert.Equal([left + 0.2 * width, left + 0.4 * width, top, top + height], Extent(walls[0]), new Near(0.06));
        Assert.Equal([left + 0.9 * width, left + width, top, top + 0.4 * height], Extent(walls[1]), new Near(0.06));

        static XElement Group(XElement root, string name) => root.Elements(Svg + "g").Single(group => group.Attribute("class")!.Value == name);

        static (double Left, double Width, double Top, double Height) Place(XElement view)
        {
            var stock = view.Elements(Svg + "rect").Single(rect => rect.Attribute("class")!.Value.Contains("d-stock", StringComparison.Ordinal));
            return (Number(stock, "x"), Number(stock, "width"), Number(stock, "y"), Number(stock, "height"));
        }

        static double[] Extent(double[] places)
        {
            var (across, up) = (places.Where((_, i) => i % 2 == 0), places.Where((_, i) => i % 2 == 1));
            return [across.Min(), across.Max(), up.Min(), up.Max()];
        }
    }

    /// <summary>An arc is drawn as chords that keep to its circle: the middle of the half circle lies a radius off the chord.</summary>
    [Fact]
    public void An_arc_keeps_to_its_circle()
    {
        var example = Example.Of("G21 G17 G90 G54 T1 M6\nG0 X20 Y30 Z0\nG2 X80 Y30 I30 J0 F100\nM30\n", Example.Plate);
        var scene = MotionScene.Of(example.Recording);
        var points = new List<NcLanguage.Machine.Geometry.Point3>();
        var arc = example.Recording.Moves.Single(move => move.Move.Kind == NcLanguage.Control.Moves.MoveKind.Arc);
        MoveWay.Points(arc.Move, scene.ShiftOf(arc.Step), example.Recording.Job, points);
        Assert.All(points, point => Assert.Equal(30, Math.Sqrt(Math.Pow(point.X - 50, 2) + Math.Pow(point.Y - 30, 2)), 9));
        Assert.Equal(60, points.Max(point => point.Y), 0.02);
        Assert.Equal(60, scene.World.Max.Y, 0.02);
    }

    [Fact]
    public void A_rapid_bends_where_the_machine_runs_each_axis_by_itself()
    {
        var machine = MachineProfile.IsoMill with { Readings = MachineProfile.IsoMill.Readings with { RapidPath = RapidPathReading.PerAxis } };
        var example = Example.Of("G21 G90 G54 T1 M6\nG0 X0 Y0 Z10\nG0 X100 Y50\nM30\n", Example.Plate, machine);
        var points = new List<NcLanguage.Machine.Geometry.Point3>();
        MoveWay.Points(example.Recording.Moves.Last(move => move.Move.IsMotion).Move, default, example.Recording.Job, points);
        // At one rate Y is there when X has gone as far.
        Assert.Contains(points, point => Math.Abs(point.X - 50) < 1e-9 && Math.Abs(point.Y - 50) < 1e-9);
    }

    /// <summary>The way home, far above, must not make the work small; it is drawn to the edge.</summary>
    [Fact]
    public void A_way_home_does_not_make_the_work_small()
    {
        var near = Example.Of("G21 G90 G54 T1 M6\nG0 X0 Y0 Z10\nG1 X100 F100\nM30\n", Example.Plate);
        var far = Example.Of("G21 G90 G54 T1 M6\nG0 X0 Y0 Z10\nG1 X100 F100\nG0 Z400\nM30\n", Example.Plate);
        Assert.Equal(MotionScene.Of(near.Recording).World, MotionScene.Of(far.Recording).World);
    }

    [Fact]
    public void What_is_not_known_is_told()
    {
        var words = WordsOf(Example.Of("G21 G90 G55\nG0 X1 Y1 Z1\nG1 X5 F100\nM30\n", Example.Plate));
        Assert.Contains(words, text => text.Contains("moves are not drawn: where they start or end is not known", StringComparison.Ordinal));
        // The first move comes from nobody knows where; the second has both ends.
        Assert.Contains(WordsOf(Example.Of("G21 G90 G54\nG0 X1 Y1 Z1\nX5\nM30\n")), text => text.Contains("1 move is not drawn: where it starts or ends is not known", StringComparison.Ordinal));
        Assert.Contains(WordsOf(Example.Of("")), text => text.Contains("no block that does anything", StringComparison.Ordinal));
        Assert.Contains(WordsOf(Example.Of("G21\nM30\n")), text => text.Contains("moves nothing", StringComparison.Ordinal));
        Assert.Contains(WordsOf(Example.Of("G21 G90 G54\nG0 X1 Y1 Z1\n")), text => text.Contains("no setup file", StringComparison.Ordinal));
    }

    /// <summary>Supports lie under the stock: their hidden edges (dashed, ISO 128-2 line 02.1, from memory) must not be painted over by its filling.</summary>
    [Fact]
    public void Hidden_edges_are_drawn_over_the_filling_of_the_stock()
    {
        var setup = Example.Plate with { Supports = [new BoxObstacle("parallel", new(new(10, 0, -30), new(20, 60, -10)))] };
        var root = XDocument.Parse(MotionDrawing.Of(Example.Of("G21 G90 G54 T1 M6\nG0 X0 Y0 Z5\nX9\nM30\n", setup).Recording)).Root!;
        var plan = root.Elements(Svg + "g").Single(group => group.Attribute("class")!.Value == "g-plan").Elements().Select(element => element.Attribute("class")!.Value).ToList();
        var stock = plan.FindIndex(name => name.Contains("d-stock", StringComparison.Ordinal));
        Assert.InRange(stock, 0, plan.FindIndex(name => name == "d-hidden") - 1);
    }

    /// <summary>In third-angle projection the width stands between plan and front view, where the title of the front view stands too.</summary>
    [Theory]
    [InlineData(ProjectionMethod.FirstAngle)]
    [InlineData(ProjectionMethod.ThirdAngle)]
    public void Titles_stand_clear_of_dimensions_and_datum(ProjectionMethod method)
    {
        var root = XDocument.Parse(MotionDrawing.Of(Example.Of("G21 G90 G54 T1 M6\nG0 X0 Y0 Z5\nX90\nM30\n", Example.Plate).Recording, method)).Root!;
        var titles = root.Elements(Svg + "text").Where(text => text.Value is "Plan" or "Front" || text.Value.StartsWith("Side", StringComparison.Ordinal))
            .Select(text => new Rectangle(Number(text, "x"), Number(text, "y") - 3.5, Dimensions.WidthOf(text.Value, 3.5), 3.5)).ToList();
        Assert.Equal(3, titles.Count);
        var width = root.Elements(Svg + "text").Single(text => text.Value == "100 mm");
        var dimension = new Rectangle(Number(width, "x") - 8, Number(width, "y") - 2.5, 16, 4);
        Assert.DoesNotContain(titles, title => title.Overlaps(dimension));
        foreach (var datum in root.Elements(Svg + "circle").Where(circle => circle.Attribute("class")!.Value == "d-thin d-paper"))
            Assert.DoesNotContain(titles, title => title.Overlaps(new Rectangle(Number(datum, "cx") - 2.5, Number(datum, "cy") - 2.5, 5, 5)));
    }

    [Fact]
    public void Names_without_room_are_counted()
    {
        var crowd = Enumerable.Range(0, 60).Select(i => (Obstacle)new BoxObstacle($"a clamp with a long name {i}", new(new(i, 10, 0), new(i + 0.5, 12, 5))));
        Assert.Contains(WordsOf(Example.Of("G21 G90 G54 T1 M6\nG0 X0 Y0 Z9\nX90\nM30\n", Example.Plate with { Obstacles = [.. crowd] })),
            text => System.Text.RegularExpressions.Regex.IsMatch(text, "[0-9]+ names of clamps or supports are left out"));
        Assert.DoesNotContain(WordsOf(Example.Of("G21 G90 G54 T1 M6\nG0 X0 Y0 Z9\nX90\nM30\n", Example.Plate)), text => text.Contains("left out", StringComparison.Ordinal));
    }

    /// <summary>Ten contacts and ten near misses of clamps whose names take three lines each are more than the column beside the views has room for.</summary>
    [Fact]
    public void Rows_without_room_are_counted()
    {
        var name = string.Join(' ', Enumerable.Repeat("long", 36));
        var row = Enumerable.Range(0, 20).Select(i => (Obstacle)new BoxObstacle($"clamp{i} {name}", new(new(i * 20, i < 10 ? -2 : 5, 0), new(i * 20 + 1, i < 10 ? 2 : 7, 5))));
        var example = Example.Of("G21 G90 G54 T1 M6\nG0 X-20 Y0 Z9\nZ-1\nG1 X500 F100\nM30\n", Example.Plate with { Obstacles = [.. row] });
        var root = XDocument.Parse(MotionDrawing.Of(example.Recording)).Root!;
        var column = root.Elements(Svg + "text").Where(text => text.Attribute("x")!.Value == "308" && text.Value != "0").ToList();
        var said = string.Join(' ', column.Select(text => text.Value));
        var left = int.Parse(Regex.Match(said, "([0-9]+) rows are left out: there is no room. The page \\(nclanguage view\\) has them.").Groups[1].Value, CultureInfo.InvariantCulture);
        // Each contact, eight of the nearest, what is not checked, and the readings; of names there is no room for some.
        var all = example.Recording.ContactCount + Math.Min(8, example.Recording.Closest.Count) + MotionNotes.Of(example.Recording, MotionScene.Of(example.Recording)).Count() + 2;
        Assert.Equal(all - left, Regex.Count(said, "clamp[0-9]+ long") + Regex.Matches(said, "and ([0-9]+) more").Sum(match => int.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture)));
        Assert.All(column, text => Assert.InRange(Number(text, "y"), 0, 262));
        // No heading stands over nothing.
        Assert.Equal("2.5", column[column.FindIndex(text => text.Value.Contains("rows are left out", StringComparison.Ordinal)) - 1].Attribute("font-size")!.Value);
    }

    /// <summary>WCAG 2.1, success criterion 1.4.11: 3 to 1 for lines on the paper and on the stock.</summary>
    [Fact]
    public void Lines_can_be_told_from_paper_and_stock()
    {
        var colours = Regex.Matches(DrawingStyle.Css, @"\.d-(rapid|feed|contact|stock) \{ (?:stroke|fill): #([0-9a-f]{6})").ToDictionary(match => match.Groups[1].Value, match => match.Groups[2].Value);
        Assert.Equal(4, colours.Count);
        foreach (var line in new[] { "rapid", "feed", "contact" })
            foreach (var ground in new[] { "ffffff", colours["stock"] })
                Assert.InRange(Wcag.Contrast(colours[line], ground), 3, 21);
    }

    /// <summary>One inch is 25.4 mm: a program in inches has its lengths, the scale and the stock's dimensions told in inches, as the trace tells them.</summary>
    [Fact]
    public void A_program_in_inches_is_drawn_with_lengths_in_inches()
    {
        var setup = new Setup { IsPresent = true, Stock = new Box3(new Point3(0, 0, -19.05), new Point3(76.2, 50.8, 0)) };
        var example = Example.Of("G20 G90 G54 T1 M6\nG0 X0 Y0 Z1\nG1 X1 F10\nM30\n", setup);
        Assert.Equal(76.2, MotionScene.Of(example.Recording).World.Max.X, 9);
        var words = WordsOf(example);
        Assert.Contains(words, text => text.Contains("1 in cutting", StringComparison.Ordinal));
        Assert.Contains(words, text => text.Contains("Lengths in inches.", StringComparison.Ordinal));
        Assert.All(new[] { "3 in", "2 in", "0.75 in" }, text => Assert.Contains(text, words));
        Assert.DoesNotContain(words, text => text.EndsWith(" mm", StringComparison.Ordinal));
    }

    /// <summary>2,500 holes 2 mm apart: numbers that have no room are left out rather than written over each other.</summary>
    [Fact]
    public void Numbers_of_many_holes_are_left_out_where_there_is_no_room()
    {
        var text = "G21 G90 G54 T1 M6\nG0 X0 Y0 Z5\nG81 R1 Z-1 F100 X0 Y0\n" + string.Concat(Enumerable.Range(1, 2499).Select(i => $"X{i % 50 * 2} Y{i / 50 * 2}\n")) + "G80\nM30\n";
        var root = XDocument.Parse(MotionDrawing.Of(Example.Of(text).Recording)).Root!;
        var numbers = root.Elements(Svg + "text").Where(word => int.TryParse(word.Value, out var number) && number > 0)
            .Select(word => new Rectangle(Number(word, "x"), Number(word, "y") - 2.5, Dimensions.WidthOf(word.Value), 2.5)).ToList();
        Assert.InRange(numbers.Count, 100, 2400);
        Assert.All(numbers, one => Assert.Equal(1, numbers.Count(other => one.Grown(-0.01).Overlaps(other))));
    }

    static List<string> WordsOf(Example example)
    {
        var words = XDocument.Parse(MotionDrawing.Of(example.Recording)).Root!.Descendants(Svg + "text").Select(text => text.Value).ToList();
        // Sentences are broken into lines.
        words.Add(string.Join(' ', words));
        return words;
    }

    static double Number(XElement element, string name) => double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);

    static double[] Numbers(XElement path) =>
        [.. path.Attribute("d")!.Value.Split(['M', 'L', ' '], StringSplitOptions.RemoveEmptyEntries).Select(part => double.Parse(part, CultureInfo.InvariantCulture))];

    static double[] Ends(XElement path)
    {
        var numbers = Numbers(path);
        return [numbers[0], numbers[1], numbers[^2], numbers[^1]];
    }

    sealed class Near(double within) : IEqualityComparer<double>
    {
        public bool Equals(double one, double other) => Math.Abs(one - other) <= within;

        public int GetHashCode(double value) => 0;
    }
}
