using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Editing.Tests.Support;

namespace NcLanguage.Editing.Tests.Hovers;

/// <summary>Places that must not hover.</summary>
public sealed class NothingTests
{
    [Theory]
    [InlineData("G0 X1 (a $0note)")]
    [InlineData("$0(a note)")]
    [InlineData("(a note)$0")]
    [InlineData("G0 X1 (a note)$0")]
    [InlineData("G0 X1 (never $0closed")]
    [InlineData("G0 X1 (never closed$0")]
    [InlineData("G0 X1 ; to the $0end")]
    [InlineData("G0 X1 ; to the end$0")]
    [InlineData("$0")]
    [InlineData("G0 X1\n$0\nX2")]
    [InlineData("G0 X1\n  $0 \nX2")]
    [InlineData("  $0(a note)")]
    [InlineData("(a note) $0 (another)")]
    [InlineData("G0 $0X")]
    [InlineData("G0 $0X1.2.3")]
    [InlineData("G0 $0X[1+")]
    [InlineData("$0G999")]
    [InlineData("$0G81.3")]
    [InlineData("$0M777")]
    [InlineData("G0 $0? X1")]
    [InlineData("? $0 ?")]
    public void Nothing(string marked) => Assert.Null(Editor.HoverAt(marked));

    [Theory]
    [InlineData(-1, 0)]
    [InlineData(0, -1)]
    [InlineData(0, 6)]
    [InlineData(0, int.MaxValue)]
    [InlineData(1, 0)]
    [InlineData(int.MaxValue, 0)]
    [InlineData(int.MinValue, int.MinValue)]
    public void Nothing_outside_the_text(int line, int column) => Assert.Null(Hover.At(Editor.Analyse("G0 X1"), line, column));

    /// <summary>Wherever a column falls inside a character of several bytes, in any token.</summary>
    [Theory]
    [InlineData("G0 X1 (Bohrung Ø8, Tiefe 12 – vorn)")]
    [InlineData("G0 ° X1")]
    [InlineData("#<größe>=5 X1")]
    [InlineData("\uFEFFG0 X1")]
    [InlineData("G0 X1 ; 深さ")]
    public void Nothing_inside_a_character(string text)
    {
        var analysis = Editor.Analyse(text);
        var bytes = Encoding.UTF8.GetBytes(text);
        var looked = 0;
        for (var column = 0; column < bytes.Length; column++)
        {
            if ((bytes[column] & 0xC0) != 0x80)
                continue;
            looked++;
            Assert.Null(Hover.At(analysis, 0, column));
        }
        Assert.NotEqual(0, looked);
    }

    /// <summary>Every column of a program: comments give nothing, all words and what is blank between them something.</summary>
    [Fact]
    public void Every_column_of_a_block()
    {
        const string Text = "N10 G0 X1 (note) Y2 ; end";
        var analysis = Editor.Analyse(Text);
        for (var column = 0; column < Text.Length; column++)
        {
            var inComment = (column >= Text.IndexOf('(', StringComparison.Ordinal) && column <= Text.IndexOf(')', StringComparison.Ordinal))
                || column >= Text.IndexOf(';', StringComparison.Ordinal);
            Assert.Equal(inComment, Hover.At(analysis, 0, column) is null);
        }
    }

    /// <summary>The answer's range holds the place that was asked for.</summary>
    [Fact]
    public void The_range_holds_the_place()
    {
        const string Text = "  N10 G0  X1 (note) Y2  ";
        var analysis = Editor.Analyse(Text);
        for (var column = 0; column <= Text.Length; column++)
            if (Hover.At(analysis, 0, column) is { } answer)
                Assert.True(answer.Line == 0 && answer.StartColumn <= column && column <= answer.EndColumn && answer.EndColumn <= Text.Length);
    }

    /// <summary>Text on the line of a % does not run, and is not said to stand behind the program's end.</summary>
    [Fact]
    public void A_percent_line()
    {
        Assert.StartsWith("**%** beginning or end", Editor.Markdown("$0%\nG0 X1"), StringComparison.Ordinal);
        Assert.Contains("it stands on a line that marks", Editor.Markdown("% $0N5\nG0 X1"), StringComparison.Ordinal);
    }

    [Fact]
    public void Analysis_is_needed() => Assert.Throws<ArgumentNullException>(() => Hover.At((ProgramAnalysis)null!, 0, 0));
}
