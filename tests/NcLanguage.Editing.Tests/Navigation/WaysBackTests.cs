using NcLanguage.Editing.Tests.Support;

namespace NcLanguage.Editing.Tests.Navigation;

/// <summary>M99 P in a called program goes on at a block of the program that called it, by the block's number; in a program that nobody calls it leads to
/// one of its own (common practice).</summary>
public sealed class WaysBackTests
{
    const string Two = "O1\nN10 M98 P2\nN20 G0 X1\nN90 G0 Y1\nGOTO 90\nM30\nO2\nN90 G91 X1\nM99 P90";

    static string[] Definitions(string marked, string? path = null, IProgramFolder? folder = null)
    {
        var at = new Marked(marked);
        return [.. Definition.Of(at.Analysis, at.Line, at.Column, path, folder).Select(at.Place)];
    }

    static string[] Uses(string marked, string? path = null, IProgramFolder? folder = null, bool withDefinition = true)
    {
        var at = new Marked(marked);
        return [.. References.Of(at.Analysis, at.Line, at.Column, withDefinition, path, folder).Select(at.Place)];
    }

    static string At(string text, int line, string word) =>
        string.Join('\n', text.Split('\n').Select((written, index) => index == line ? written.Replace(word, word[..1] + Editor.Cursor + word[1..], StringComparison.Ordinal) : written));

    [Fact]
    public void The_P_leads_to_the_block_of_the_caller_and_not_to_its_own() => Assert.Equal(["4 90"], Definitions(At(Two, 8, "P90")));

    [Fact]
    public void It_leads_to_a_block_of_every_caller()
    {
        const string three = "O1\nM98 P2\nN90 G0 Y1\nM98 P3\nM30\nO3\nM98 P2\nN90 G0\nM99\nO2\nM99 P90";
        Assert.Equal(["3 90", "8 90"], Definitions(At(three, 10, "P90")));
        // Of two blocks with a number the next one behind the call.
        Assert.Equal(["5 5"], Definitions(At("O1\nN5 G0\nM98 P2\nN6 G0\nN5 G0 Y1\nM30\nO2\nM99 P5", 7, "P5")));
        Assert.Empty(Definitions(At("O1\nM98 P2\nM30\nO2\nN90 G0\nM99 P90", 5, "P90")));
    }

    [Fact]
    public void In_a_program_that_nobody_calls_it_leads_to_its_own_block()
    {
        Assert.Equal(["1 90"], Definitions("N90 G0 X1\nM99 P9" + Editor.Cursor + "0"));
        Assert.Equal(["1 90", "2 90"], Uses("N90 G0 X1\nM99 P9" + Editor.Cursor + "0"));
    }

    [Fact]
    public void Callers_in_other_files_are_found()
    {
        var folder = new Beside(("/job/a.nc", "O1\nM98 P12\nN90 G0 X1\nM30"), ("/job/b.nc", "O2\nM98 P13\nN90 G0\nM30"), ("/job/c.nc", "O3\nM98 P12\nN90\nM30\nO12\nM99"));
        // c.nc calls its own O12.
        Assert.Equal(["/job/a.nc 3"], Definitions("O12\nG91 X1\nM99 P9" + Editor.Cursor + "0", "/job/O12.nc", folder));
        Assert.Equal(["3 90", "/job/a.nc 3"], Uses("O12\nG91 X1\nM99 P9" + Editor.Cursor + "0", "/job/O12.nc", folder));
    }

    [Theory]
    [InlineData(3, "N90")]
    [InlineData(4, " 90")]
    [InlineData(8, "P90")]
    public void From_each_end_all_uses_are_told(int line, string word)
    {
        Assert.Equal(["4 90", "5 90", "9 90"], Uses(At(Two, line, word)));
        Assert.Equal(["5 90", "9 90"], Uses(At(Two, line, word), withDefinition: false));
        var at = new Marked(At(Two, line, word));
        Assert.Equal(
            [("4 90", UseRole.Definition), ("5 90", UseRole.Read), ("9 90", UseRole.Read)],
            References.Highlights(at.Analysis, at.Line, at.Column).Select(use => (at.Place(use), use.Role)));
    }

    [Fact]
    public void The_called_programs_own_block_of_that_number_is_another() => Assert.Equal(["8 90"], Uses(At(Two, 7, "N90")));

    [Fact]
    public void From_a_caller_the_ways_back_of_called_files_are_told()
    {
        var folder = new Beside(("/job/O12.nc", "O12\nN90 G91 X1\nM99 P90"), ("/job/O13.nc", "O13\nM99 P90"));
        Assert.Equal(["3 90", "/job/O12.nc 3"], Uses("O1\nM98 P12\nN9" + Editor.Cursor + "0 G0\nM30", "/job/a.nc", folder));
    }

    [Fact]
    public void A_number_that_leads_back_cannot_be_changed_at_one_end()
    {
        var at = new Marked(At(Two, 7, "N90"));
        Assert.Equal("M99 in line 9 leads back into the program that called it, by this number: it cannot be changed at one end alone.", new Renaming(at.Analysis, null, null).Rename(at.Line, at.Column, "91").Refusal);
    }
}
