using NcLanguage.Editing.Tests.Support;

namespace NcLanguage.Editing.Tests.Completions;

/// <summary>Where nothing fits nothing is offered.</summary>
public sealed class PlaceTests
{
    [Theory]
    [InlineData("G0 X1 (spot the holes G|)")]
    [InlineData("(G8|")]
    [InlineData("(nc-allow|)")]
    [InlineData("(nc-allow feed-missing: because |)")]
    [InlineData("G0 ; G|")]
    [InlineData("; (nc-allow |)")]
    [InlineData("G0 X1|")]
    [InlineData("G0 X1|0")]
    [InlineData("G0 X|10")]
    [InlineData("G0 X-|")]
    [InlineData("G0 X1.|")]
    [InlineData("G81 X1 Y2 Z-5 R2 F1|")]
    [InlineData("N1|0 G0")]
    [InlineData("N10| G0")]
    [InlineData("X[1+2|]")]
    [InlineData("X[1+2]|")]
    [InlineData("#1=5|")]
    [InlineData("%|")]
    [InlineData("(note)|")]
    [InlineData("G0 |X10")]
    [InlineData("G0 Ø|")]
    public void Nothing_is_offered_where_nothing_fits(string program)
    {
        Assert.Empty(Typist.At(program, Typist.Plate).Entries);
        Assert.Empty(Typist.At(Typist.Drill + "G81 Z-5 R2\n" + program, Typist.Plate).Entries);
    }

    [Fact]
    public void Nothing_is_offered_inside_a_character_or_outside_the_text()
    {
        var analysis = Editor.Analyse("(é) G0 \n");
        Assert.Empty(Completion.At(analysis, 0, 2, true).Entries);
        Assert.Empty(Completion.At(analysis, 0, 99, true).Entries);
        Assert.Empty(Completion.At(analysis, 0, -1, true).Entries);
        Assert.Empty(Completion.At(analysis, 9, 0, true).Entries);
        Assert.NotEmpty(Completion.At(analysis, 0, 8, true).Entries);
    }

    /// <summary>A number of one's own that ends the line must never become another: what has more to it than its letter goes when a digit is typed.</summary>
    [Fact]
    public void Values_go_when_a_number_is_typed()
    {
        var answer = Typist.At(Typist.Drill + "G81 X|", Typist.Plate);
        Assert.NotEmpty(answer.Entries);
        Assert.All(answer.Entries, entry => Assert.Equal("X", entry.FilterText));
    }

    [Fact]
    public void The_range_holds_the_cursor_and_what_was_typed()
    {
        foreach (var program in new[] { "G0 G8|", "G8|1", "T|", "WHI|", "#1=#|", "X[SI|", "(nc-allow feed|)", "N10 G0\nGOTO 1|", "G0 |", "|" })
        {
            var (text, line, column) = Typist.Parse(program);
            var answer = Typist.At(program, Typist.Plate);
            Assert.NotEmpty(answer.Entries);
            Assert.Equal(line, answer.Line);
            Assert.InRange(column, answer.StartColumn, answer.EndColumn);
            Assert.InRange(answer.EndColumn, column, text.Split('\n')[line].Length);
        }
    }
}
