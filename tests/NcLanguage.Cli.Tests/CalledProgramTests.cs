using NcLanguage.Cli.Tests.Support;

namespace NcLanguage.Cli.Tests;

/// <summary><c>trace</c> and <c>holes</c> of a program that drills by another in a file beside it. How a call and a counted loop run: common practice;
/// places by hand.</summary>
public sealed class CalledProgramTests : IDisposable
{
    readonly Scratch _scratch = new();

    public CalledProgramTests()
    {
        _scratch.Write("part.nc", "G21 G90 G17 G54\nT1 M6\nS1000 M3\nG0 X0 Y0 Z10\n#1=0\nWHILE [#1 LT 2] DO 1\nG0 X[#1*50] Y0\nM98 P1200\n#1=#1+1\nEND 1\nM30\n");
        _scratch.Write("O1200.nc", "O1200\nG99 G81 Z-3 R2 F120\nG91 Y10\nG90 G80\nM99\n");
        _scratch.Write("part.setup.json", """
            { "tools": [ { "number": 1, "kind": "drill", "diameter": 6, "pointAngle": 118 } ], "stock": { "min": [-5, -5, -10], "max": [80, 20, 0] },
              "holes": [ { "x": 50, "y": 10, "diameter": 6 }, { "x": 70, "y": 0, "diameter": 6 } ] }
            """);
    }

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public void Holes_stand_at_the_call_in_the_order_of_the_run_and_name_the_file()
    {
        var outcome = Command.In(_scratch.Folder, "holes", "part.nc", "--format", "json");
        var holes = outcome.Json.GetProperty("holes").EnumerateArray().ToList();
        Assert.Equal(
            [(1, 8, "O1200.nc", 0, 0), (2, 8, "O1200.nc", 0, 10), (3, 8, "O1200.nc", 50, 0), (4, 8, "O1200.nc", 50, 10)],
            holes.Select(hole => (hole.GetProperty("number").GetInt32(), hole.GetProperty("line").GetInt32(), hole.GetProperty("file").GetString()!,
                hole.GetProperty("x").GetInt32(), hole.GetProperty("y").GetInt32())));
        Assert.Equal(["drilled", "missing"], outcome.Json.GetProperty("drawing").EnumerateArray().Take(2).Select(hole => hole.GetProperty("status").GetString()));
        Assert.Matches(@"(?m)^ +4 +8 +G81 +T1 +50 +10 .* in O1200\.nc", Command.In(_scratch.Folder, "holes", "part.nc").Output);
    }

    [Fact]
    public void Values_separated_by_commas_name_the_file_last()
    {
        var rows = Command.In(_scratch.Folder, "holes", "part.nc", "--format", "csv").Output.Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Assert.EndsWith(",leastReturn,drawing,file", rows[0], StringComparison.Ordinal);
        Assert.Equal("4,8,G81,1,50,10,2,-3,2,2,0,120,1000,,drilled,O1200.nc", rows[4]);
        Assert.All(rows, row => Assert.Equal(16, row.Split(',').Length));
    }

    /// <summary>RFC 4180 §2: what holds a comma stands in quotes.</summary>
    [Fact]
    public void A_file_s_name_with_a_comma_stands_in_quotes()
    {
        File.Copy(Path.Combine(_scratch.Folder, "part.nc"), Path.Combine(_scratch.Folder, "part.n,c"));
        File.Copy(Path.Combine(_scratch.Folder, "O1200.nc"), Path.Combine(_scratch.Folder, "O1200.n,c"));
        File.Delete(Path.Combine(_scratch.Folder, "O1200.nc"));
        Assert.Contains(",\"O1200.n,c\"\r\n", Command.In(_scratch.Folder, "holes", "part.n,c", "--format", "csv").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void The_trace_names_the_file_of_each_step_in_another()
    {
        var steps = Command.In(_scratch.Folder, "trace", "part.nc", "--format", "json").Json.GetProperty("steps").EnumerateArray()
            .Select(step => (step.GetProperty("line").GetInt32(), step.TryGetProperty("file", out var file) ? file.GetString() : null)).ToList();
        Assert.Equal(2, steps.Count(step => step == (3, "O1200.nc")));
        Assert.Equal(2, steps.Count(step => step == (8, null)));
        Assert.Contains("G91 Y10  in O1200.nc", Command.In(_scratch.Folder, "trace", "part.nc").Output, StringComparison.Ordinal);
    }

    /// <summary>It is there, so nobody may be told to look for it.</summary>
    [Theory]
    [InlineData("truncate -s 2G O1200.nc", "O1200.nc is larger than 16 MB")]
    [InlineData("mkfifo O1200.nc", "O1200.nc is a pipe or a device, not a file")]
    [InlineData("ln -s O1200.nc O1200.nc", "O1200.nc is a link that leads back to itself")]
    [InlineData("ln -s /etc/hostname O1200.nc", "O1200.nc is a link out of the program's folder")]
    [InlineData("ln -s nowhere.nc O1200.nc", "O1200.nc is a link to a file that is not there")]
    [InlineData("mkdir O1200.nc", "O1200.nc is a folder, not a file")]
    public void A_called_file_that_cannot_be_read_is_told_with_the_reason(string make, string reason)
    {
        if (!OperatingSystem.IsLinux())
            return;
        File.Delete(_scratch.At("O1200.nc"));
        Assert.Equal(0, Command.Start("bash", _scratch.Folder, null, ["-c", make]).ExitCode);
        var finding = Command.In(_scratch.Folder, "check", "part.nc", "--format", "json").Json.GetProperty("files")[0].GetProperty("findings").EnumerateArray()
            .Single(finding => finding.GetProperty("name").GetString() == "subprogram-missing");
        Assert.Equal(8, finding.GetProperty("line").GetInt32());
        Assert.StartsWith("Program 1200 is not in this file, and beside it " + reason, finding.GetProperty("message").GetString(), StringComparison.Ordinal);
    }
}
