using System.Runtime.InteropServices;
using System.Text.Json;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Reports.Tests.MotionView;

/// <summary>The numbers of the page are those of the trace.</summary>
public sealed class MotionDataTests
{
    public static TheoryData<string> Programs =>
    [
        .. Directory.GetDirectories(Example.Repository("tests", "corpus")).Select(folder => $"tests/corpus/{Path.GetFileName(folder)}/{Path.GetFileName(folder)}.nc"),
        "src/NcLanguage.Cli/Demo/Job/cover-plate.nc",
        "src/NcLanguage.Cli/Demo/Job/cover-plate-faulty.nc",
    ];

    /// <summary>Against <c>trace --format json</c>, block by block and move by move: lines, files, texts, kinds, places, centres, feeds, seconds, clearance.</summary>
    [Theory]
    [MemberData(nameof(Programs))]
    public void The_page_holds_what_the_trace_tells(string path)
    {
        var example = Example.FromDisk(Example.Repository(path.Split('/')));
        var page = example.PageData();
        var trace = example.Trace();
        var steps = page.GetProperty("steps");
        var moves = page.GetProperty("moves");
        var (lines, files, first) = (Ints(steps, "line"), Ints(steps, "file"), Ints(steps, "first"));
        var kinds = moves.GetProperty("kinds").EnumerateArray().Select(kind => kind.GetString()).ToArray();
        var kind = moves.GetProperty("kind").GetBytesFromBase64();
        var (from, to, feed, seconds) = (From(moves), Numbers(moves, "to"), Numbers(moves, "feed"), Numbers(moves, "seconds"));
        var hasClearance = moves.TryGetProperty("clearance", out _);
        var clearance = hasClearance ? Numbers(moves, "clearance") : [];
        var obstacle = hasClearance ? Ints(moves, "obstacle") : [];
        var obstacles = page.GetProperty("obstacles").EnumerateArray().Select(one => one.GetProperty("name").GetString()).ToArray();
        var (arcMoves, centers, angles) = (Ints(moves.GetProperty("arcs"), "move"), Numbers(moves.GetProperty("arcs"), "center"), Numbers(moves.GetProperty("arcs"), "angle"));
        var traced = trace.GetProperty("steps").EnumerateArray().ToArray();
        Assert.Equal(traced.Length, steps.GetProperty("count").GetInt32());
        var (move, arc) = (0, 0);
        for (var i = 0; i < traced.Length; i++)
        {
            Assert.Equal(traced[i].GetProperty("line").GetInt32(), lines[i]);
            Assert.Equal(traced[i].GetProperty("block").GetString(), steps.GetProperty("text")[i].GetString());
            Assert.Equal(traced[i].TryGetProperty("file", out var file) ? file.GetString() : "", page.GetProperty("files")[files[i]].GetString());
            Assert.Equal(move, first[i]);
            foreach (var expected in traced[i].GetProperty("moves").EnumerateArray())
            {
                Assert.Equal(expected.GetProperty("kind").GetString(), kinds[kind[move]]);
                AssertPlace(expected.GetProperty("from"), from, move);
                AssertPlace(expected.GetProperty("to"), to, move);
                AssertNumber(expected.GetProperty("feed"), feed[move]);
                AssertNumber(expected.GetProperty("seconds"), seconds[move]);
                if (expected.TryGetProperty("clearance", out var near))
                {
                    AssertNumber(near.GetProperty("distance"), clearance[move]);
                    Assert.Equal(near.GetProperty("obstacle").GetString(), obstacle[move] < 0 ? null : obstacles[obstacle[move]]);
                }
                else if (hasClearance)
                    Assert.True(double.IsNaN(clearance[move]));
                if (expected.TryGetProperty("center", out var center))
                {
                    Assert.Equal(move, arcMoves[arc]);
                    AssertPlace(center, centers, arc);
                    Assert.Equal(expected.GetProperty("turn").GetString(), angles[arc] < 0 ? "clockwise" : "counterclockwise");
                    arc++;
                }
                move++;
            }
        }
        Assert.Equal((move, arc), (moves.GetProperty("count").GetInt32(), arcMoves.Length));
        Assert.Equal(trace.GetProperty("seconds").GetDouble(), page.GetProperty("seconds").GetDouble());
        Assert.Equal(trace.GetProperty("distance").GetProperty("rapid").GetDouble(), page.GetProperty("rapidDistance").GetDouble());
        Assert.Equal(trace.GetProperty("distance").GetProperty("cut").GetDouble(), page.GetProperty("cutDistance").GetDouble());
        Assert.Equal(trace.GetProperty("holes").GetRawText(), page.GetProperty("holes").GetRawText());
    }

    /// <summary>The outline is that of the file, one that leads beyond the stock too; levels are the stock's.</summary>
    [Fact]
    public void Hollows_of_the_stock_are_on_the_page()
    {
        var page = Example.Of("G21 G90 G17 G54\nG0 X0 Y0 Z5\nM30\n", Example.Plate with
        {
            Hollows = [new Hollow("bore", 20, 10, 40, 30, 10, Example.Plate.Stock!.Value.Min.Z) { IsRound = true }, new Hollow("step", 50, -5, 60, 70, 0, -4)],
        }).PageData();
        var (min, max) = (Example.Plate.Stock.Value.Min.Z, Example.Plate.Stock.Value.Max.Z);
        Assert.Equal(
            [$"bore: 20 10 {min}, 40 30 {max}, 10", $"step: 50 -5 -4, 60 70 {max}, 0"],
            page.GetProperty("stock").GetProperty("hollows").EnumerateArray().Select(hollow =>
                $"{hollow.GetProperty("name").GetString()}: {Joined(hollow.GetProperty("min"))}, {Joined(hollow.GetProperty("max"))}, {hollow.GetProperty("cornerRadius").GetDouble()}"));

        static string Joined(JsonElement place) => string.Join(' ', place.EnumerateArray().Select(number => number.GetDouble()));
    }

    /// <summary>Contacts and nearest places are moves whose clearance says so.</summary>
    [Fact]
    public void Contacts_lead_to_the_moves_that_make_them()
    {
        var page = Example.FromDisk(Example.Repository("src", "NcLanguage.Cli", "Demo", "Job", "cover-plate-faulty.nc")).PageData();
        var clearance = Numbers(page.GetProperty("moves"), "clearance");
        var lines = Ints(page.GetProperty("steps"), "line");
        var contacts = page.GetProperty("contacts").EnumerateArray().ToList();
        // The README of the demonstration job names the lines.
        Assert.Equal([31, 36], contacts.Select(contact => lines[contact.GetProperty("step").GetInt32()]));
        Assert.All(contacts, contact => Assert.True(clearance[contact.GetProperty("move").GetInt32()] <= 0));
        Assert.Equal(contacts.Count, page.GetProperty("contactCount").GetInt32());
        Assert.Equal(
            Enumerable.Range(0, clearance.Length).Where(move => clearance[move] <= 0).Select(move => lines[StepOf(page, move)]).Distinct(),
            contacts.Select(contact => lines[contact.GetProperty("step").GetInt32()]));
        Assert.All(contacts, contact => Assert.Contains($"line {lines[contact.GetProperty("step").GetInt32()]}", contact.GetProperty("text").GetString(), StringComparison.Ordinal));
    }

    /// <summary>A cutter of 6 mm whose axis passes 3 mm beside the clamp meets it and goes into nothing: as the finding says, it touches.</summary>
    [Fact]
    public void What_meets_without_going_in_touches()
    {
        var page = Example.Of("G21 G17 G90 G54\nT1 M6\nS4000 M3\nG0 X37 Y-20\nG43 H1 Z30\nG1 Z5 F500\nY40\nG0 Z30\nM30\n", Example.Plate).PageData();
        Assert.Equal("clamp A, just touching, line 7", Assert.Single(page.GetProperty("contacts").EnumerateArray()).GetProperty("text").GetString());
    }

    /// <summary>A cutter of 6 mm at Z5 goes through two clamps 10 mm wide and 20 high and passes a third by 4: both contacts are there, each where it goes in deepest, and how near the third is.</summary>
    [Fact]
    public void A_move_that_meets_two_clamps_is_a_contact_with_each()
    {
        var setup = Example.Plate with { Obstacles = [Clamp("left", 20, 0), Clamp("right", 60, 0), Clamp("far", 80, 12)] };
        var page = Example.Of("G21 G17 G90 G54\nT1 M6\nS4000 M3\nG0 X-20 Y0\nG43 H1 Z30\nZ5\nX100\nZ30\nM30\n", setup).PageData();
        Assert.Equal(["left", "right"], page.GetProperty("contacts").EnumerateArray().Select(contact => contact.GetProperty("text").GetString()!.Split(',')[0]));
        Assert.Equal(2, page.GetProperty("contactCount").GetInt32());
        var far = Assert.Single(page.GetProperty("closest").EnumerateArray());
        Assert.StartsWith("far, ", far.GetProperty("text").GetString(), StringComparison.Ordinal);
        Assert.Equal(4, far.GetProperty("distance").GetDouble(), 0.001);

        static BoxObstacle Clamp(string name, double x, double y) => new(name, new Box3(new Point3(x, y - 5, 0), new Point3(x + 10, y + 5, 20)));
    }

    [Fact]
    public void A_speed_says_that_the_spindle_stands()
    {
        var page = Example.Of("G21 G17 G90 G54\nT1 M6\nS4000 M3\nG0 X5 Y5\nM5\nG81 X5 Y5 Z-2 R2 F100\nG80\nM30\n", Example.Plate).PageData();
        var states = page.GetProperty("states");
        Assert.Equal(
            ["4000 1/min", "4000 1/min", "4000 1/min, stopped"],
            new[] { 2, 3, 5 }.Select(step => states[Ints(page.GetProperty("steps"), "state")[step]].GetProperty("speed").GetString()));
    }

    /// <summary>A rapid into stock, and a holder against it, are contacts too.</summary>
    [Fact]
    public void Contacts_with_stock_are_shown_at_their_moves()
    {
        var page = Example.Of(
            "G21 G17 G90 G54\nT5 M6\nS4000 M3\nG0 X-12 Y60\nG43 H5 Z30\nZ-5\nX60\nG1 Z-12 F200\nG0 Z30\nM30\n",
            new Setup
            {
                IsPresent = true,
                Stock = new Box3(new Point3(0, 0, -20), new Point3(120, 80, 0)),
                Tools = [new Tool { Number = 5, Kind = ToolKind.EndMill, Diameter = 16, FluteLength = 35, Length = 60, HolderDiameter = 40, HolderGauge = 50 }],
            }).PageData();
        var lines = Ints(page.GetProperty("steps"), "line");
        var contacts = page.GetProperty("contacts").EnumerateArray().ToList();
        Assert.Equal([(7, "cutter"), (8, "holder")], contacts.Select(contact => (lines[contact.GetProperty("step").GetInt32()], contact.GetProperty("part").GetString())));
        Assert.Equal([-5.0, -2.0], contacts.Select(contact => contact.GetProperty("distance").GetDouble()));
        Assert.Equal(2, page.GetProperty("contactCount").GetInt32());
        Assert.Contains("stock that still stands, 5 mm deep, line 7", contacts[0].GetProperty("text").GetString(), StringComparison.Ordinal);
    }

    /// <summary>Two holes of one block, two of a repeated one, and two that a subroutine drills in each of two calls: a button leads to the very hole.</summary>
    [Fact]
    public void Every_hole_leads_to_the_move_that_leaves_it()
    {
        var folder = Directory.CreateTempSubdirectory();
        try
        {
            var main = Path.Combine(folder.FullName, "part.nc");
            File.WriteAllText(main, "G21 G90 G17 G94 G54\nT1 M6\nG0 X0 Y0 Z20 S1000 M3\nG81 G98 X5 Y5 Z-2 R2 F100\nG91 X10 L3\nG90 G80\nM98 P200 L2\nM30\n");
            File.WriteAllText(Path.Combine(folder.FullName, "O200.nc"), "O200\nG90 G81 G98 X60 Y10 Z-2 R2 F100\nX70\nG80\nM99\n");
            var page = Example.FromDisk(main).PageData();
            var holes = page.GetProperty("holes").EnumerateArray().ToList();
            var (step, move) = (Ints(page.GetProperty("drilled"), "step"), Ints(page.GetProperty("drilled"), "move"));
            var (lines, files) = (Ints(page.GetProperty("steps"), "line"), Ints(page.GetProperty("steps"), "file"));
            var to = Numbers(page.GetProperty("moves"), "to");
            Assert.Equal([4, 5, 5, 5, 2, 3, 2, 3], step.Select(index => lines[index]));
            Assert.Equal([0, 0, 0, 0, 1, 1, 1, 1], step.Select(index => files[index]));
            Assert.Equal(holes.Count, move.Length);
            for (var i = 0; i < holes.Count; i++)
            {
                Assert.Equal(step[i], StepOf(page, move[i]));
                Assert.Equal(holes[i].GetProperty("x").GetDouble(), to[move[i] * 3]);
                Assert.Equal(holes[i].GetProperty("y").GetDouble(), to[move[i] * 3 + 1]);
                Assert.Equal(holes[i].GetProperty("returnTo").GetDouble(), to[move[i] * 3 + 2]);
            }
            Assert.Equal(move.Order(), move);
            Assert.Equal(move.Length, move.Distinct().Count());
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Fact]
    public void A_long_run_is_bounded_and_says_so()
    {
        var text = Checks(200);
        var whole = NcLanguage.Reports.MotionView.MotionRecording.Create("long.nc", text, new(NcLanguage.Machine.Profiles.MachineProfile.IsoMill, Example.Plate), default);
        var cut = NcLanguage.Reports.MotionView.MotionRecording.Create("long.nc", text, new(NcLanguage.Machine.Profiles.MachineProfile.IsoMill, Example.Plate), default, mostMoves: 50);
        Assert.False(whole.IsCut);
        Assert.True(cut.IsCut);
        Assert.InRange(cut.Moves.Count, 40, 50);
        Assert.Equal(whole.Moves.Count, cut.MoveCount);
        Assert.Equal(whole.Totals.Seconds, cut.Totals.Seconds);
        using var page = new MemoryStream();
        var html = System.Text.Encoding.UTF8.GetString(NcLanguage.Reports.MotionView.MotionPage.Write(cut));
        Assert.Contains("more moves than are kept here: only the first", html, StringComparison.Ordinal);

        static NcLanguage.Syntax.Text.SourceText Checks(int moves) => NcLanguage.Syntax.Text.SourceText.From(
            System.Text.Encoding.UTF8.GetBytes("G21 G90 G54 T1 M6\nG0 X0 Y0 Z5\n" + string.Concat(Enumerable.Range(0, moves).Select(i => $"G1 X{i % 7} F100\n")) + "M30\n"));
    }

    /// <summary>A rapid at Z5 through the clamp, behind the moves that are kept: it is told with its line, and only its move is not there to go to.</summary>
    [Theory]
    [InlineData(50, false)]
    [InlineData(5000, true)]
    public void Contacts_are_those_of_the_whole_run(int mostMoves, bool isKept)
    {
        var text = NcLanguage.Syntax.Text.SourceText.From(
            "G21 G17 G90 G54\nT1 M6\nS4000 M3\nG0 X20 Y-20\nG43 H1 Z5\n" + string.Concat(Enumerable.Range(0, 200).Select(i => $"G1 X{20 + i % 7} F100\n")) + "G0 X37\nY40\nZ60\nM30\n");
        var recording = NcLanguage.Reports.MotionView.MotionRecording.Create("long.nc", text, new(NcLanguage.Machine.Profiles.MachineProfile.IsoMill, Example.Plate), default, mostMoves);
        var page = Example.DataOf(System.Text.Encoding.UTF8.GetString(NcLanguage.Reports.MotionView.MotionPage.Write(recording)));
        Assert.Equal(!isKept, recording.IsCut);
        var contact = Assert.Single(page.GetProperty("contacts").EnumerateArray());
        Assert.Equal(1, page.GetProperty("contactCount").GetInt32());
        Assert.Contains("clamp A, just touching, line 207", contact.GetProperty("text").GetString(), StringComparison.Ordinal);
        Assert.Equal(isKept, contact.TryGetProperty("move", out _));
        Assert.Equal(!isKept, page.GetProperty("notes").EnumerateArray().Any(note => note.GetString()!.StartsWith("Contacts and nearest places are those of the whole run", StringComparison.Ordinal)));
        Assert.Empty(page.GetProperty("closest").EnumerateArray());
    }

    [Fact]
    public void Holes_are_drawn_as_far_as_moves_are_kept()
    {
        var text = NcLanguage.Syntax.Text.SourceText.From(
            System.Text.Encoding.UTF8.GetBytes("G21 G90 G54 T1 M6\nG0 X0 Y0 Z5\nG99 G81 X0 Y0 Z-1 R2 F100\n" + string.Concat(Enumerable.Range(1, 199).Select(i => $"X{i}\n")) + "G80\nM30\n"));
        var cut = NcLanguage.Reports.MotionView.MotionRecording.Create("long.nc", text, new(NcLanguage.Machine.Profiles.MachineProfile.IsoMill, Example.Plate), default, mostMoves: 50);
        var html = System.Text.Encoding.UTF8.GetString(NcLanguage.Reports.MotionView.MotionPage.Write(cut));
        var page = Example.DataOf(html);
        var kept = page.GetProperty("holes").GetArrayLength();
        // A hole takes three or four moves.
        Assert.InRange(kept, 50 / 4 - 2, 50 / 3);
        Assert.Equal(kept, Ints(page.GetProperty("drilled"), "step").Length);
        Assert.Equal(200, page.GetProperty("holeCount").GetInt32());
        Assert.Contains(page.GetProperty("notes").EnumerateArray(), note => note.GetString()!.EndsWith($"are shown, with the first {kept} of 200 holes.", StringComparison.Ordinal));
    }

    /// <summary>A slot of 6 mm, 4 deep and 40 long between the axes' ends, at a field of some 0.4 mm: 40 · 6 + π · 3² of 4 mm, within the cells along its edge.</summary>
    [Fact]
    public void What_is_left_of_the_stock_has_the_slot_that_was_cut()
    {
        var page = Example.Of("G21 G17 G90 G54 T1 M6\nG0 X30 Y40 Z5 S1000 M3\nG1 Z-4 F100\nX70\nG0 Z5\nM30\n", Example.Plate).PageData();
        var left = page.GetProperty("left");
        var heights = MemoryMarshal.Cast<byte, float>(left.GetProperty("heights").GetBytesFromBase64()).ToArray();
        var area = left.GetProperty("cellWidth").GetDouble() * left.GetProperty("cellDepth").GetDouble();
        Assert.Equal(left.GetProperty("columns").GetInt32() * left.GetProperty("rows").GetInt32(), heights.Length);
        Assert.Equal([-4f, 0f], heights.Distinct().Order());
        var edge = (2 * 40 + 6 * Math.PI) * Math.Sqrt(area) / 2;
        Assert.Equal(40 * 6 + 9 * Math.PI, heights.Count(height => height < 0) * area, edge);
        Assert.False(Example.Of("G21 G90 G54 T1 M6\nG0 X0 Y0 Z5\nM30\n", Example.Plate).PageData().TryGetProperty("left", out _));
    }

    static int StepOf(JsonElement page, int move)
    {
        var first = Ints(page.GetProperty("steps"), "first");
        return Array.FindLastIndex(first, start => start <= move);
    }

    /// <summary>Where moves begin: as the page's script puts it together.</summary>
    static double[] From(JsonElement moves)
    {
        var from = new double[moves.GetProperty("count").GetInt32() * 3];
        Array.Fill(from, double.NaN);
        var to = Numbers(moves, "to");
        if (from.Length > 0)
            to.AsSpan(0, from.Length - 3).CopyTo(from.AsSpan(3));
        var starts = moves.GetProperty("starts");
        var (at, places) = (Ints(starts, "move"), Numbers(starts, "from"));
        for (var i = 0; i < at.Length; i++)
            places.AsSpan(i * 3, 3).CopyTo(from.AsSpan(at[i] * 3));
        return from;
    }

    static void AssertPlace(JsonElement expected, double[] places, int index)
    {
        for (var axis = 0; axis < 3; axis++)
            AssertNumber(expected[axis], places[index * 3 + axis]);
    }

    static void AssertNumber(JsonElement expected, double value) =>
        Assert.Equal(expected.ValueKind == JsonValueKind.Null ? double.NaN : expected.GetDouble(), double.IsFinite(value) ? value : double.NaN);

    static double[] Numbers(JsonElement parent, string name) => MemoryMarshal.Cast<byte, double>(parent.GetProperty(name).GetBytesFromBase64()).ToArray();

    static int[] Ints(JsonElement parent, string name) => MemoryMarshal.Cast<byte, int>(parent.GetProperty(name).GetBytesFromBase64()).ToArray();
}
