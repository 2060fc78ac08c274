using NcLanguage.Editing.Tests.Support;

namespace NcLanguage.Editing.Tests.Completions;

/// <summary>Words that the block's codes need or take (NISTIR 6556 §3.5.16: what a cycle needs and what stays).</summary>
public sealed class WordCompletionTests
{
    static string[] Words(string program, string? setup = null) =>
        [.. Typist.At(program, setup).Entries.Where(entry => entry.Kind == CompletionKind.Word).Select(entry => entry.Label)];

    [Fact]
    public void A_new_peck_cycle_asks_for_bottom_level_peck_and_feed_first() =>
        Assert.Equal(["Z", "R", "F", "Q"], Words("G21 G90 G17 G0 Z50\nG83 X10 Y5 |").Take(4));

    [Fact]
    public void What_is_carried_over_is_named_with_its_value_and_line()
    {
        const string program = "G21 G90 G0 Z50\nG83 X10 Y5 Z-20 R2 Q4 F120\nG83 X20 |";
        var answer = Typist.At(program);
        Assert.Equal("R level, where the feed begins · mm · R2 carried over from line 2", answer.Entry("R").Detail);
        Assert.Equal("depth of one peck · mm · Q4 carried over from line 2", answer.Entry("Q").Detail);
        Assert.Equal("feed · mm/min · F120 carried over from line 2", answer.Entry("F").Detail);
        Assert.Equal("hole along Y · mm", answer.Entry("Y").Detail);
        Assert.DoesNotContain("needed", string.Concat(answer.Entries.Where(entry => entry.Kind == CompletionKind.Word).Select(entry => entry.Detail)), StringComparison.Ordinal);
    }

    /// <summary>Another cycle takes its levels anew.</summary>
    [Fact]
    public void Another_cycle_needs_its_levels_again() =>
        Assert.EndsWith("needed", Typist.At("G21 G90 G0 Z50\nG81 X1 Y1 Z-5 R2 F100\nG82 X2 |").Entry("R").Detail, StringComparison.Ordinal);

    [Fact]
    public void Inches_are_told_as_inches()
    {
        var answer = Typist.At("G20 G90 G0 Z2\nG81 X1 Y1 Z-.5 R.1 F5\nX2 |");
        Assert.Equal("R level, where the feed begins · in · R0.1 carried over from line 2", answer.Entry("R").Detail);
        Assert.Equal("feed · in/min · F5 carried over from line 2", answer.Entry("F").Detail);
    }

    [Fact]
    public void In_another_plane_its_third_axis_is_the_depth()
    {
        var answer = Typist.At("G21 G90 G18 G0 Y50\nG81 X10 |");
        Assert.Equal("bottom of the hole · mm · needed", answer.Entry("Y").Detail);
        Assert.Equal("hole along Z · mm", answer.Entry("Z").Detail);
    }

    [Fact]
    public void An_arc_needs_one_of_centre_and_radius()
    {
        Assert.Equal("radius; with a minus sign for more than half a turn · mm · one of these is needed", Typist.At("G21 G90 G0 X0 Y0 Z0\nG2 X10 |").Entry("R").Detail);
        Assert.DoesNotContain("needed", Typist.At("G21 G90 G0 X0 Y0 Z0\nG2 X10 I5 |").Entry("R").Detail, StringComparison.Ordinal);
    }

    /// <summary>NISTIR 6556 §3.5.3.1: I and J in XY, I and K in XZ, J and K in YZ.</summary>
    [Theory]
    [InlineData("G17", "I J")]
    [InlineData("G18", "I K")]
    [InlineData("G19", "J K")]
    public void An_arc_has_its_centre_in_the_plane(string plane, string centre) =>
        Assert.Equal(centre, string.Join(' ', Words($"G21 G90 {plane} G0 X0 Y0 Z0\nG2 X10 |").Where(word => word is "I" or "J" or "K")));

    [Fact]
    public void The_motion_in_force_lends_its_words() => Assert.Equal(["X", "Y", "Z"], Words("G21 G90 G0 X1\n|").Take(3));

    [Fact]
    public void A_length_offset_needs_its_number() => Assert.Equal("H", Words("G21 G90\nG43 |")[0]);

    [Fact]
    public void A_repeat_word_follows_the_reading()
    {
        Assert.Contains("L", Words("G81 X1 Z-1 R1 |"));
        Assert.Contains("K", Typist.Labels("G81 X1 Z-1 R1 |", machine: Editor.Reading("repeats=K")));
        Assert.DoesNotContain("L", Typist.Labels("G81 X1 Z-1 R1 |", machine: Editor.Reading("repeats=K")));
    }

    [Fact]
    public void Words_of_the_block_are_not_offered_again()
    {
        var words = Words("G81 X1 Y2 Z-5 R2 F100 |");
        Assert.DoesNotContain("X", words);
        Assert.DoesNotContain("F", words);
    }

    [Fact]
    public void The_documentation_names_code_and_letter() =>
        Assert.StartsWith("R level, where the feed begins, a word of G83", CompletionTopics.Documentation(Typist.At("G83 X1 |").Entry("R").Topic!)!, StringComparison.Ordinal);
}
