using NcLanguage.Cli.Tests.Support;

namespace NcLanguage.Cli.Tests;

/// <summary>Tables on a terminal of 80 places, the usual width (common practice of terminals), which is narrower than they. What they tell is what a file gets, where nothing is broken.</summary>
public sealed class NarrowTableTests : IDisposable
{
    const string Program = """
        G21 G90 G17 G94 G54
        T1 M6
        G0 X10 Y0 S1000 M3
        G43 H1 Z50 M8
        (FIRST ROW OF HOLES, AND THEN THE SECOND)
        G99 G82 X10 Y0 Z-3.125 R2 P0.25 F120
        X50.005
        G98 X70
        G80
        G0 Z100 M9
        M5
        M30

        """;

    const string Setup = """
        { "machine": "iso-mill", "stock": { "min": [0, -20, -10], "max": [80, 20, 0] }, "clearance": 2, "obstacles": [ { "name": "bar", "min": [28, -5, 0], "max": [32, 5, 8] } ],
          "tools": [ { "number": 1, "kind": "drill", "diameter": 6, "pointAngle": 118, "length": 90 } ],
          "holes": [ { "x": 10, "y": 0, "diameter": 5, "depth": 1, "thread": "M6" }, { "x": 50.005, "y": 0, "diameter": 6, "depth": 5 }, { "x": 20, "y": 10, "diameter": 6 } ] }
        """;

    readonly Scratch _scratch = new();

    public NarrowTableTests()
    {
        _scratch.Write("row.nc", Program);
        _scratch.Write("row.setup.json", Setup);
    }

    public void Dispose() => _scratch.Dispose();

    string[] SeenAt(int width, string command)
    {
        _scratch.Write("run.sh", $"stty cols {width}\n'{Command.Executable}' {command}\n");
        Command.Start("script", _scratch.Folder, null, ["-qc", "bash run.sh", "seen"], ("TERM", "dumb"));
        // The recorder's own first and last lines are none of the command's.
        return [.. File.ReadAllLines(_scratch.At("seen")).Select(line => line.TrimEnd('\r')).Where(line => !line.StartsWith("Script ", StringComparison.Ordinal))];
    }

    static string[] Words(IEnumerable<string> lines) => [.. lines.SelectMany(line => line.Split(' ', StringSplitOptions.RemoveEmptyEntries))];

    [Theory]
    [InlineData("holes row.nc", "cycle tool")]
    [InlineData("trace row.nc", "op tool")]
    [InlineData("figure tap M8 --speed 500", null)]
    [InlineData("figure circle --holes 3 --diameter 50", null)]
    public void A_table_keeps_within_80_places_and_tells_the_same(string command, string? head)
    {
        if (!OperatingSystem.IsLinux() || !File.Exists("/usr/bin/script"))
            return;
        var whole = Command.In(_scratch.Folder, command.Split(' ')).Output.Split('\n');
        var seen = SeenAt(80, command);
        Assert.Contains(whole, line => line.Length > 80);
        Assert.All(seen, line => Assert.InRange(line.Length, 0, 80));
        Assert.All(seen, line => Assert.Equal(line.TrimEnd(), line));
        if (head is null)
            Assert.Equal(Words(whole).Order(StringComparer.Ordinal), Words(seen).Order(StringComparer.Ordinal));
        else
            Assert.Equal(Words(Rows(whole, head)), Words(Rows(seen, head)));
    }

    /// <summary>The lines of a table below its head.</summary>
    static string[] Rows(string[] lines, string head) =>
        [.. lines.SkipWhile(line => !line.Contains(head, StringComparison.Ordinal)).Skip(1).TakeWhile(line => line.Trim().Length > 0)];

    [Fact]
    public void A_text_at_the_end_goes_on_under_its_beginning()
    {
        if (!OperatingSystem.IsLinux() || !File.Exists("/usr/bin/script"))
            return;
        var seen = SeenAt(80, "trace row.nc");
        var place = seen.Single(line => line.EndsWith("what", StringComparison.Ordinal)).Length - "what".Length;
        var rows = Rows(seen, "op tool");
        var text = rows.SkipWhile(row => !row.Contains("FIRST ROW", StringComparison.Ordinal)).ToArray();
        Assert.True(text.Length > 1, string.Join('\n', rows));
        Assert.All(text[1..], row => Assert.Equal("", row[..place].Trim()));
        Assert.Equal("FIRST ROW OF HOLES, AND THEN THE SECOND", string.Join(' ', text.Select(row => row[place..])));
    }

    /// <summary>Numbers are not broken; a column in which nothing stands takes no room, and it does where there is room enough.</summary>
    [Fact]
    public void A_column_without_a_word_is_left_out_where_room_is_short()
    {
        if (!OperatingSystem.IsLinux() || !File.Exists("/usr/bin/script"))
            return;
        _scratch.Write("row.nc", Program.Replace("G82", "G81", StringComparison.Ordinal).Replace(" P0.25", "", StringComparison.Ordinal));
        Assert.DoesNotContain("dwell", SeenAt(80, "holes row.nc").Single(line => line.Contains("cycle tool", StringComparison.Ordinal)), StringComparison.Ordinal);
        Assert.Contains("dwell", SeenAt(160, "holes row.nc").Single(line => line.Contains("cycle tool", StringComparison.Ordinal)), StringComparison.Ordinal);
    }
}
