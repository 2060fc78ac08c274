using NcLanguage.Machine.Loading;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Machine.Tests.Loading;

/// <summary>Each mistake gives one problem at the marked place, and leaves what it concerns not known.</summary>
public class SetupMistakeTests
{
    static Setup Check(string source, string name, params string[] parts) => Check(source, name, out _, parts);

    static Setup Check(string source, string name, out SetupProblem problem, params string[] parts)
    {
        var marked = new Marked(source);
        var (setup, problems) = SetupFile.Read("part.setup.json", marked.Bytes);
        problem = marked.IsTheOnlyPlace(problems, name, parts);
        Assert.Equal("part.setup.json", problem.Path);
        Assert.True(setup.IsPresent);
        return setup;
    }

    [Theory]
    [InlineData("""{ ⟦"clearence"⟧: 3 }""", "clearance")]
    [InlineData("""{ ⟦"obstacle"⟧: [] }""", "obstacles")]
    [InlineData("""{ ⟦"Stock"⟧: null }""", "stock")]
    [InlineData("""{ "tools": [ { "number": 1, ⟦"dia"⟧: 6 } ] }""", "diameter")]
    [InlineData("""{ "obstacles": [ { ⟦"centre"⟧: [0, 0], "center": [0, 0], "diameter": 1, "bottom": 0, "top": 1 } ] }""", null)]
    [InlineData("""{ "workOffsets": { ⟦"G60"⟧: [0, 0, 0] } }""", null)]
    [InlineData("""{ "workOffsets": { ⟦"g54"⟧: [0, 0, 0] } }""", "G54")]
    [InlineData("""{ "variables": { ⟦"500"⟧: 1 } }""", "#500")]
    [InlineData("""{ "variables": { ⟦"#depth"⟧: 1 } }""", "#<depth>")]
    [InlineData("""{ ⟦"colour"⟧: 1 }""", null)]
    public void An_unknown_key_is_ignored_and_the_nearest_one_named(string source, string? meant)
    {
        Check(source, "setup-unknown-key", out var problem, meant ?? "it knows");

        Assert.Equal(ProblemSeverity.Warning, problem.Severity);
        Assert.Equal(meant is null ? null : $"\"{meant}\"", problem.Replacement);
    }

    [Fact]
    public void A_long_text_is_not_cut_within_a_character()
    {
        Check("""{ "frame": ⟦"G""" + new string('5', 38) + """🙂🙂"⟧ }""", "setup-value", out var problem);

        Assert.Contains($"\"G{new string('5', 38)}…\"", problem.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("""{ "tools": [ { "number": 1, "kind": ⟦"twist-drill"⟧ } ] }""", "\"drill\"")]
    [InlineData("""{ "tools": [ { "number": 1, "kind": ⟦"center-drill"⟧ } ] }""", "\"centre-drill\"")]
    [InlineData("""{ "tools": [ { "number": 1, "kind": ⟦"endmill"⟧ } ] }""", "\"end-mill\"")]
    [InlineData("""{ "tools": [ { "number": 1, "kind": ⟦"broach"⟧ } ] }""", null)]
    [InlineData("""{ "tools": [ { "number": 1, "kind": ⟦7⟧ } ] }""", null)]
    public void An_unknown_kind_of_tool_lists_the_kinds(string source, string? replacement)
    {
        var setup = Check(source, "setup-value", out var problem, "centre-drill", "probe");

        Assert.Equal(ProblemSeverity.Error, problem.Severity);
        Assert.Equal(replacement, problem.Replacement);
        Assert.Null(setup.Tools.Single().Kind);
    }

    [Theory]
    [InlineData("""{ "tools": [ { "number": 1, "diameter": ⟦-6⟧ } ] }""", "\"diameter\" is -6", "above 0")]
    [InlineData("""{ "tools": [ { "number": 1, "diameter": ⟦0⟧ } ] }""", "\"diameter\" is 0", "above 0")]
    [InlineData("""{ "tools": [ { "number": 1, "diameter": ⟦"6"⟧ } ] }""", "must be a number", "text \"6\"")]
    [InlineData("""{ "tools": [ { "number": 1, "diameter": ⟦1e999⟧ } ] }""", "\"diameter\"", "at most 100000")]
    [InlineData("""{ "tools": [ { "number": 1, "diameter": ⟦200000⟧ } ] }""", "is 200000", "at most 100000")]
    [InlineData("""{ "tools": [ { "number": 1, "pointAngle": ⟦190⟧ } ] }""", "is 190", "at most 180")]
    [InlineData("""{ "tools": [ { "number": 1, "flutes": ⟦2.5⟧ } ] }""", "is 2.5", "whole number")]
    [InlineData("""{ "tools": [ { "number": 1, "lengthOffset": ⟦0⟧ } ] }""", "is 0", "at least 1")]
    [InlineData("""{ "tools": [ { "number": 1, "material": ⟦" "⟧ } ] }""", "\"material\" is blank", "not given")]
    [InlineData("""{ "tools": [ { "number": 1, "material": ⟦"HSS\ncobalt"⟧ } ] }""", "\"material\" holds a line end", "not given")]
    [InlineData("""{ "tools": [ { "number": 1, "material": ⟦"HSS\u001b[31m"⟧ } ] }""", "control character", "not given")]
    [InlineData("""{ "tools": [ { "number": 1, "length": 50, "holderGauge": ⟦60⟧ } ] }""", "\"holderGauge\" is 60", "only 50")]
    [InlineData("""{ "tools": [ { "number": 1, "fluteLength": ⟦3⟧, "length": 2 } ], "units": "inch" }""", "\"fluteLength\" is 3", "only 2")]
    [InlineData("""{ "tools": [ { "number": 1, "diameter": 6, ⟦"diameter"⟧: 7 } ] }""", "given 2 times", "none of them is used")]
    public void A_wrong_value_of_a_tool_is_left_out_alone(string source, params string[] parts)
    {
        var tool = Check(source, "setup-value", parts).Tools.Single();

        Assert.Equal(new Tool { Number = 1, Line = 1, Length = tool.Length }, tool);
    }

    [Theory]
    [InlineData("""{ "tools": [ ⟦{⟧ "diameter": 6 } ] }""", "A tool needs \"number\"")]
    [InlineData("""{ "tools": [ { "number": ⟦1.5⟧ } ] }""", "the tool is left out")]
    [InlineData("""{ "tools": [ { "number": ⟦null⟧ } ] }""", "must be a number, not null")]
    [InlineData("""{ "tools": [ { "number": 1, ⟦"number"⟧: 2 } ] }""", "given 2 times")]
    [InlineData("""{ "tools": [ ⟦5⟧ ] }""", "A tool must be an object")]
    [InlineData("""{ "tools": ⟦{ }⟧ }""", "must be a list")]
    public void A_tool_without_a_number_is_left_out(string source, params string[] parts) =>
        Assert.Empty(Check(source, "setup-value", parts).Tools);

    [Fact]
    public void A_tool_number_given_twice_names_both_lines()
    {
        var setup = Check("""
            { "tools": [
              { "number": 3, "diameter": 6 },
              { "number": 4, "diameter": 8 },
              { "number": ⟦3⟧, "diameter": 10 } ] }
            """, "setup-tool-repeated", "Tool 3", "line 2");

        Assert.Equal(6, setup.FindTool(3)!.Diameter);
    }

    [Theory]
    [InlineData("""{ "stock": { "min": [⟦140⟧, 0, -12], "max": [0, 60, 0] } }""", "In X", "140", "above its max, 0")]
    [InlineData("""{ "stock": { "max": [140, 60, -20], "min": [0, 0, ⟦-12⟧] } }""", "In Z", "-12", "above its max, -20")]
    [InlineData("""{ "stock": ⟦{ "min": [0, 0, 0], "max": [140, 60, 0] }⟧ }""", "no size in Z")]
    [InlineData("""{ "stock": ⟦{⟧ "min": [0, 0, 0] } }""", "The stock needs \"max\"")]
    [InlineData("""{ "stock": { "min": ⟦[0, 0]⟧, "max": [1, 1, 1] } }""", "a list of 3 numbers", "not a list of 2")]
    [InlineData("""{ "stock": { "min": [0, ⟦"0"⟧, 0], "max": [1, 1, 1] } }""", "Y of \"min\" must be a number")]
    [InlineData("""{ "stock": { "min": ⟦null⟧, "max": [1, 1, 1] } }""", "not null")]
    [InlineData("""{ "stock": ⟦[0, 0, 0]⟧ }""", "must be an object", "not a list")]
    public void A_wrong_stock_is_not_known(string source, params string[] parts) =>
        Assert.Null(Check(source, "setup-value", parts).Stock);

    [Theory]
    [InlineData("""⟦{⟧ "name": "bore", "center": [30, 30] }""", "Bore lacks \"diameter\"", "the hollow is left out")]
    [InlineData("""⟦{⟧ }""", "Hollow 1 needs center and diameter (a bore), or min and max (a slot or pocket)")]
    [InlineData("""⟦{⟧ "center": [30, 30], "diameter": 6, "min": [1, 1] }""", "mixes")]
    [InlineData("""⟦{⟧ "center": [30, 30], "diameter": 6, "cornerRadius": 2 }""", "has no corners")]
    [InlineData("""{ "min": [⟦60⟧, 0], "max": [20, 10] }""", "In X the min of hollow 1, 60, is above its max, 20")]
    [InlineData("""⟦{ "min": [20, 10], "max": [20, 20] }⟧""", "Hollow 1 has no size in X")]
    [InlineData("""⟦{ "name": "bore", "center": [300, 30], "diameter": 20 }⟧""", "Bore lies beside the stock")]
    [InlineData("""{ "min": [20, 10], "max": [40, 20], "cornerRadius": ⟦5.5⟧ }""", "corner radius of hollow 1, 5.5", "half its width, 10")]
    [InlineData("""{ "center": [30, 30], "diameter": 6, "bottom": ⟦0⟧ }""", "bottom of hollow 1, 0", "not below the stock's top, 0")]
    [InlineData("""{ "center": ⟦[30, 30, 0]⟧, "diameter": 6 }""", "a list of 2 numbers [X, Y]")]
    [InlineData("""⟦7⟧""", "A hollow must be an object")]
    public void A_wrong_hollow_is_left_out(string hollow, params string[] parts)
    {
        var setup = Check($$"""{ "stock": { "min": [0, 0, -12], "max": [140, 60, 0], "hollows": [ {{hollow}} ] } }""", "setup-value", parts);

        Assert.NotNull(setup.Stock);
        Assert.Empty(setup.Hollows);
    }

    [Theory]
    [InlineData("""{ "obstacles": [ ⟦{⟧ "name": "clamp A", "min": [0, 0, 0] } ] }""", "clamp A lacks \"max\"")]
    [InlineData("""{ "obstacles": [ ⟦{⟧ "name": "stud", "center": [0, 0], "diameter": 6 } ] }""", "stud lacks \"bottom\" and \"top\"")]
    [InlineData("""{ "obstacles": [ ⟦{⟧ } ] }""", "Obstacle 1 needs min and max", "the obstacle is left out")]
    [InlineData("""{ "obstacles": [ ⟦{⟧ "min": [0, 0, 0], "max": [1, 1, 1], "diameter": 6 } ] }""", "mixes")]
    [InlineData("""{ "obstacles": [ { "min": [0, 0, ⟦2⟧], "max": [1, 1, 1] } ] }""", "In Z the min of obstacle 1, 2, is above its max, 1")]
    [InlineData("""{ "obstacles": [ { "center": [0, 0], "diameter": 6, "bottom": ⟦5⟧, "top": 4 } ] }""", "bottom of obstacle 1, 5", "above its top, 4")]
    [InlineData("""{ "obstacles": [ { "center": [0, 0], "diameter": ⟦-16⟧, "bottom": 0, "top": 4 } ] }""", "is -16")]
    [InlineData("""{ "obstacles": [ { "center": ⟦60⟧, "diameter": 16, "bottom": 0, "top": 4 } ] }""", "a list of 2 numbers [X, Y]")]
    [InlineData("""{ "obstacles": [ { "min": ⟦null⟧, "max": [1, 1, 1] } ] }""", "not null")]
    [InlineData("""{ "obstacles": [ ⟦"clamp"⟧ ] }""", "An obstacle must be an object")]
    [InlineData("""{ "obstacles": ⟦{}⟧ }""", "must be a list")]
    [InlineData("""{ "obstacles": [], ⟦"obstacles"⟧: [] }""", "given 2 times")]
    [InlineData("""{ "supports": [ ⟦{⟧ } ] }""", "Support 1 needs", "the support is left out")]
    [InlineData("""{ "supports": [ ⟦7⟧ ] }""", "A support must be an object")]
    [InlineData("""{ "supports": [ { "min": [0, 0, ⟦2⟧], "max": [1, 1, 1] } ] }""", "In Z the min of support 1", "the support is left out")]
    [InlineData("""{ "supports": [ { "center": [0, ⟦true⟧], "diameter": 6, "bottom": 0, "top": 4 } ] }""", "Y of \"center\"", "the support is left out")]
    public void A_wrong_obstacle_is_left_out_and_the_setup_says_that_not_all_are_known(string source, params string[] parts)
    {
        var setup = Check(source, "setup-value", parts);

        Assert.Empty(setup.Obstacles);
        Assert.Empty(setup.Supports);
        Assert.False(setup.ObstaclesAreKnown);
    }

    [Theory]
    [InlineData("""{ "stock": { "min": [0, 0, -12], "max": [140, 60, 0] }, "obstacles": [ ⟦{⟧ "name": "clamp A", "min": [20, 0, -10], "max": [45, 20, 0] } ] }""")]
    [InlineData("""{ "obstacles": [ ⟦{⟧ "name": "clamp A", "center": [30, 30], "diameter": 16, "bottom": -10, "top": 0 } ], "stock": { "min": [0, 0, -12], "max": [140, 60, 0] } }""")]
    public void An_obstacle_wholly_inside_the_stock_is_kept_and_reported(string source)
    {
        var setup = Check(source, "setup-obstacle-inside", out var problem, "clamp A", "Z-10", "Z0", "Z-12");

        Assert.Equal(ProblemSeverity.Warning, problem.Severity);
        Assert.Single(setup.Obstacles);
        Assert.True(setup.ObstaclesAreKnown);
    }

    [Theory]
    [InlineData("""{ "min": [20, 0, -10], "max": [45, 20, 0.01] }""")]
    [InlineData("""{ "center": [7.9, 30], "diameter": 16, "bottom": -10, "top": 0 }""")]
    [InlineData("""{ "center": [70, 30], "diameter": 16, "bottom": -12, "top": -2 }""")] // a bolt head in the bore
    public void An_obstacle_that_reaches_out_of_the_stock_is_sound(string obstacle)
    {
        var marked = new Marked($$"""{ "stock": { "min": [0, 0, -12], "max": [140, 60, 0], "hollows": [ { "center": [70, 30], "diameter": 24 } ] }, "obstacles": [ {{obstacle}} ] }""");

        Assert.Empty(SetupFile.Read("a", marked.Bytes).Problems);
    }

    [Fact]
    public void A_wrong_unit_leaves_every_length_unknown()
    {
        var setup = Check("""
            { "units": ⟦"inches"⟧, "stock": { "min": [0, 0, -1], "max": [4, 2, 0] }, "clampHeight": 2,
              "obstacles": [ { "min": [0, 0, 0], "max": [1, 1, 1] } ], "tools": [ { "number": 1, "diameter": 3, "pointAngle": 118, "length": 1, "fluteLength": 1 } ],
              "holes": [ { "x": 1, "y": 2 } ], "workOffsets": { "G54": [1, 2, 3] } }
            """, "setup-value", out var problem, "mm, inch", "no length of this file is used");

        Assert.Equal("\"inch\"", problem.Replacement);
        Assert.Equal(new Tool { Number = 1, PointAngle = 118, Line = 2 }, setup.Tools.Single());
        Assert.True(setup is { Stock: null, ClampHeight: null, ObstaclesAreKnown: false });
        Assert.Empty(setup.Obstacles);
        Assert.Empty(setup.Holes);
        Assert.Empty(setup.WorkOffsets);
    }

    [Theory]
    [InlineData("""{ "frame": ⟦"G60"⟧ }""", "G54, G55", "or G54.1 P1 to G54.1 P999")]
    [InlineData("""{ "frame": ⟦"G54.1 P1000"⟧ }""", "or G54.1 P1 to G54.1 P999")]
    [InlineData("""{ "frame": ⟦54⟧ }""", "the number 54")]
    [InlineData("""{ "frame": "G54", ⟦"frame"⟧: "G55" }""", "given 2 times, first on line 1")]
    public void A_wrong_frame_is_not_known(string source, params string[] parts) =>
        Assert.Equal(Setup.UnknownFrame, Check(source, "setup-value", parts).Frame);

    [Fact]
    public void A_wrong_clearance_says_which_one_is_used() =>
        Assert.Equal(2, Check("""{ "clearance": ⟦-1⟧ }""", "setup-value", "is -1", "the usual 2 mm is used").Clearance);

    [Theory]
    [InlineData("""{ "holes": [ ⟦{⟧ "x": 1 } ] }""", "A hole needs \"y\"")]
    [InlineData("""{ "holes": [ { "x": ⟦"1"⟧, "y": 2 } ] }""", "must be a number")]
    [InlineData("""{ "holes": [ ⟦[1, 2]⟧ ] }""", "A hole must be an object")]
    public void A_hole_without_a_place_is_left_out(string source, params string[] parts) =>
        Assert.Empty(Check(source, "setup-value", parts).Holes);

    [Theory]
    [InlineData("""{ "variables": { "#1": ⟦"x"⟧ } }""", "must be a number")]
    [InlineData("""{ "variables": { "#1": ⟦1e300⟧ } }""", "at most")]
    [InlineData("""{ "variables": { "#1": 1, ⟦"#1"⟧: 2 } }""", "given 2 times")]
    [InlineData("""{ "variables": ⟦[]⟧ }""", "must be an object")]
    [InlineData("""{ "workOffsets": { "G54": ⟦[1, 2]⟧ } }""", "3 numbers")]
    [InlineData("""{ "workOffsets": ⟦5⟧ }""", "must be an object")]
    [InlineData("""{ "machine": ⟦5⟧ }""", "must be text")]
    public void Other_wrong_values_are_left_out(string source, params string[] parts)
    {
        var setup = Check(source, "setup-value", parts);

        Assert.Empty(setup.Variables);
        Assert.Empty(setup.WorkOffsets);
        Assert.Null(setup.Machine);
    }

    [Fact]
    public void Every_mistake_of_a_file_is_reported_in_the_order_of_its_lines()
    {
        var text = new Marked("""
            {
              "tools": [ { "number": 1, "diameter": -1 } ],
              "frame": "G1",
              "clampHigh": 3
            }
            """);

        Assert.Equal([2, 3, 4], SetupFile.Read("a", text.Bytes).Problems.Select(p => p.Line));
    }
}
