using System.Text.Json;
using NcLanguage.Cli.Tests.Support;

namespace NcLanguage.Cli.Tests;

/// <summary>What <c>figure</c> answers on the terminal. The numbers' sources stand beside them.</summary>
public sealed class FigureTests
{
    [Theory]
    [InlineData("spindle speed", "626.59", "speed", "--diameter", "12.7", "--cutting-speed", "25")] // Groover, drilling problem: 626.6
    [InlineData("spindle speed", "611.15", "speed", "--diameter", "0.5", "--cutting-speed", "80", "--units", "inch")] // Machining 1, chapter 8: 611.2
    [InlineData("greatest cutting speed", "91.44", "speed", "--diameter", "8", "--material", "aluminium")] // 300 ft/min, U.S. Navy training course
    [InlineData("feed", "187.98", "feed", "--turns", "626.6", "--per-turn", "0.3")] // Groover: 188
    [InlineData("feed", "240", "feed", "--turns", "1200", "--per-tooth", "0.05", "--flutes", "4")] // n·z·fz, from memory
    [InlineData("feed per turn", "0.06", "feed", "--turns", "3183", "--feed", "190.98")] // drilling example on a question site
    [InlineData("depth", "2.876", "spot", "--diameter", "10", "--flat", "5", "--angle", "82")] // engineering reference
    [InlineData("diameter", "7", "spot", "--depth", "3.5")] // factor 0.5 at 90°
    [InlineData("point length", "3.004", "point", "--diameter", "10")] // factor 0.3004 at 118°
    [InlineData("tap drill", "6.8", "tap", "M8")] // ISO 2306, from memory
    [InlineData("thread at 6.8 mm", "73.9", "tap", "M8")] // Machinery's Handbook 31, Table 2, its base
    [InlineData("hole for 73.9 % thread", "6.8", "tap", "M8", "--percent", "73.9")] // the same row, read the other way
    [InlineData("feed", "600", "tap", "M6", "--speed", "600")] // textbook program
    [InlineData("strokes", "5", "peck", "--from", "2", "--to", "-20", "--step", "5")] // NISTIR 6556 §3.5.16.4
    [InlineData("less speed", "30", "peck", "--depth", "40", "--diameter", "8")] // drill reference sheet, 5 diameters
    [InlineData("chords for a full circle", "71", "chord", "--radius", "10", "--error", "0.01")] // geometry
    [InlineData("dwell", "0.12", "dwell", "--turns", "2", "--speed", "1000")] // arithmetic
    [InlineData("turns", "4", "dwell", "--seconds", "0.2", "--speed", "1200")] // arithmetic
    [InlineData("drilling time", "20.37", "time", "--depth", "60", "--diameter", "12.7", "--feed", "187.98")] // Groover: 0.3395 min
    [InlineData("drilling time without the point", "19.15", "time", "--depth", "60", "--diameter", "12.7", "--speed", "626.6", "--per-turn", "0.3")] // printed 0.3192 min
    public void A_figure_is_what_its_source_prints(string name, string expected, params string[] arguments)
    {
        var outcome = Command.Run(["figure", .. arguments, "--format", "json"]);
        Assert.Equal((0, ""), (outcome.ExitCode, outcome.Errors));
        var row = outcome.Json.GetProperty("rows").EnumerateArray().First(row => row.GetProperty("name").GetString() == name);
        var value = double.Parse(expected, System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(value, row.GetProperty("value").GetDouble(), 0.00051 * Math.Max(1, value));

        // In text each number has its unit, formula and source on one line.
        var line = Command.Run(["figure", .. arguments]).Output.Split('\n').First(line => line.StartsWith(name + " ", StringComparison.Ordinal));
        Assert.Contains("; ", line, StringComparison.Ordinal);
    }

    [Fact]
    public void Each_number_has_unit_formula_and_source_in_the_unit_asked_for()
    {
        Assert.Equal("point length  0.2629 in  A = D/2 / tan(α/2); engineering reference, the table of Machinery's Handbook\n", // trade-mathematics course: 0.2629 in
            Command.Run("figure", "point", "--diameter", "0.875", "--units", "inch").Output.ReplaceLineEndings("\n"));
    }

    /// <summary>5 holes on Ø80 from 90°, worked out by hand.</summary>
    [Theory]
    [InlineData("absolute", "X0. Y40.", "X-38.042 Y12.361", "X-23.511 Y-32.361", "X23.511 Y-32.361", "X38.042 Y12.361")]
    [InlineData("incremental", "X0. Y40.", "X-38.042 Y-27.639", "X14.531 Y-44.722", "X47.022 Y0.", "X14.531 Y44.722")]
    public void A_circle_comes_as_blocks(string how, params string[] blocks)
    {
        var arguments = new[] { "figure", "circle", "--holes", "5", "--diameter", "80", "--start", "90", "--blocks", how };
        Assert.Equal(blocks, Command.Run([.. arguments, "--format", "json"]).Json.GetProperty("blocks").EnumerateArray().Select(block => block.GetString()));
        Assert.EndsWith(string.Join('\n', blocks) + "\n", Command.Run(arguments).Output.ReplaceLineEndings("\n"), StringComparison.Ordinal);
    }

    [Fact]
    public void Blocks_in_inches_stay_in_inches_and_json_is_in_millimetres()
    {
        var json = Command.Run("figure", "grid", "--columns", "2", "--rows", "2", "--step", "1,0.5", "--from", "-2,0", "--units", "inch", "--blocks", "absolute", "--format", "json").Json;
        Assert.Equal(["X-2. Y0.", "X-1. Y0.", "X-1. Y0.5", "X-2. Y0.5"], json.GetProperty("blocks").EnumerateArray().Select(block => block.GetString()!));
        Assert.Equal([-50.8, -25.4, -25.4, -50.8], json.GetProperty("holes").EnumerateArray().Select(hole => hole.GetProperty("x").GetDouble()));
    }

    [Fact]
    public void An_arc_ends_where_it_is_told_to()
    {
        var holes = Command.Run("figure", "arc", "--holes", "3", "--diameter", "100", "--start", "90", "--end", "-90", "--format", "json").Json.GetProperty("holes").EnumerateArray().ToList();
        Assert.Equal([0.0, 50, 0], holes.Select(hole => hole.GetProperty("x").GetDouble()));
        Assert.Equal([50.0, 0, -50], holes.Select(hole => hole.GetProperty("y").GetDouble()));
    }

    [Fact]
    public void A_users_cutting_data_come_first()
    {
        using var scratch = new Scratch();
        File.WriteAllText(scratch.At("nc.cutting.json"), """{ "rows": [ { "material": ["oak"], "kind": ["drill"], "speed": [30, 40], "source": "our own trials" } ], "extra": 1 }""");
        var outcome = Command.In(scratch.Folder, "figure", "speed", "--diameter", "10", "--material", "oak");
        Assert.Equal(0, outcome.ExitCode);
        Assert.Contains("our own trials", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("nc.cutting.json, line 1: The cutting data has no member \"extra\"", Assert.Single(outcome.ErrorLines), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("figure needs one of speed, feed")]
    [InlineData("there is no command spedd; did you mean speed?", "spedd")]
    [InlineData("figure tap needs THREAD", "tap")]
    [InlineData("no thread M7.7 is known", "tap", "M7.7")]
    [InlineData("--drill must be less", "tap", "M8", "--drill", "8")]
    [InlineData("--percent must be 100 at most", "tap", "M8", "--percent", "101")]
    [InlineData("--diameter needs a number, not abc", "speed", "--diameter", "abc")]
    [InlineData("--diameter must be above 0, not -4", "speed", "--diameter", "-4")]
    [InlineData("--diameter needs a number, not NaN", "speed", "--diameter", "NaN")]
    [InlineData("--diameter must be at most", "speed", "--diameter", "1000001")]
    [InlineData("figure speed needs --diameter", "speed", "--cutting-speed", "25")]
    [InlineData("figure speed needs --cutting-speed, --turns or --material", "speed", "--diameter", "8")]
    [InlineData("the cutting data do not know the material hardwood", "speed", "--diameter", "8", "--material", "hardwood")]
    [InlineData("did you mean aluminium?", "speed", "--diameter", "8", "--material", "aluminim")]
    [InlineData("the cutting data have no cutting speed for brass and a thread-mill", "speed", "--diameter", "8", "--material", "brass", "--kind", "thread-mill")]
    [InlineData("figure feed needs --flutes", "feed", "--turns", "1000", "--per-tooth", "0.1")]
    [InlineData("--holes needs a whole number, not 2.5", "circle", "--holes", "2.5", "--diameter", "10")]
    [InlineData("--centre needs two numbers", "circle", "--holes", "3", "--diameter", "10", "--centre", "5")]
    [InlineData("figure arc needs --step or --end", "arc", "--holes", "3", "--diameter", "10")]
    [InlineData("no pattern that is written out", "grid", "--columns", "1000", "--rows", "1000", "--step", "1,1")]
    [InlineData("--to must lie below --from", "peck", "--from", "0", "--to", "1", "--step", "1")]
    [InlineData("more than 10000 strokes", "peck", "--from", "0", "--to", "-10", "--step", "0.000001")]
    [InlineData("--error must be less than --radius", "chord", "--radius", "1", "--error", "1")]
    [InlineData("--diameter must be greater than --flat", "spot", "--diameter", "5", "--flat", "5")]
    public void What_cannot_be_reckoned_gives_one_line(string part, params string[] arguments)
    {
        var outcome = Command.Run(["figure", .. arguments]);
        Assert.Equal((2, ""), (outcome.ExitCode, outcome.Output));
        Assert.Contains(part, Assert.Single(outcome.ErrorLines), StringComparison.Ordinal);
    }

    [Fact]
    public void The_json_has_the_members_that_are_documented()
    {
        var json = Command.Run("figure", "tap", "1/4-20", "--format", "json").Json;
        Assert.Equal("tap", json.GetProperty("figure").GetString());
        Assert.All(json.GetProperty("rows").EnumerateArray(), row =>
            Assert.Equal(["name", "value", "unit", "formula", "source"], row.EnumerateObject().Select(member => member.Name)));
        Assert.Equal(JsonValueKind.Number, json.GetProperty("rows")[0].GetProperty("value").ValueKind);
        Assert.Equal(0.201 * 25.4, json.GetProperty("rows")[0].GetProperty("value").GetDouble(), 1e-6); // No. 7 drill, unified chart
    }
}
