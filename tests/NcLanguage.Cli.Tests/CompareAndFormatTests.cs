using System.Text;
using NcLanguage.Cli.Tests.Support;

namespace NcLanguage.Cli.Tests;

/// <summary><c>compare</c> and <c>format</c>: what they tell, what they write, and how they end.</summary>
public sealed class CompareAndFormatTests : IDisposable
{
    const string First = "G21 G90 G17 G54\nS800 M3\nG0 X0 Y0 Z50\nG99 G81 X10 Y5 Z-3 R2 F100\nX30\nG80\nM30\n";

    readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public void Programs_that_move_alike()
    {
        _scratch.Write("a.nc", First);
        _scratch.Write("b.nc", "n1 g90g21g17 g54\n\nm3s800\ng0x0y0z50.\n(HOLES)\ng99g81x10.y5.z-3.r2.f100\ng91x20.\ng80g90\nm30\n");
        var outcome = Command.In(_scratch.Folder, "compare", "a.nc", "b.nc");
        Assert.Equal((0, ""), (outcome.ExitCode, outcome.Errors));
        Assert.Contains("make the machine do the same", outcome.Output, StringComparison.Ordinal);
        Assert.True(Command.In(_scratch.Folder, "compare", "a.nc", "b.nc", "--format", "json").Json.GetProperty("same").GetBoolean());
    }

    [Fact]
    public void A_cycle_written_out_as_plain_moves_is_the_same()
    {
        _scratch.Write("a.nc", First);
        _scratch.Write("b.nc", "G21 G90 G17 G54\nS800 M3\nG0 X0 Y0 Z50\nX10 Y5\nZ2\nG1 Z-3 F100\nG0 Z2\nX30\nG1 Z-3\nG0 Z2\nM30\n");
        Assert.Equal(0, Command.In(_scratch.Folder, "compare", "a.nc", "b.nc").ExitCode);
    }

    /// <summary>Where the tool stood before its first move is not known, and no difference.</summary>
    [Fact]
    public void So_is_one_whose_first_move_comes_from_a_place_not_known()
    {
        _scratch.Write("a.nc", "G21 G90 G17 G54\nS800 M3\nG0 X10 Y5\nG43 H1 Z50\nG99 G81 X10 Y5 Z-3 R2 F100\nX30\nG80\nG0 Z50\nM30\n");
        _scratch.Write("b.nc", "G21 G90 G17 G54\nS800 M3\nG0 X10 Y5\nG43 H1 Z50\nZ2\nG1 Z-3 F100\nG0 Z2\nX30\nG1 Z-3\nG0 Z2\nZ50\nM30\n");
        var outcome = Command.In(_scratch.Folder, "compare", "a.nc", "b.nc");
        Assert.Equal(0, outcome.ExitCode);
        Assert.Contains("of a.nc whose place is not known", outcome.Output.ReplaceLineEndings(" "), StringComparison.Ordinal);
    }

    /// <summary>The numbers are the same and the places are not: what sets them apart is said. A dwell or a tool change goes nowhere.</summary>
    [Fact]
    public void The_same_numbers_from_another_datum_are_told_with_it()
    {
        _scratch.Write("a.nc", First.Replace("G54\n", "G54\nT1 M6\n", StringComparison.Ordinal));
        _scratch.Write("b.nc", First.Replace("G54\n", "G55\nT1 M6\n", StringComparison.Ordinal));
        var output = Command.In(_scratch.Folder, "compare", "a.nc", "b.nc").Output;
        Assert.Matches(@"(?m)^ +- +5 +feed to X10 Y5 Z-3 F100 under G54$", output);
        Assert.Matches(@"(?m)^ +\+ +5 +feed to X10 Y5 Z-3 F100 under G55$", output);
        Assert.Contains("hole 1 (line 5), G81 at X10 Y5 to Z-3 (G55)", output, StringComparison.Ordinal);
        Assert.DoesNotContain("tool change", output, StringComparison.Ordinal);
        _scratch.Write("c.nc", First.Replace("G54\n", "G54\nG10 L2 P1 X10\n", StringComparison.Ordinal));
        _scratch.Write("d.nc", First.Replace("G54\n", "G54\nG10 L2 P1 X12\n", StringComparison.Ordinal));
        Assert.Contains("under G54 with another datum", Command.In(_scratch.Folder, "compare", "c.nc", "d.nc").Output, StringComparison.Ordinal);
    }

    /// <summary>The second time round, distances lead elsewhere than positions.</summary>
    [Fact]
    public void A_way_that_is_not_known_is_told()
    {
        _scratch.Write("a.nc", "G21 G90 G17 G54\nG0 X0 Y0 Z50\nN10 X10\nX20\nIF [#500 LT 5] GOTO 10\nM30\n");
        _scratch.Write("b.nc", "G21 G90 G17 G54\nG0 X0 Y0 Z50\nG91\nN10 X10\nX10\nIF [#500 LT 5] GOTO 10\nM30\n");
        var output = Command.In(_scratch.Folder, "compare", "a.nc", "b.nc").Output.ReplaceLineEndings(" ");
        Assert.Contains("do the same as far as their way is known", output, StringComparison.Ordinal);
        Assert.Contains("behind line 5 of a.nc", output, StringComparison.Ordinal);
        Assert.Contains("behind line 6 of b.nc", output, StringComparison.Ordinal);
    }

    [Fact]
    public void Programs_that_do_not()
    {
        _scratch.Write("a.nc", First);
        _scratch.Write("b.nc", First.Replace("X30", "X30 Z-4", StringComparison.Ordinal));
        var outcome = Command.In(_scratch.Folder, "compare", "a.nc", "b.nc", "--format", "json");
        Assert.Equal(1, outcome.ExitCode);
        var hole = outcome.Json.GetProperty("holes")[0];
        Assert.Equal(("altered", "depth"), (hole.GetProperty("change").GetString(), hole.GetProperty("what").GetString()));
        Assert.Equal((2, -3.0, -4.0), (
            hole.GetProperty("first").GetProperty("number").GetInt32(),
            hole.GetProperty("first").GetProperty("bottom").GetDouble(), hole.GetProperty("second").GetProperty("bottom").GetDouble()));
        var text = Command.In(_scratch.Folder, "compare", "a.nc", "b.nc").Output;
        Assert.Contains("feed to X30 Y5 Z-4 F100", text, StringComparison.Ordinal);
        Assert.Contains("1 hole changed", text, StringComparison.Ordinal);
    }

    /// <summary>A move that only begins elsewhere, and one under another work offset, lead to the same place in words: each line says what sets it apart.</summary>
    [Fact]
    public void Moves_told_in_the_same_words_are_told_apart()
    {
        _scratch.Write("a.nc", "G21 G90 G54\nG0 X0 Y0 Z5\nG1 Z-2 F100\nG0 Z5\nX20\nM30\n");
        _scratch.Write("b.nc", "G21 G90 G54\nG0 X0 Y0 Z3\nG1 Z-2 F100\nG0 Z5\nG55 X20 Y0 Z5\nM30\n");
        var lines = Command.In(_scratch.Folder, "compare", "a.nc", "b.nc").Output.Split('\n').Select(line => string.Join(' ', line.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))).ToList();
        Assert.Contains("- 3 feed to X0 Y0 Z-2 F100 from X0 Y0 Z5", lines);
        Assert.Contains("+ 3 feed to X0 Y0 Z-2 F100 from X0 Y0 Z3", lines);
        Assert.Contains("- 5 rapid to X20 Y0 Z5 under G54 from X0 Y0 Z5", lines);
        Assert.Contains("+ 5 rapid to X20 Y0 Z5 under G55 from X? Y? Z?", lines);
        // The blocks of both that differ first.
        Assert.Equal(["- 2 G0 X0 Y0 Z5", "+ 2 G0 X0 Y0 Z3"], lines[(lines.IndexOf("They differ first here:") + 1)..][..2]);
        // Nothing else leads there: nothing more is said.
        Assert.Contains("+ 2 rapid to X0 Y0 Z3", lines);
        Assert.DoesNotContain(lines.Where(line => line.StartsWith('-')), line => lines.Contains($"+{line[1..]}"));
    }

    [Fact]
    public void Two_programs_in_inches_are_told_in_inches()
    {
        _scratch.Write("a.nc", "G20 G90 G54\nG0 X1. Y0 Z.1\nG1 Z-.5 F6.\nM30\n");
        _scratch.Write("b.nc", "G20 G90 G54\nG0 X1. Y0 Z.1\nG1 Z-.25 F3.\nM30\n");
        _scratch.Write("mm.nc", "G21 G90 G54\nG0 X25.4 Y0 Z2.54\nG1 Z-6.35 F76.2\nM30\n");
        var output = Command.In(_scratch.Folder, "compare", "a.nc", "b.nc").Output;
        Assert.Contains("of the tool tip in inches, feeds in in/min.", output, StringComparison.Ordinal);
        Assert.Contains("- 3 feed to X1 Y0 Z-0.5 F6", string.Join(' ', output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
        Assert.Contains("feed to X1 Y0 Z-0.25 F3", output, StringComparison.Ordinal);
        Assert.Equal(0, Command.In(_scratch.Folder, "compare", "b.nc", "mm.nc").ExitCode);
        Assert.Contains("of the tool tip in mm, feeds in mm/min.", Command.In(_scratch.Folder, "compare", "a.nc", "mm.nc").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_is_not_there() => Assert.Equal(2, Command.In(_scratch.Folder, "compare", "a.nc", "b.nc").ExitCode);

    [Fact]
    public void Formatting_is_shown_told_or_written()
    {
        byte[] untidy = [.. "g21g90g17g54 (f"u8, 0xFC, .. "r)\r\ng0x10\r\nm30\r\n"u8];
        byte[] tidy = [.. "G21 G90 G17 G54 (f"u8, 0xFC, .. "r)\r\nG0 X10\r\nM30\r\n"u8];
        var path = _scratch.Write("plate.nc", untidy);
        Assert.Contains("G0 X10", Command.In(_scratch.Folder, "format", "plate.nc").Output, StringComparison.Ordinal);
        var check = Command.In(_scratch.Folder, "format", "plate.nc", "--check");
        Assert.Equal((1, "plate.nc is not tidy"), (check.ExitCode, check.Output.Trim()));
        Assert.Equal(untidy, File.ReadAllBytes(path));
        Assert.Equal(0, Command.In(_scratch.Folder, "format", "plate.nc", "--write").ExitCode);
        Assert.Equal(tidy, File.ReadAllBytes(path));
        Assert.Equal((0, ""), (Command.In(_scratch.Folder, "format", "plate.nc", "--check") is { } again ? (again.ExitCode, again.Output) : default));
        Assert.Equal(["plate.nc"], Directory.GetFiles(_scratch.Folder).Select(Path.GetFileName));
    }

    [Theory]
    [InlineData("--renumber=0")]
    [InlineData("--renumber=many")]
    [InlineData("--renumber", "5")]
    [InlineData("--check", "--write")]
    public void What_cannot_be_asked(params string[] options)
    {
        _scratch.Write("plate.nc", Encoding.ASCII.GetBytes(First));
        var outcome = Command.In(_scratch.Folder, ["format", "plate.nc", .. options]);
        Assert.Equal(2, outcome.ExitCode);
        Assert.Single(outcome.Errors.Trim().Split('\n'));
    }

    [Fact]
    public void Numbers_anew()
    {
        _scratch.Write("plate.nc", Encoding.ASCII.GetBytes("N1 G21 G90 G17 G54\nG0 X10\nIF [1 EQ 2] GOTO 1\nM30\n"));
        Assert.Equal(
            "N5 G21 G90 G17 G54\nN10 G0 X10\nN15 IF [1 EQ 2] GOTO 5\nN20 M30\n",
            Command.In(_scratch.Folder, "format", "plate.nc", "--renumber=5").Output);
    }

    /// <summary>The step is optional: what follows is a program.</summary>
    [Fact]
    public void A_program_behind_renumber_is_no_step()
    {
        _scratch.Write("plate.nc", "G21 G90 G17 G54\nM30\n"u8.ToArray());
        var outcome = Command.In(_scratch.Folder, "format", "--renumber", "plate.nc");
        Assert.Equal((0, "N10 G21 G90 G17 G54\nN20 M30\n"), (outcome.ExitCode, outcome.Output));
        Assert.Equal("nclanguage: there is no file 5; steps of 5 are written --renumber=5", Command.In(_scratch.Folder, "format", "--renumber", "5", "plate.nc").Errors.Trim());
        Assert.Equal(outcome.Output, Command.In(_scratch.Folder, "format", "--renumber", "--", "plate.nc").Output);
    }

    /// <summary>O12 leads back to N90 by M99 P90, which is not seen in the text.</summary>
    [Fact]
    public void A_program_whose_run_hangs_on_its_numbers_is_told_with_the_place()
    {
        _scratch.Write("plate.nc", "G90 G0 X0\nM98 P12\nN20 X5\nN90 G0 X10\nM30\n"u8.ToArray());
        _scratch.Write("O12.nc", "O12\nM99 P90\n"u8.ToArray());
        var outcome = Command.In(_scratch.Folder, "format", "--renumber", "plate.nc");
        Assert.Equal(
            (2, "nclanguage: plate.nc: numbered anew it would not move as it does now, first at line 4: its run hangs on the old numbers, and nothing was changed"),
            (outcome.ExitCode, outcome.Errors.Trim()));
        Assert.Empty(outcome.Output);
    }

    [Fact]
    public void One_program_that_cannot_be_tidied_does_not_keep_the_others()
    {
        _scratch.Write("a.nc", "N10 G90\nGOTO 99\n"u8.ToArray());
        var other = _scratch.Write("b.nc", "g90\nm30\n"u8.ToArray());
        var outcome = Command.In(_scratch.Folder, "format", "--write", "--renumber", "a.nc", "b.nc", "none.nc");
        Assert.Equal(2, outcome.ExitCode);
        Assert.Equal(["nclanguage: a.nc: line 2 jumps to N99", "nclanguage: there is no"], outcome.Errors.Trim().Split('\n').Select(line => line.Split(", which")[0].Split(" file")[0]));
        Assert.Equal("N10 G90\nN20 M30\n"u8.ToArray(), File.ReadAllBytes(other));
    }
}
