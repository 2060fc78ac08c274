using System.Text.RegularExpressions;
using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Loading;
using NcLanguage.Machine.Profiles;
using NcLanguage.Reports.Drawing;
using NcLanguage.Reports.Sheet;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Reports.Tests.Sheet;

/// <summary>The setup sheet: what stands on it, and that what stands in a program stays text.</summary>
public sealed class SetupSheetTests
{
    const string Setup = """
        { "material": "aluminium", "stock": { "min": [0, 0, -20], "max": [100, 40, 0] }, "clearance": 2, "workOffsets": { "G54": [-300, -200, -400.5] },
          "obstacles": [ { "name": "bridge <b>", "min": [28, -20, 0], "max": [44, 60, 25] },
                         { "name": "stud", "center": [90, 20], "diameter": 12, "bottom": 0, "top": 30 } ],
          "supports": [ { "name": "parallel", "min": [0, 0, -40], "max": [100, 8, -20] } ],
          "tools": [ { "number": 1, "kind": "drill", "diameter": 6, "pointAngle": 118, "fluteLength": 40, "flutes": 2, "length": 110, "holderDiameter": 40, "holderGauge": 50,
                       "lengthOffset": 1, "material": "HSS" },
                     { "number": 3, "kind": "tap", "diameter": 8 }, { "number": 7, "kind": "end-mill", "diameter": 10 } ] }
        """;

    const string Program = """
        %
        O123 (LEVER </script><script>alert(1)</script>)
        G21 G90 G17 G94 G54
        (SPOT & <DRILL>)
        T1 M6
        G0 X10 Y20 S1000 M3
        G43 H1 Z40 M8
        G98 G81 X10 Y20 Z-5 R2 F120
        G99 X60
        G80 G0 Z40
        (TURN THE PART)
        M0
        T3 M6
        G0 X10 Y20 S300 M3
        G88 X10 Y20 Z-5 R2 P1 F300
        G80
        M30
        %
        """;

    static readonly SheetPage Page = SheetPage.Of(Program, Setup);

    /// <summary>On a narrow screen the drawing keeps its size, of which its letters are 2.5 mm high: it is moved sideways within its section, as tables are.</summary>
    [Fact]
    public void The_drawing_is_not_made_too_small_to_read()
    {
        var width = Regex.Match(Page.Html, "<svg [^>]*width=\"([0-9.]+mm)\"").Groups[1].Value;
        Assert.Equal("180mm", width);
        Assert.Contains($"@media screen {{ figure svg {{ min-width: {width}; width: 100%; }} }}", Page.Html, StringComparison.Ordinal);
        Assert.Contains("section { overflow-x: auto; }", Page.Html, StringComparison.Ordinal);
    }

    /// <summary>In a vise there may be no room beside the datum: its name then stands over an edge, and has a rim in the colour of the paper.</summary>
    [Fact]
    public void The_name_of_the_datum_can_be_read_over_an_edge()
    {
        Assert.Matches("<text [^>]*class=\"d-rimmed\"[^>]*>G54</text>", Page.Html);
        Assert.Contains(".drawing .d-rimmed { paint-order: stroke; stroke: #ffffff;", DrawingStyle.Css, StringComparison.Ordinal);
    }

    /// <summary>A page of a million rows nobody prints, and no browser shows it.</summary>
    [Fact]
    public void Of_very_many_holes_and_stops_the_first_are_listed_and_the_others_counted()
    {
        var holes = string.Concat(Enumerable.Range(0, 6000).Select(i => $"X{i % 400} Y{i / 400}\n"));
        var stops = string.Concat(Enumerable.Range(0, 400).Select(_ => "M0\n"));
        var page = SheetPage.Of($"G21 G90 G17 G54\nG0 X0 Y0 Z10\nG99 G81 Z-3 R2 F120 L0\n{holes}G80\n{stops}M30\n");
        Assert.Equal(5000, page.Rows("holes").Count);
        Assert.Contains("1000 more are not listed here: nclanguage holes lists them all.", page.Text, StringComparison.Ordinal);
        Assert.Equal(300, page.Rows("stops").Count);
        Assert.Contains("100 more are not listed here: nclanguage trace tells every block.", page.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("more are not listed here: nclanguage holes", Page.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_stands_in_a_program_or_a_setup_is_text()
    {
        Assert.DoesNotContain("<script", Page.Html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<b>", Page.Html, StringComparison.Ordinal);
        Assert.Contains("<script>alert(1)", Page.Text, StringComparison.Ordinal);
        Assert.Equal("SPOT & <DRILL>", Page.Rows("operations")[0]["operation"]);
        Assert.Equal("bridge <b>", Page.Rows("solids")[0]["name"]);
        // A name that would end the style sheet, or a string in it, stays a name.
        var page = SheetPage.Of("M30\n", path: "a\"}</style><script>x.nc");
        Assert.DoesNotContain("<script", page.Html, StringComparison.OrdinalIgnoreCase);
        Assert.Single(Regex.Matches(page.Html, "</style>"));
    }

    [Fact]
    public void The_page_fetches_nothing()
    {
        Assert.Contains("default-src 'none'", Page.Html, StringComparison.Ordinal);
        // The one address names the kind of markup a drawing is.
        Assert.All(Regex.Matches(Page.Html, "https?://[^\"' ]+").Select(match => match.Value), address => Assert.Equal("http://www.w3.org/2000/svg", address));
        Assert.DoesNotContain("src=", Page.Html, StringComparison.Ordinal);
        Assert.DoesNotContain("url(", Page.Html, StringComparison.Ordinal);
    }

    [Fact]
    public void The_head_says_what_the_sheet_is_about()
    {
        foreach (var said in new[] { "Setup sheet: part.nc", "O123", "2026-03-04 15:06", "iso-mill", "aluminium", "100 × 40 × 20 mm", "program and sheet in mm; mm/min", "P0.5 waits half a second" })
            Assert.Contains(said, Page.Text, StringComparison.Ordinal);
    }

    [Fact] // 1 in is 25.4 mm.
    public void The_sheet_of_a_program_in_inches_is_in_inches()
    {
        const string InInches = """
            { "units": "inch", "stock": { "min": [0, 0, -0.5], "max": [4, 2, 0] }, "clearance": 0.125,
              "obstacles": [ { "name": "bar", "min": [3.625, 0, 0], "max": [4, 2, 0.375] } ],
              "tools": [ { "number": 2, "kind": "drill", "diameter": 0.25, "pointAngle": 118, "fluteLength": 2.5, "flutes": 2 } ] }
            """;
        var page = SheetPage.Of("G20 G90 G17 G94 G54\nT2 M6\nS1500 M3\nG0 X1. Y.5\nG43 H2 Z1.\nG99 G81 X1.25 Y.5 Z-.375 R.1 F4.5\nG80\nG0 Z2.\nM5\nM30\n", InInches);
        foreach (var said in new[] { "program and sheet in inches; in/min", "4 × 2 × 0.5 in", "to X4 Y2 Z0 of G54, in inches.", "Lengths in inches from the datum", "nearer than 0.125 in is told" })
            Assert.Contains(said, page.Text, StringComparison.Ordinal);
        var hole = Assert.Single(page.Rows("holes"));
        Assert.Equal(("1.25", "0.5", "0.1", "-0.375", "4.5", "1500"), (hole["X in"], hole["Y in"], hole["R in"], hole["bottom in"], hole["feed in/min"], hole["speed 1/min"]));
        var tool = Assert.Single(page.Rows("tools"));
        Assert.Equal(("0.25", "118", "2", "2.5"), (tool["diameter in"], tool["point °"], tool["flutes"], tool["flute length in"]));
        Assert.Equal("3.625", Assert.Single(page.Rows("solids"))["X from in"]);
        Assert.Equal("4.5", Assert.Single(page.Rows("tool-work"))["feed in/min"]);
        Assert.Contains(">3.625</text>", page.Html, StringComparison.Ordinal);
        // But for what a reading means in any unit.
        Assert.DoesNotContain("mm", page.Text[..page.Text.IndexOf("How the control is taken", StringComparison.Ordinal)], StringComparison.Ordinal);
    }

    [Fact]
    public void The_cautions_stand_before_anything_else_and_nothing_is_called_safe()
    {
        var text = Page.Text;
        foreach (var caution in new[] { "A check is no proof", "single block", "dry run above the part", "a hand on feed hold", "Local codes and licensed practice come first" })
            Assert.InRange(text.IndexOf(caution, StringComparison.Ordinal), 0, text.IndexOf("Open findings", StringComparison.Ordinal));
        Assert.DoesNotMatch(new Regex(@"\b(safe|collision-free)\b", RegexOptions.IgnoreCase), text);
    }

    [Fact]
    public void Errors_come_first_and_mistakes_in_the_setup_are_among_them()
    {
        var problem = new SetupProblem(ProblemKind.Value, "shop/part.setup.json", 7, 1, 7, 2, "The length is no number.");
        var rows = SheetPage.Of(Program, Setup, problems: [problem]).Rows("findings");
        var words = rows.Select(row => row["what"]).ToList();
        Assert.Equal(words.OrderBy(word => Array.IndexOf(["ERROR", "warning", "note"], word)), words);
        Assert.Contains(rows, row => (row["what"], row["line"], row["message"]) == ("ERROR", "7 of part.setup.json", "The length is no number."));
        // T3 comes down without G43.
        Assert.Contains(rows, row => (row["what"], row["rule"]) == ("ERROR", "length-offset-missing"));
    }

    [Fact]
    public void What_the_setup_leaves_out_is_said()
    {
        var tools = Page.Rows("tools");
        Assert.Equal(["T1", "T3"], tools.Select(tool => tool["tool"]));
        Assert.Equal(("drill, HSS", "6", "118", "–", "40", "110", "60", "40", "1", "–"),
            (tools[0]["kind"], tools[0]["diameter mm"], tools[0]["point °"], tools[0]["pitch mm"], tools[0]["flute length mm"], tools[0]["length mm"], tools[0]["out of holder mm"], tools[0]["holder mm"],
                tools[0]["H"], tools[0]["D"]));
        // A tap needs no point angle, and has no pitch here, no length and no holder; the offset of T1 is still in force when it travels.
        Assert.Equal(("8", "–", "not given", "not given", "not given", "not given", "1"),
            (tools[1]["diameter mm"], tools[1]["point °"], tools[1]["pitch mm"], tools[1]["length mm"], tools[1]["out of holder mm"], tools[1]["holder mm"], tools[1]["H"]));
        Assert.Contains("not used by this program: T7", Page.Text, StringComparison.Ordinal);
        Assert.Contains("the drawing (the setup lists none of its holes)", Page.Text, StringComparison.Ordinal);
        Assert.Equal("kind not given, HSS, spindle stands", SheetPage.Of("G21 G90 G94\nT5 M6\nG0 X0 Y0 Z5\nG1 X5 F100\nM30\n", """{ "tools": [ { "number": 5, "material": "HSS", "turns": false } ] }""").Rows("tools")[0]["kind"]);
        Assert.Equal("not in the setup file", SheetPage.Of("G21 G90 G94\nT5 M6\nG0 X0 Y0 Z5\nG1 X5 F100\nM30\n", Setup).Rows("tools")[0]["kind"]);
    }

    [Fact]
    public void Stops_tell_what_somebody_has_to_do()
    {
        var stops = Page.Rows("stops");
        Assert.Equal([("12", "M0", "TURN THE PART"), ("15", "G88 X10 Y20 Z-5 R2 P1 F300", "–")], stops.Select(stop => (stop["line"], stop["block"], stop["comment"])));
        Assert.Contains("by hand", stops[1]["what"], StringComparison.Ordinal);
    }

    /// <summary>M0 stops always, M1 only with the operator's switch on (NIST RS274NGC version 3, 3.6.1, from memory).</summary>
    [Fact]
    public void An_optional_stop_is_told_from_one_that_always_stops()
    {
        var stops = SheetPage.Of("G21 G90 G54\nT1 M6\nG0 X0 Y0 Z9\nM1\nM0\nM30\n", Setup).Rows("stops");
        Assert.Equal([("4", "optional stop; acts only with the switch on"), ("5", "stop; start again by hand")], stops.Select(stop => (stop["line"], stop["what"])));
    }

    /// <summary>On its way from the tool change each tool still has the offsets of the one before.</summary>
    [Fact]
    public void Offsets_of_a_tool_are_those_that_it_is_called_or_cuts_with()
    {
        var tools = SheetPage.Of("""
            G21 G90 G17 G94 G54 G40
            T1 M6
            G43 H1 G0 X0 Y0 Z40 S1000 M3
            G41 D1 G1 X10 F100
            X20
            G0 Z40
            T2 M6
            G0 X30 Y0
            G43 H2 Z20
            G41 D2 X40
            G1 X50 F100
            G40 X60
            T3 M6
            G0 X0
            G43 H3 Z9
            M30
            """, Setup).Rows("tools");
        Assert.Equal([("1", "1"), ("2", "2"), ("3", "–")], tools.Select(tool => (tool["H"], tool["D"])));
    }

    [Fact]
    public void Clamps_are_drawn_and_listed_with_their_places_from_the_datum()
    {
        var drawing = Regex.Match(Page.Html, "<svg.*?</svg>", RegexOptions.Singleline).Value;
        var numbers = Regex.Matches(drawing, "<text[^>]*>([^<]*)</text>").Select(match => match.Groups[1].Value).ToList();
        // Of X: edges of stock and clamps, and the datum; the stud reaches from 84 to 96.
        foreach (var number in new[] { "0", "28", "44", "84", "96", "100", "-20", "60", "40", "8", "25", "30", "-40" })
            Assert.Contains(number, numbers);
        Assert.Contains("stud", numbers);
        var stud = Page.Rows("solids")[1];
        Assert.Equal(("round, 12 mm about X90 Y20", "84", "96", "14", "26", "0", "30"),
            (stud["shape"], stud["X from mm"], stud["X to mm"], stud["Y from mm"], stud["Y to mm"], stud["Z from mm"], stud["Z to mm"]));
        var offset = Assert.Single(Page.Rows("offsets"));
        Assert.Equal(("-300", "-200", "-400.5", "yes"), (offset["X mm"], offset["Y mm"], offset["Z mm"], offset["used"]));
    }

    /// <summary>The words under the drawing are true: of no hole, of 400 at one place, and of more places than are drawn.</summary>
    [Theory]
    [InlineData("", 0, "The program drills no hole in a cycle.")]
    [InlineData("G81 X10 Y20 Z-5 R30 F120\nX10 L399\n", 1, "Holes where the program drills them, at the size of the widest tool.")]
    [InlineData("G81 X10 Y20 Z-5 R30 F120\nX400\n", 1, "1 hole is not drawn: off the drawing")]
    [InlineData("G91 G81 X0.2 Z-35 R-10 F120 L301\n", 0, "Holes are not drawn: there are 301 places")]
    public void What_is_said_of_the_holes_of_the_drawing_is_so(string holes, int drawn, string said)
    {
        var page = SheetPage.Of($"G21 G90 G17 G94 G54\nT1 M6\nG43 H1 G0 X0 Y0 Z40\nS1000 M3\n{holes}G80\nM30\n", Setup);
        var drawing = Regex.Match(page.Html, "<svg.*?</svg>", RegexOptions.Singleline).Value;
        // The stud is a circle too, and two stand for the datum of each view, two for the projection.
        var radius = 6.0 / 12 * double.Parse(Regex.Match(drawing, "<circle class=\"d-outline\" [^>]*r=\"([0-9.]+)\"").Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(drawn, Regex.Matches(drawing, "<circle class=\"d-outline\" [^>]*r=\"([0-9.]+)\"").Count(circle => Math.Abs(SheetPage.Number(circle.Groups[1].Value) - radius) < 0.02));
        Assert.Contains(said, page.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Names_captions_and_dimensions_do_not_lie_on_one_another()
    {
        // A datum at the corner of the stock with nothing above it: its mark would stand where the caption does.
        const string Bare = """{ "stock": { "min": [0, 0, -20], "max": [100, 40, 0] }, "supports": [ { "name": "parallel", "min": [0, 0, -40], "max": [100, 8, -20] } ] }""";
        foreach (var setup in new[] { Setup, Bare })
        {
            var drawing = Regex.Match(SheetPage.Of("M30\n", setup).Html, "<svg.*?</svg>", RegexOptions.Singleline).Value;
            var texts = Regex.Matches(drawing, "<text x=\"([0-9.-]+)\" y=\"([0-9.-]+)\" font-size=\"2.5\"( text-anchor=\"(end|middle)\")?>([^<]*)</text>").Select(match => Box(match)).ToList();
            Assert.True(texts.Count > 5);
            Assert.All(texts, one => Assert.Equal(1, texts.Count(other => one.Grown(-0.05).Overlaps(other))));
            var marks = Regex.Matches(drawing, "<circle class=\"d-thin d-paper\" cx=\"([0-9.-]+)\" cy=\"([0-9.-]+)\"").Select(match => (X: SheetPage.Number(match.Groups[1].Value), Y: SheetPage.Number(match.Groups[2].Value))).ToList();
            Assert.Equal(2, marks.Count);
            Assert.All(marks, mark => Assert.DoesNotContain(texts, text => text.Overlaps(new Rectangle(mark.X - 2.5, mark.Y - 2.5, 5, 5))));
        }

        static Rectangle Box(Match text)
        {
            var width = Dimensions.WidthOf(text.Groups[5].Value);
            var left = SheetPage.Number(text.Groups[1].Value) - (text.Groups[4].Value switch { "end" => width, "middle" => width / 2, _ => 0 });
            return new Rectangle(left, SheetPage.Number(text.Groups[2].Value) - 2.5, width, 2.5);
        }
    }

    [Fact]
    public void A_contact_is_set_off_in_words()
    {
        var page = SheetPage.Of(Program.Replace("G98 G81", "G99 G81", StringComparison.Ordinal), Setup);
        // At R2 the drill of 6 goes through the bridge, 16 wide: from its middle the shortest way out is 8 + 3 mm.
        Assert.Equal("CONTACT -11", page.Rows("approaches")[0]["distance mm"]);
        Assert.Contains("<tr class=\"alarm\">", page.Html, StringComparison.Ordinal);
    }

    [Fact]
    public void Numbers_have_units()
    {
        string[] counts = ["no.", "line", "lines", "holes", "flutes", "H", "D", "operation", "operations", "times"];
        foreach (Match table in Regex.Matches(Page.Html, "<thead>.*?</thead>", RegexOptions.Singleline))
            foreach (Match head in Regex.Matches(table.Value, "<th scope=\"col\" class=\"n\">([^<]*)(<span>.+?</span>)?</th>"))
                Assert.True(head.Groups[2].Success || counts.Contains(head.Groups[1].Value.Trim()), $"{head.Groups[1].Value} has no unit.");
    }

    [Fact]
    public void There_are_lines_to_sign() =>
        Assert.Equal(["Set up by", "Checked by", "First part run by", "First part measured by"], Page.Rows("sign").Select(row => row["what"]));

    [Theory]
    [InlineData("", "The program makes no move.")]
    [InlineData("%\nO5\n%\n", "O5")]
    [InlineData("G0 X10\nG1 X20 F100\n", "no setup file")]
    public void Little_to_tell_makes_a_page_too(string program, string said)
    {
        var page = SheetPage.Of(program);
        Assert.Contains(said, page.Text, StringComparison.Ordinal);
        Assert.Contains("nothing to draw", page.Text, StringComparison.Ordinal);
        Assert.EndsWith("</html>\n", page.Html, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_hole_of_two_thousand_is_listed()
    {
        var blocks = string.Concat(Enumerable.Range(1, 1999).Select(i => $"X{i % 50 * 2} Y{i / 50}\n"));
        var page = SheetPage.Of($"G21 G90 G17 G94 G54\nT1 M6\nG43 H1 G0 X0 Y0 Z40\nS1000 M3\nG99 G81 X0 Y0 Z-5 R30 F120\n{blocks}G80\nM30\n", Setup);
        var holes = page.Rows("holes");
        Assert.Equal(Enumerable.Range(1, 2000).Select(number => $"{number}"), holes.Select(hole => hole["no."]));
        Assert.Equal(("98", "39"), (holes[^1]["X mm"], holes[^1]["Y mm"]));
    }

    /// <summary>WCAG 2.1, success criterion 1.4.3: 4.5 to 1. The other colours are those of the reference, which has the same test.</summary>
    [Fact]
    public void Colours_can_be_told_from_their_ground()
    {
        var css = Regex.Match(Page.Html, "<style>.*?</style>", RegexOptions.Singleline).Value;
        string[] grounds = [.. Regex.Matches(css, "--ground: #([0-9a-f]{6})").Select(match => match.Groups[1].Value)];
        string[] alarms = [.. Regex.Matches(css, "--alarm: #([0-9a-f]{6})").Select(match => match.Groups[1].Value)];
        Assert.Equal((3, 3), (grounds.Length, alarms.Length));
        Assert.All(grounds.Zip(alarms), pair => Assert.InRange(Contrast(pair.First, pair.Second), 4.5, 21));
    }

    static double Contrast(string one, string other)
    {
        var (a, b) = (Luminance(one), Luminance(other));
        return (Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05);
    }

    static double Luminance(string colour)
    {
        var parts = Convert.FromHexString(colour).Select(part => part / 255.0).Select(part => part <= 0.04045 ? part / 12.92 : Math.Pow((part + 0.055) / 1.055, 2.4)).ToArray();
        return 0.2126 * parts[0] + 0.7152 * parts[1] + 0.0722 * parts[2];
    }

    [Fact] // G55 lies 20 mm further along X: places under it are told with its name.
    public void Places_say_their_work_offset_where_there_is_more_than_one()
    {
        var setup = Setup.Replace("\"G54\": [-300, -200, -400.5]", "\"G54\": [-300, -200, -400.5], \"G55\": [-280, -200, -400.5]", StringComparison.Ordinal);
        var page = SheetPage.Of(Program.Replace("G99 X60", "G55 X50 Y20 Z-5 R2", StringComparison.Ordinal), setup);
        Assert.Equal(["G54", "G55", "G55"], page.Rows("holes").Select(row => row["work offset"]));
        Assert.All(page.Rows("approaches"), row => Assert.Contains(row["work offset"], new[] { "G54", "G55" }));
        // The first operation drills under both, as deep under each; the deepest comes first.
        Assert.Equal("G54, G55", page.Rows("operations")[0]["work offset"]);
        Assert.Contains("of each hole those of its own work offset", page.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("work offset", Page.Rows("operations")[0].Keys);
        Assert.DoesNotContain("work offset", Page.Rows("holes")[0].Keys);
        Assert.DoesNotContain("work offset", Page.Rows("approaches")[0].Keys);
    }

    [Fact]
    public void A_feed_and_a_speed_beyond_the_machine_are_told_alike()
    {
        var machine = MachineProfile.IsoMill with { IsChosen = true, MaxFeed = 6000, Spindle = new Limits(50, 8000) };
        var analysis = ProgramAnalysis.Create(
            SourceText.From("G21 G90 G17 G94 G54\nT1 M6\nS9000 M3\nG0 X10 Y0 Z10\nG99 G81 X10 Y0 Z-3 R2 F9000\nG80\nM30\n"), Trace.Operations.SetupOf(Setup), machine);
        var page = SheetPage.Of(new SheetInput("part.nc", analysis, [], new DateTimeOffset(2026, 3, 4, 15, 6, 0, TimeSpan.Zero)));
        var hole = Assert.Single(page.Rows("holes"));
        Assert.Equal(("9000→6000", "9000→8000"), (hole["feed mm/min"], hole["speed 1/min"]));
        Assert.Equal(("6000", "8000"), (page.Rows("operations")[0]["feed mm/min"], page.Rows("operations")[0]["speed 1/min"]));
        Assert.Contains("the program says 9000", page.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("the program says 9000", Page.Text, StringComparison.Ordinal);
    }
}
