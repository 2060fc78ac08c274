using System.Xml.Linq;
using NcLanguage.Cli.Tests.Support;

namespace NcLanguage.Cli.Tests;

/// <summary><c>view</c> as a command.</summary>
public sealed class ViewTests : IDisposable
{
    readonly Scratch _scratch = new();

    [Fact]
    public void A_drawing_and_a_page_are_written_and_written_over()
    {
        var program = _scratch.Write("part.nc", "G21 G90 G54\nG0 X1 Y2 Z3\nM30\n");
        foreach (var name in new[] { "out.svg", "out.html", "out.svg", "out.HTML" })
        {
            var outcome = Command.Run("view", program, "-o", _scratch.At(name));
            Assert.Equal((0, ""), (outcome.ExitCode, outcome.Errors));
            // Like the setup sheet: where it lies now, and what to read it with.
            Assert.Contains($"{name} written.", outcome.Output, StringComparison.Ordinal);
            Assert.Contains("A check is no proof.", outcome.Output, StringComparison.Ordinal);
        }
        Assert.Equal("svg", XDocument.Load(_scratch.At("out.svg")).Root!.Name.LocalName);
        Assert.Contains("Third-angle", Third(program), StringComparison.Ordinal);
        Assert.StartsWith("<!DOCTYPE html>", File.ReadAllText(_scratch.At("out.html")), StringComparison.Ordinal);
        Assert.EndsWith("</html>\n", File.ReadAllText(_scratch.At("out.html")), StringComparison.Ordinal);
    }

    /// <summary>The faults planted in the demonstration: a hole under clamp A, a traverse through clamp B.</summary>
    [Fact]
    public void What_the_tool_meets_is_counted_as_the_page_is_written()
    {
        Assert.Equal(0, Command.Run("demo", _scratch.At("demo")).ExitCode);
        Assert.Contains("out.html written; 2 contacts found in the program.", View("cover-plate-faulty.nc"), StringComparison.Ordinal);
        Assert.Contains("out.html written.", View("cover-plate.nc"), StringComparison.Ordinal);

        string View(string program) => Command.Run("view", _scratch.At(Path.Combine("demo", program)), "-o", _scratch.At("out.html")).Output;
    }

    string Third(string program)
    {
        Assert.Equal(0, Command.Run("view", program, "--output", _scratch.At("third.svg"), "--projection", "third").ExitCode);
        return File.ReadAllText(_scratch.At("third.svg"));
    }

    /// <summary>A program may have any name; one that is also the page's is not written over, by whatever way it is named.</summary>
    [Theory]
    [InlineData("view", "part.html")]
    [InlineData("sheet", "part.html")]
    [InlineData("view", "link.html")]
    public void The_program_itself_is_never_written_over(string command, string output)
    {
        var program = _scratch.Write("part.html", Samples.Sound);
        if (!OperatingSystem.IsWindows())
            File.CreateSymbolicLink(_scratch.At("link.html"), program);
        var outcome = Command.In(_scratch.Folder, command, "part.html", "-o", output);
        Assert.Equal(OperatingSystem.IsWindows() && output == "link.html" ? 0 : 2, outcome.ExitCode);
        Assert.Equal(Samples.Sound, File.ReadAllText(program));
    }

    [Theory]
    [InlineData("out.png", "must end in .html or .svg")]
    [InlineData("nowhere/out.svg", "could not be written")]
    public void A_place_that_cannot_be_written_is_told_in_one_line(string name, string reason)
    {
        var outcome = Command.Run("view", _scratch.Write("part.nc", Samples.Sound), "-o", _scratch.At(name));
        Assert.Equal(2, outcome.ExitCode);
        Assert.Contains(reason, Assert.Single(outcome.ErrorLines), StringComparison.Ordinal);
        // It is written beside first, under a name that is nobody's business.
        Assert.DoesNotContain(".new", outcome.ErrorLines[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_place_to_write_it_says_what_it_needs()
    {
        var outcome = Command.Run("view", _scratch.Write("part.nc", Samples.Sound));
        Assert.Equal(2, outcome.ExitCode);
        Assert.Single(outcome.ErrorLines);
    }

    [Fact]
    public void The_exit_code_follows_the_findings_where_asked()
    {
        var program = _scratch.Write("part.nc", Samples.WithError);
        Assert.Equal(1, Command.Run("view", program, "-o", _scratch.At("out.svg"), "--fail-on", "error").ExitCode);
        Assert.Equal(0, Command.Run("view", program, "-o", _scratch.At("out.svg")).ExitCode);
    }

    public void Dispose() => _scratch.Dispose();
}
