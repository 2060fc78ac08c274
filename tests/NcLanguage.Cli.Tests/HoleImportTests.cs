using NcLanguage.Cli.Tests.Support;

namespace NcLanguage.Cli.Tests;

/// <summary><c>holes --import</c>: the drawing's holes from a table into a setup file. Plate and table are our own.</summary>
public sealed class HoleImportTests : IDisposable
{
    readonly Scratch _scratch = new();

    public HoleImportTests() => _scratch.Write("plate.csv", "x,y,diameter\n10,20,5\n30,20,5\n");

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public void The_holes_are_printed_or_written()
    {
        var printed = Command.In(_scratch.Folder, "holes", "--import", "plate.csv");
        Assert.Equal((0, ""), (printed.ExitCode, printed.Errors));
        Assert.Contains("{ \"x\": 10, \"y\": 20, \"diameter\": 5 }", printed.Output, StringComparison.Ordinal);
        _scratch.Write("plate.setup.json", "{ \"clearance\": 3 /* as agreed */ }");
        Assert.Equal(0, Command.In(_scratch.Folder, "holes", "--import", "plate.csv", "-o", "plate.setup.json", "--units", "inch").ExitCode);
        var setup = File.ReadAllText(_scratch.At("plate.setup.json"));
        Assert.Contains("{ \"x\": 254, \"y\": 508, \"diameter\": 127 }", setup, StringComparison.Ordinal);
        Assert.Contains("/* as agreed */", setup, StringComparison.Ordinal);
    }

    [Fact]
    public void The_hole_table_of_a_program_can_be_read_back()
    {
        _scratch.Write("plate.nc", "G21 G90 G17 G54\nG0 X10 Y20 Z20\nG99 G81 X10 Y20 Z-5 R2 F100\nX30\nG80\nM30\n");
        _scratch.Write("made.csv", Command.In(_scratch.Folder, "holes", "plate.nc", "--format", "csv").Output);
        Assert.Equal(
            "  \"holes\": [\n    { \"x\": 10, \"y\": 20 },\n    { \"x\": 30, \"y\": 20 },\n  ],\n",
            Command.In(_scratch.Folder, "holes", "--import", "made.csv").Output.ReplaceLineEndings("\n"));
    }

    [Fact]
    public void A_mistake_writes_nothing()
    {
        _scratch.Write("plate.csv", "x,y\n10,20\n30\n");
        var outcome = Command.In(_scratch.Folder, "holes", "--import", "plate.csv", "-o", "plate.setup.json");
        Assert.Equal(2, outcome.ExitCode);
        Assert.Contains("plate.csv, line 3: y is missing", outcome.Errors, StringComparison.Ordinal);
        Assert.False(File.Exists(_scratch.At("plate.setup.json")));
    }

    [Fact]
    public void Columns_without_a_unit_follow_the_setup_unless_a_unit_is_asked_for()
    {
        _scratch.Write("plate.csv", "x,y,dia\n1,2,5\n");
        _scratch.Write("plate.setup.json", "{ \"units\": \"inch\" }");
        var followed = Command.In(_scratch.Folder, "holes", "--import", "plate.csv", "-o", "plate.setup.json");
        Assert.Equal(0, followed.ExitCode);
        Assert.Contains("columns not used: dia", followed.Errors, StringComparison.Ordinal);
        Assert.Contains("1 hole written to plate.setup.json; columns that name no unit were read as inches", followed.Errors, StringComparison.Ordinal);
        Assert.Contains("{ \"x\": 1, \"y\": 2 }", File.ReadAllText(_scratch.At("plate.setup.json")), StringComparison.Ordinal);
        _scratch.Write("plate.csv", "x,y\n25.4,50.8\n");
        Assert.Equal(0, Command.In(_scratch.Folder, "holes", "--import", "plate.csv", "-o", "plate.setup.json", "--units", "mm").ExitCode);
        Assert.Contains("{ \"x\": 1, \"y\": 2 }", File.ReadAllText(_scratch.At("plate.setup.json")), StringComparison.Ordinal);
    }

    [Fact]
    public void A_table_without_holes_leaves_the_setup_alone()
    {
        const string Setup = "{ \"holes\": [ { \"x\": 1, \"y\": 2 } ] }";
        _scratch.Write("plate.csv", "x,y,diameter\n");
        _scratch.Write("plate.setup.json", Setup);
        var outcome = Command.In(_scratch.Folder, "holes", "--import", "plate.csv", "-o", "plate.setup.json");
        Assert.Equal(2, outcome.ExitCode);
        Assert.Contains("there are no holes in plate.csv", outcome.Errors, StringComparison.Ordinal);
        Assert.Equal(Setup, File.ReadAllText(_scratch.At("plate.setup.json")));
    }

    [Theory]
    [InlineData("holes")]
    [InlineData("holes", "plate.nc", "--import", "plate.csv")]
    [InlineData("holes", "plate.nc", "-o", "plate.setup.json")]
    public void A_program_or_a_table(params string[] arguments) => Assert.Equal(2, Command.In(_scratch.Folder, arguments).ExitCode);
}
