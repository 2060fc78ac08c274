using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.Json;
using NcLanguage.Cli.Tests.Support;

namespace NcLanguage.Cli.Tests;

/// <summary><c>trace</c> and <c>holes</c>: the shapes of the contract, with numbers worked out by hand.</summary>
public sealed class TraceAndHolesTests : IDisposable
{
    // Two holes with a clamp between; machine with infinite patience: only places and feeds are held against hand work.
    const string Program = """
        G21 G90 G17 G94 G54
        G0 X0 Y0 Z10
        T1 M6
        S1000 M3
        G99 G82 X10 Y0 Z-3 R2 P0.5 F120
        X50
        G80
        G1 X60 Y10 F300
        G2 X70 Y0 I0 J-10
        M30

        """;

    const string Setup = """
        { "stock": { "min": [0, -20, -10], "max": [80, 20, 0] }, "clearance": 2,
          "obstacles": [ { "name": "bar", "min": [28, -5, 0], "max": [32, 5, 8] } ],
          "tools": [ { "number": 1, "kind": "drill", "diameter": 6, "pointAngle": 118 } ],
          "holes": [ { "x": 10, "y": 0, "diameter": 6, "depth": 1 }, { "x": 50, "y": 0, "diameter": 6, "depth": 5 }, { "x": 20, "y": 10, "diameter": 6 } ] }
        """;

    readonly Scratch _scratch = new();

    public TraceAndHolesTests()
    {
        _scratch.Write("two.nc", Program);
        _scratch.Write("two.setup.json", Setup);
    }

    public void Dispose() => _scratch.Dispose();

    static double Number(JsonElement element, string name) => element.GetProperty(name).GetDouble();

    static double[] Point(JsonElement element, string name) => [.. element.GetProperty(name).EnumerateArray().Select(axis => axis.GetDouble())];

    [Fact] // 1 in is 25.4 mm: a program in inches is told in inches, and other programs read mm all the same.
    public void The_holes_of_a_program_in_inches_are_told_in_inches()
    {
        _scratch.Write("inch.nc", "G20 G90 G17 G94 G54\nT1 M6\nS1000 M3\nG0 X0 Y0 Z1.\nG99 G81 X1.25 Y.5 Z-.375 R.1 F4.5\nG80\nM30\n");
        _scratch.Write("inch.setup.json", """
            { "units": "inch", "tools": [ { "number": 1, "kind": "drill", "diameter": 0.25, "pointAngle": 118 } ], "holes": [ { "x": 3, "y": 0.5, "diameter": 0.25 } ] }
            """);
        var output = Command.In(_scratch.Folder, "holes", "inch.nc").Output;
        Assert.Contains("Work coordinates in inches; feeds in in/min;", output, StringComparison.Ordinal);
        Assert.Contains("in the setup's frame, in inches.", output, StringComparison.Ordinal);
        var row = output.Split('\n').Single(line => line.Contains("G81", StringComparison.Ordinal)).Split(' ', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(["1", "5", "G81", "T1", "1.25", "0.5", "1", "0.1", "-0.375", "0.1", "4.5", "1000"], row.Select(cell => cell.Trim()));
        Assert.Contains(output.Split('\n'), line => line.Split(' ', StringSplitOptions.RemoveEmptyEntries) is ["3", "0.5", "0.25", ..]);
        var hole = Command.In(_scratch.Folder, "holes", "inch.nc", "--format", "json").Json.GetProperty("holes")[0];
        Assert.Equal((31.75, 114.3), (Number(hole, "x"), Number(hole, "feed")));
        Assert.Contains("Work coordinates in mm; feeds in mm/min;", Command.In(_scratch.Folder, "holes", "two.nc").Output, StringComparison.Ordinal);
    }

    [Fact] // A further program of the file that names no unit is called by others: nobody knows it there, and what was known before holds.
    public void The_unit_of_the_run_is_the_last_that_is_known()
    {
        const string Inches = "%\nO1\nG20 G90 G17 G94 G54\nT1 M6\nS1000 M3\nG0 X0 Y0 Z1.\nG99 G81 X1.25 Y.5 Z-.375 R.1 F4.5\nG80\nM30\n";
        _scratch.Write("further.nc", Inches + "O2\nG90 G0 X1. Y1.\nM99\n%\n");
        _scratch.Write("other.nc", Inches.Replace("Y.5", "Y.6", StringComparison.Ordinal) + "%\n");
        Assert.Contains("Work coordinates in inches;", Command.In(_scratch.Folder, "holes", "further.nc").Output, StringComparison.Ordinal);
        Assert.Contains("of the tool tip in inches,", Command.In(_scratch.Folder, "trace", "further.nc").Output, StringComparison.Ordinal);
        Assert.Contains("of the tool tip in inches,", Command.In(_scratch.Folder, "compare", "further.nc", "other.nc").Output, StringComparison.Ordinal);
    }

    [Fact] // A slot of 1/4 in by 2 in, 0.1 in deep, with a round end on either side: 0.25 · 2 + π · 0.125² = 0.5491 in², 0.055 in³.
    public void The_moves_of_a_program_in_inches_are_told_in_inches()
    {
        _scratch.Write("slot.nc", "G20 G90 G17 G94 G54\nT1 M6\nS1000 M3\nG0 X1. Y1. Z0.1\nG1 Z-.1 F4.\nX3.\nG0 Z1.\nM30\n");
        _scratch.Write("slot.setup.json", """
            { "units": "inch", "stock": { "min": [0, 0, -0.5], "max": [4, 2, 0] }, "obstacles": [ { "name": "bar", "min": [3.625, 0, 0], "max": [4, 2, 0.5] } ],
              "tools": [ { "number": 1, "kind": "end-mill", "diameter": 0.25 } ] }
            """);
        var lines = Command.In(_scratch.Folder, "trace", "slot.nc").Output.Split('\n').Select(line => string.Join(' ', line.Split(' ', StringSplitOptions.RemoveEmptyEntries)).Trim()).ToList();
        Assert.Contains("Work coordinates of the tool tip in inches, feeds in in/min. ? is not known.", lines);
        Assert.Contains("feed to X3 Y1 Z-0.1 F4 30 s 0.5 in to bar", lines);
        Assert.Contains("op tool lines time rapid in cut in holes removed in³ depth of cut in in³/min what", lines);
        Assert.Contains(lines, line => line.Contains("1.1 in at rapid, 2.2 in cutting.", StringComparison.Ordinal));
        var operation = lines.Single(line => line.EndsWith("Milling", StringComparison.Ordinal)).Split(' ');
        Assert.Equal(["1.1", "2.2"], operation[^6..^4]);
        Assert.InRange(double.Parse(operation[^4], CultureInfo.InvariantCulture), 0.05, 0.06);
        Assert.Equal("0.1", operation[^3]);
    }

    [Fact] // T2 has no diameter: no distance to the bar, except where its axis itself runs into it.
    public void A_tool_of_unknown_diameter_has_no_distance()
    {
        const string setup = """{ "obstacles": [ { "name": "bar", "min": [28, -5, 0], "max": [32, 5, 8] } ], "tools": [ { "number": 2, "kind": "drill" } ] }""";
        _scratch.Write("bare.nc", "G21 G90 G17 G54\nT2 M6\nG0 X0 Y6 Z5\nX50\nY0\nX0\nG55 X10\nM30\n");
        _scratch.Write("bare.setup.json", setup);
        var steps = Command.In(_scratch.Folder, "trace", "bare.nc", "--format", "json").Json.GetProperty("steps").EnumerateArray().ToList();
        JsonElement At(int line) => steps.Single(step => step.GetProperty("line").GetInt32() == line).GetProperty("moves")[0].GetProperty("clearance").GetProperty("distance");
        Assert.Equal(JsonValueKind.Null, At(4).ValueKind);
        Assert.True(At(6).GetDouble() < 0);
        var said = string.Join(' ', Command.In(_scratch.Folder, "check", "bare.nc", "--machine", "iso-mill").Output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains("clearance of T2 (its diameter is not known)", said, StringComparison.Ordinal);
        Assert.Contains("clearance under G55 (where it lies in the setup's frame is not known)", said, StringComparison.Ordinal);
        Assert.DoesNotContain("deep", Command.In(_scratch.Folder, "trace", "bare.nc").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void The_trace_has_the_members_of_the_contract()
    {
        var outcome = Command.In(_scratch.Folder, "trace", "two.nc", "--format", "json");
        Assert.Equal((0, ""), (outcome.ExitCode, outcome.Errors));
        var trace = outcome.Json;
        Assert.Equal(("two.nc", "iso-mill"), (trace.GetProperty("path").GetString(), trace.GetProperty("machine").GetString()));
        // 5 mm down to Z-3 twice at 120 mm/min and the dwells of half a second are the least it takes.
        Assert.True(Number(trace, "seconds") > 2 * (5.0 / 120 * 60 + 0.5));
        // Feeds: twice 5 mm, 14.142 mm from X50 Y0 to X60 Y10, a quarter of a circle of 10 mm.
        Assert.Equal(10 + Math.Sqrt(200) + 5 * Math.PI, Number(trace.GetProperty("distance"), "cut"), 5);

        var steps = trace.GetProperty("steps").EnumerateArray().ToList();
        var hop = steps.Single(step => step.GetProperty("line").GetInt32() == 6);
        Assert.Equal("X50", hop.GetProperty("block").GetString());
        var traverse = hop.GetProperty("moves").EnumerateArray().First(move => Point(move, "to")[0] == 50);
        Assert.Equal("rapid", traverse.GetProperty("kind").GetString());
        Assert.Equal([10, 0, 2], Point(traverse, "from"));
        Assert.Equal([50, 0, 2], Point(traverse, "to"));
        var clearance = traverse.GetProperty("clearance");
        Assert.Equal("bar", clearance.GetProperty("obstacle").GetString());
        // The shortest way out: up, from Z2 to the bar's top at Z8; sideways it would be the radius and half its width.
        Assert.True(Number(clearance, "distance") < 0);

        var dwell = hop.GetProperty("moves").EnumerateArray().Single(move => move.GetProperty("kind").GetString() == "dwell");
        Assert.Equal(0.5, Number(dwell, "seconds"));
        var feed = hop.GetProperty("moves").EnumerateArray().Single(move => move.GetProperty("kind").GetString() == "feed");
        Assert.Equal((120, 2.5), (Number(feed, "feed"), Number(feed, "seconds")));
        Assert.False(feed.TryGetProperty("center", out _));

        var arc = steps.Single(step => step.GetProperty("line").GetInt32() == 9).GetProperty("moves")[0];
        Assert.Equal(("arc", "clockwise"), (arc.GetProperty("kind").GetString(), arc.GetProperty("turn").GetString()));
        Assert.Equal([60, 0, 2], Point(arc, "center"));
        Assert.Equal(2, trace.GetProperty("holes").GetArrayLength());
    }

    [Fact]
    public void A_move_that_is_far_from_the_obstacle_tells_its_exact_distance()
    {
        var outcome = Command.In(_scratch.Folder, "trace", "two.nc", "--format", "json");
        var feed = outcome.Json.GetProperty("steps").EnumerateArray().Single(step => step.GetProperty("line").GetInt32() == 6)
            .GetProperty("moves").EnumerateArray().Single(move => move.GetProperty("kind").GetString() == "feed");
        // At X50 the bar's face at X32 is 18 mm from the axis, 15 mm from a drill of 6 mm, far beyond the setup's clearance of 2 mm.
        Assert.Equal(15, feed.GetProperty("clearance").GetProperty("distance").GetDouble(), 6);
    }

    [Fact]
    public void Without_obstacles_no_clearance_is_told_and_unknown_places_are_null()
    {
        _scratch.Write("bare.nc", "G21 G90\nG0 X5\nM30\n");
        var move = Command.In(_scratch.Folder, "trace", "bare.nc", "--format", "json").Json.GetProperty("steps")[1].GetProperty("moves")[0];
        Assert.False(move.TryGetProperty("clearance", out _));
        Assert.Equal("[null,null,null]", move.GetProperty("from").GetRawText());
        Assert.Equal("[5,null,null]", move.GetProperty("to").GetRawText());
        Assert.Equal(JsonValueKind.Null, move.GetProperty("seconds").ValueKind);
    }

    [Fact] // Each axis at its own rate: 45 degrees to X50 Y50, then along X: 50 * sqrt(2) + 50; straight: sqrt(100² + 50²).
    public void The_way_at_rapid_is_that_of_the_reading()
    {
        _scratch.Write("way.nc", "G21 G90 G17 G54\nG0 X0 Y0 Z10\nX100 Y50\nM30\n");
        Assert.Equal(120.7107, Way("perAxis"), 4);
        Assert.Equal(111.8034, Way("straight"), 4);

        double Way(string path) => Number(
            Command.In(_scratch.Folder, "trace", "way.nc", "--format", "json", "--reading", "rapidPath=" + path).Json.GetProperty("distance"), "rapid");
    }

    [Fact]
    public void The_holes_have_the_members_of_the_contract()
    {
        var outcome = Command.In(_scratch.Folder, "holes", "two.nc", "--format", "json");
        Assert.Equal((0, ""), (outcome.ExitCode, outcome.Errors));
        var holes = outcome.Json.GetProperty("holes").EnumerateArray().ToList();
        Assert.Equal(2, holes.Count);
        // leastReturn: over the bar's top at Z8 with 2 mm to spare.
        Assert.Equal(
            """{"number":1,"line":5,"cycle":"G82","tool":1,"x":10,"y":0,"rLevel":2,"bottom":-3,"returnTo":2,"arriveAt":10,"dwellSeconds":0.5,"feed":120,"speed":1000,"leastReturn":10}""",
            holes[0].GetRawText());
        Assert.Equal((2, 6, 2.0), (holes[1].GetProperty("number").GetInt32(), holes[1].GetProperty("line").GetInt32(), Number(holes[1], "arriveAt")));
        Assert.Equal(JsonValueKind.Null, holes[1].GetProperty("leastReturn").ValueKind);
        // A drill of 6 mm and 118 degrees has a point of 1.803 mm: 3 mm down it cuts 1.197 mm at full diameter.
        Assert.Equal(
            ["drilled", "shallow", "missing"],
            outcome.Json.GetProperty("drawing").EnumerateArray().Select(hole => hole.GetProperty("status").GetString()));
        Assert.Equal(
            """{"diameter":6,"depth":1.197418,"threadDepth":null,"by":"drilled","holes":[2],"lines":[6]}""", outcome.Json.GetProperty("drawing")[1].GetProperty("made").GetRawText());
    }

    [Fact]
    public void Values_separated_by_commas_have_a_row_for_each_hole_and_each_missing_one()
    {
        var rows = Command.In(_scratch.Folder, "holes", "two.nc", "--format", "csv").Output.Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal("number,line,cycle,tool,x,y,rLevel,bottom,returnTo,arriveAt,dwellSeconds,feed,speed,leastReturn,drawing", rows[0]);
        Assert.Equal("1,5,G82,1,10,0,2,-3,2,10,0.5,120,1000,10,drilled", rows[1]);
        Assert.Equal(",,,,20,10,,,,,,,,,missing", rows[3]);
        Assert.All(rows, row => Assert.Equal(15, row.Split(',').Length));
    }

    /// <summary>What is no table is broken at blanks on a terminal of 80 places, the usual width (common practice of terminals); elsewhere it is one line.</summary>
    [Theory]
    [InlineData("holes two.nc", "Work coordinates in mm;", "Depths are those at full diameter")]
    [InlineData("compare two.nc one.nc", "done otherwise;")]
    [InlineData("trace two.nc", "of unknown length or time")]
    [InlineData("explain setup.tools", "What kind of tool it is.")]
    [InlineData("explain", "The way in or out of radius compensation is no straight line")]
    public void Sentences_are_broken_where_a_terminal_ends(string command, params string[] parts)
    {
        if (!OperatingSystem.IsLinux() || !File.Exists("/usr/bin/script"))
            return;
        _scratch.Write("one.nc", Program.Replace("G99 G82 X10 Y0 Z-3 R2 P0.5", "G98 G82 X10 Y0 Z-3 R4 P0.1", StringComparison.Ordinal));
        var whole = Command.In(_scratch.Folder, command.Split(' ')).Output;
        _scratch.Write("run.sh", $"stty cols 80\n'{Command.Executable}' {command}\n");
        Command.Start("script", _scratch.Folder, null, ["-qc", "bash run.sh", "seen"], ("TERM", "dumb"));
        var seen = File.ReadAllLines(_scratch.At("seen"));
        foreach (var part in parts)
        {
            var told = whole.Split('\n').First(line => line.Contains(part, StringComparison.Ordinal));
            Assert.InRange(told.Length, 81, int.MaxValue);
            var first = Array.FindIndex(seen, line => line.Trim() is { Length: > 20 } text && told.TrimStart().StartsWith(text[..20], StringComparison.Ordinal));
            Assert.True(first >= 0, told);
            Assert.InRange(seen[first].Length, 20, 80);
            // It goes on where it was broken off.
            Assert.StartsWith(seen[first].Trim() + " " + seen[first + 1].Trim()[..5], told.TrimStart(), StringComparison.Ordinal);
        }
    }

    /// <summary>A move and its clearance have no room in a line of 80 places: there the clearance stands below.</summary>
    [Fact]
    public void Moves_are_not_broken_where_a_terminal_ends()
    {
        if (!OperatingSystem.IsLinux() || !File.Exists("/usr/bin/script"))
            return;
        _scratch.Write("run.sh", $"stty cols 80\n'{Command.Executable}' trace two.nc\n");
        Command.Start("script", _scratch.Folder, null, ["-qc", "bash run.sh", "seen"], ("TERM", "dumb"));
        var moves = File.ReadLines(_scratch.At("seen")).TakeWhile(line => !line.Contains("op tool", StringComparison.Ordinal)).Where(line => line.StartsWith("          ", StringComparison.Ordinal)).ToList();
        Assert.All(moves, line => Assert.InRange(line.Length, 11, 80));
        Assert.Contains(moves, line => line.Trim() == "15 mm to bar");
        Assert.Contains(moves, line => line.Trim().StartsWith("rapid to the R level", StringComparison.Ordinal));
        Assert.Contains("15 mm to bar", Command.In(_scratch.Folder, "trace", "two.nc").Output.Split('\n').First(line => line.Contains("rapid to the R level", StringComparison.Ordinal)), StringComparison.Ordinal);
    }

    /// <summary>P1 read as milliseconds is a thousandth of a second, P0.1 a ten-thousandth: no table tells that as nothing.</summary>
    [Fact]
    public void A_dwell_that_is_far_too_short_keeps_its_figures()
    {
        _scratch.Write("short.nc", Program.Replace("P0.5", "P0.1", StringComparison.Ordinal));
        Assert.Matches(@"(?m)^ +1 +5 +G82 .* 0\.0001 s ", Command.In(_scratch.Folder, "holes", "short.nc", "--reading", "dwell=milliseconds").Output);
        Assert.Matches(@"(?m)^ +dwell +0\.0001 s", Command.In(_scratch.Folder, "trace", "short.nc", "--reading", "dwell=milliseconds").Output);
        Assert.Contains("0.0005 s become 0.0001 s", Command.In(_scratch.Folder, "compare", "two.nc", "short.nc", "--reading", "dwell=milliseconds").Output, StringComparison.Ordinal);
    }

    /// <summary>The drill of 6 mm passes 3 mm beside the bar that ends at Y5: it meets it, and goes into nothing.</summary>
    [Fact]
    public void What_is_met_without_going_in_is_touched()
    {
        _scratch.Write("touch.nc", "G21 G90 G17 G94 G54\nT1 M6\nS1000 M3\nG0 X0 Y8 Z10\nG1 Z5 F120\nX50\nG0 Z10\nM30\n");
        _scratch.Write("touch.setup.json", Setup);
        var trace = Command.In(_scratch.Folder, "trace", "touch.nc").Output;
        Assert.Contains("MEETS bar, just touching", trace, StringComparison.Ordinal);
        Assert.Contains("MEETS, just touching  bar, line 6", trace, StringComparison.Ordinal);
        Assert.DoesNotContain(" 0 mm deep", trace, StringComparison.Ordinal);
    }

    [Fact]
    public void Texts_tell_the_same()
    {
        var trace = Command.In(_scratch.Folder, "trace", "two.nc").Output;
        Assert.Contains("MEETS bar", trace, StringComparison.Ordinal);
        Assert.Contains("15 mm to bar", trace, StringComparison.Ordinal);
        Assert.Contains("a hand on feed hold", trace, StringComparison.Ordinal);
        var holes = Command.In(_scratch.Folder, "holes", "two.nc").Output;
        Assert.Matches(@"(?m)^ +1 +5 +G82 +T1 +10 +0 +10 +2 +-3 +2 +10 ", holes);
        Assert.Matches(@"(?m)^ +50 +0 +6 +5 +6 +1\.197 +drilled +6 +shallow", holes);
    }

    // Core hole of 6.8 for M8 (ISO 2306, from memory), reamed hole of 8; the columns stand under their heads however long a thread's name is.
    [Fact]
    public void The_drawings_table_says_how_holes_are_made_and_what_a_threads_depth_is()
    {
        _scratch.Write("made.nc", "G21 G90 G17 G54\nT1 M6\nG0 X0 Y0 Z10 S1000 M3\nG99 G81 X0 Y0 Z-18 R2 F120\nT2 M6\nS300 M3\nG99 G84 X0 Y0 Z-12 R5 F375\nT3 M6\nM3\nG99 G81 X30 Y0 Z-18 R2 F120\nT4 M6\nM3\nG99 G85 X30 Y0 Z-14 R2 F120\nG80\nM30\n");
        _scratch.Write("made.setup.json", """
            { "stock": { "min": [-20, -20, -25], "max": [60, 40, 0] },
              "tools": [ { "number": 1, "kind": "drill", "diameter": 6.8, "pointAngle": 118 }, { "number": 2, "kind": "tap", "diameter": 8, "pitch": 1.25 },
                         { "number": 3, "kind": "drill", "diameter": 7.8, "pointAngle": 118 }, { "number": 4, "kind": "reamer", "diameter": 8 } ],
              "holes": [ { "x": 0, "y": 0, "diameter": 6.8, "depth": 12, "thread": "M8x1.25-6H right-hand" }, { "x": 30, "y": 0, "diameter": 8, "depth": 14 } ] }
            """);
        var output = Command.In(_scratch.Folder, "holes", "made.nc").Output.ReplaceLineEndings("\n");
        Assert.Matches(@"(?m)^ +0 +0 +6\.8 +12 +M8x1\.25-6H right-hand +6\.8 +15\.957 +12 +drilled, tapped +4 +as drawn$", output);
        Assert.Matches(@"(?m)^ +30 +0 +8 +14 +8 +14 +reamed +13 +as drawn$", output);
        Assert.Contains("of a thread, as deep as the tip of the tap goes", output, StringComparison.Ordinal);
        var lines = output.Split('\n').SkipWhile(line => !line.Contains("wanted   deep", StringComparison.Ordinal)).Take(3).ToList();
        Assert.All(lines.Skip(1), line => Assert.Equal(lines[0].IndexOf("status", StringComparison.Ordinal), line.IndexOf("as drawn", StringComparison.Ordinal)));
        Assert.Equal(
            ["drilled", "drilled"],
            Command.In(_scratch.Folder, "holes", "made.nc", "--format", "json").Json.GetProperty("drawing").EnumerateArray().Select(hole => hole.GetProperty("status").GetString()));
    }

    [Fact]
    public void A_mistake_in_the_setup_is_told_beside_the_trace()
    {
        _scratch.Write("two.setup.json", "{ \"clearence\": 2 }");
        var outcome = Command.In(_scratch.Folder, "trace", "two.nc", "--format", "json");
        Assert.Equal((0, 1), (outcome.ExitCode, outcome.ErrorLines.Length));
        Assert.Contains("clearence", outcome.Errors, StringComparison.Ordinal);
        Assert.Equal("two.nc", outcome.Json.GetProperty("path").GetString());
    }

    [Fact]
    public void Findings_count_where_they_are_asked_for() =>
        Assert.Equal(1, Command.In(_scratch.Folder, "trace", "two.nc", "--format", "json", "--fail-on", "error").ExitCode);

    [Fact]
    public void A_reading_changes_the_holes()
    {
        var outcome = Command.In(_scratch.Folder, "holes", "two.nc", "--format", "json", "--reading", "holePositions=incremental", "--reading", "dwell=milliseconds");
        Assert.Equal(
            [(10.0, 0.0005), (60.0, 0.0005)],
            outcome.Json.GetProperty("holes").EnumerateArray().Select(hole => (Number(hole, "x"), Number(hole, "dwellSeconds"))));
    }

    [Fact]
    public void A_hundred_thousand_blocks_are_traced_as_they_run()
    {
        var text = new StringBuilder("G21 G90 G17 G54\nG0 X0 Y0 Z1\nG1 F500\n");
        for (var i = 0; i < 100_000; i++)
            text.Append('X').Append(i % 100).Append('\n');
        _scratch.Write("long.nc", text.Append("M30\n").ToString());
        var clock = Stopwatch.StartNew();
        var outcome = Command.In(_scratch.Folder, "trace", "long.nc", "--format", "json");
        Assert.Equal(100_004, outcome.Json.GetProperty("steps").GetArrayLength());
        Assert.True(clock.Elapsed < TimeSpan.FromSeconds(60), $"{clock.Elapsed}");
    }

    // G55 lies 100 mm further along X: the second row is another hole than the first.
    const string TwoOffsets = "G21 G90 G17 G94 G54\nT1 M6\nS1000 M3\nG0 X10 Y0 Z10\nG99 G81 X10 Y0 Z-3 R2 F120\nG55 X10 Y0 Z-3 R2\nG80\nG52 X5\nG81 X10 Y0 Z-3 R2\nG80\nM30\n";

    void WriteTwoOffsets()
    {
        _scratch.Write("offsets.nc", TwoOffsets);
        _scratch.Write("offsets.setup.json", """
            { "clearance": 2, "obstacles": [ { "name": "bar", "min": [128, -5, 0], "max": [132, 5, 8] } ],
              "workOffsets": { "G54": [-300, 0, 0], "G55": [-200, 0, 0] }, "tools": [ { "number": 1, "kind": "drill", "diameter": 6, "length": 100 } ] }
            """);
    }

    [Fact]
    public void Holes_say_their_work_offset_where_there_is_more_than_one()
    {
        WriteTwoOffsets();
        var rows = Command.In(_scratch.Folder, "holes", "offsets.nc", "--format", "csv").Output.Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(["workOffset", "G54", "G55", "G55 shifted X5 by G52"], rows.Select(row => row[(row.LastIndexOf(',') + 1)..]));

        var holes = Command.In(_scratch.Folder, "holes", "offsets.nc", "--format", "json").Json.GetProperty("holes").EnumerateArray().ToList();
        Assert.Equal(["G54", "G55", "G55"], holes.Select(hole => hole.GetProperty("workOffset").GetString()));
        Assert.Equal([false, false, true], holes.Select(hole => hole.TryGetProperty("shift", out _)));
        Assert.Equal([5, 0, 0], Point(holes[2], "shift"));

        var text = Command.In(_scratch.Folder, "holes", "offsets.nc").Output;
        Assert.Matches(@"(?m)^ hole .* speed  work offset\s*$", text);
        Assert.Matches(@"(?m)^ +3 +9 .*  G55 shifted X5 by G52\s*$", text);
        Assert.DoesNotContain("work offset", Command.In(_scratch.Folder, "holes", "two.nc").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_trace_says_the_work_offset_where_there_is_more_than_one()
    {
        WriteTwoOffsets();
        var text = Command.In(_scratch.Folder, "trace", "offsets.nc").Output;
        Assert.Equal(
            ["G54", "G55", "G55 shifted X5 by G52"],
            text.Split('\n').Where(line => line.Contains("work coordinates from here on: ", StringComparison.Ordinal)).Select(line => line[(line.IndexOf(':', StringComparison.Ordinal) + 1)..].Trim()));
        // The drill's edge at X15 of G55 shifted: 128 − 115 − 3.
        Assert.Matches(@"10 mm +bar, line 9, T1 cutter, tip at X10 Y0 Z[-\d.]+ \(G55 shifted X5 by G52\)", text);
        Assert.DoesNotContain("work coordinates", Command.In(_scratch.Folder, "trace", "two.nc").Output, StringComparison.Ordinal);

        var trace = Command.In(_scratch.Folder, "trace", "offsets.nc", "--format", "json").Json;
        var step = trace.GetProperty("steps").EnumerateArray().Single(step => step.GetProperty("line").GetInt32() == 6);
        Assert.Equal("G55", step.GetProperty("workOffset").GetString());
        Assert.Equal("G55", trace.GetProperty("approaches")[0].GetProperty("workOffset").GetString());
        Assert.Equal([5, 0, 0], Point(trace.GetProperty("approaches")[0], "shift"));
        Assert.All(
            Command.In(_scratch.Folder, "trace", "two.nc", "--format", "json").Json.GetProperty("steps").EnumerateArray(), plain => Assert.False(plain.TryGetProperty("workOffset", out _)));
    }

    [Fact] // The machine ends at 6000 mm/min and 8000 turns a minute: both are told as the program has them and as the machine does them.
    public void A_feed_and_a_speed_beyond_the_machine_are_told_alike()
    {
        _scratch.Write("fast.machine.json", """{ "base": "iso-mill", "name": "m", "maxFeed": 6000, "spindle": { "min": 50, "max": 8000 } }""");
        _scratch.Write("fast.nc", "G21 G90 G17 G94 G54\nT1 M6\nS9000 M3\nG0 X10 Y0 Z10\nG99 G81 X10 Y0 Z-3 R2 F9000\nX20 S30 F120\nX30 S1000\nG80\nM30\n");
        string[] Run(params string[] more) => ["holes", "fast.nc", "--machine", "fast.machine.json", .. more];
        var holes = Command.In(_scratch.Folder, Run("--format", "json")).Json.GetProperty("holes").EnumerateArray().ToList();
        Assert.Equal([(6000, 8000), (120, 50), (120, 1000)], holes.Select(hole => (Number(hole, "feed"), Number(hole, "speed"))));
        Assert.Equal((9000, 9000), (Number(holes[0], "programmedFeed"), Number(holes[0], "programmedSpeed")));
        Assert.Equal((false, 30), (holes[1].TryGetProperty("programmedFeed", out _), Number(holes[1], "programmedSpeed")));
        Assert.False(holes[2].TryGetProperty("programmedSpeed", out _));

        var rows = Command.In(_scratch.Folder, Run("--format", "csv")).Output.Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Assert.EndsWith("feed,speed,leastReturn,programmedFeed,programmedSpeed", rows[0], StringComparison.Ordinal);
        Assert.EndsWith(",6000,8000,,9000,9000", rows[1], StringComparison.Ordinal);
        Assert.EndsWith(",120,1000,,120,1000", rows[3], StringComparison.Ordinal);

        var text = Command.In(_scratch.Folder, Run()).Output;
        Assert.Matches(@"(?m)^ +1 +5 +G81 .* 9000→6000 +9000→8000\s*$", text);
        Assert.Matches(@"(?m)^ +2 +6 +G81 .* 120 +30→50\s*$", text);
        Assert.Contains("the program says 9000", text, StringComparison.Ordinal);
        Assert.DoesNotContain("the program says", Command.In(_scratch.Folder, "holes", "two.nc").Output, StringComparison.Ordinal);
    }
}
