using NcLanguage.Checks.Analysis;
using NcLanguage.Editing.Tests.Support;

namespace NcLanguage.Editing.Tests;

/// <summary>What an answer costs, counted in bytes allocated: running a block again takes a step object of some kilobytes, running a
/// program a result for each of its chunks. Bytes are counted, not time, so that a busy machine changes nothing.</summary>
public sealed class CostTests
{
    const int Blocks = 100_000;

    /// <summary>One running cycle of 500 holes after the other, under G90 with X and Y written; every hundredth block changes the tool.</summary>
    static ProgramAnalysis Program(int blocks) => Editor.Analyse(
        "G21 G90 G17 G54\nT4 M6\nG43 H4 Z50\nS1500 M3 F120\n" + string.Concat(Enumerable.Range(0, blocks).Select(i => (i % 100) switch
        {
            0 => "T4 M6\n",
            1 => "G0 X0 Y0 Z50\n",
            2 => $"G99 G82 X{i % 90} Y{i % 40} Z-3 R2 P0.5\n",
            99 => "G80\n",
            _ => $"X{i % 90} Y{i % 41}\n",
        })));

    static readonly Lazy<ProgramAnalysis> Long = new(() => Program(Blocks));
    static readonly Lazy<ProgramAnalysis> Short = new(() => Program(1_000));

    static long Bytes(Action action)
    {
        action();
        var before = GC.GetAllocatedBytesForCurrentThread();
        action();
        return GC.GetAllocatedBytesForCurrentThread() - before;
    }

    /// <summary>The table of holes has one number a chunk; that is all that may grow.</summary>
    static long GrowthAllowed => 4L * sizeof(int) * Long.Value.Text.Chunks.Length + 4096;

    [Theory]
    [InlineData("X")]
    [InlineData("G82")]
    [InlineData(" ")]
    public void A_hover_costs_the_same_in_a_long_program(string at)
    {
        var ofShort = Bytes(() => HoverFrom(Short.Value, 500, at));
        Assert.InRange(Bytes(() => HoverFrom(Long.Value, Blocks - 500, at)), 0, 2 * ofShort + GrowthAllowed);
    }

    static readonly Lazy<ProgramAnalysis> LongWithDrawing = new(() => Editor.Analyse(Program(Blocks).Text.ToString(), Typist.Plate));
    static readonly Lazy<ProgramAnalysis> ShortWithDrawing = new(() => Editor.Analyse(Program(2_000).Text.ToString(), Typist.Plate));

    /// <summary>Behind a blank and behind a letter, with a setup whose drawing has holes.</summary>
    [Theory]
    [InlineData(" ")]
    [InlineData(" Z")]
    [InlineData(" G")]
    [InlineData(" F")]
    public void Completion_and_signatures_cost_the_same_in_a_long_program(string typed)
    {
        var ofShort = Bytes(CompletionBehind(ShortWithDrawing.Value, 1_000, typed));
        var most = (2 * ofShort) + (4L * sizeof(int) * LongWithDrawing.Value.Text.Chunks.Length) + 4096;
        Assert.InRange(Bytes(CompletionBehind(LongWithDrawing.Value, Blocks - 1_500, typed)), 0, most);
    }

    static Action CompletionBehind(ProgramAnalysis analysis, int line, string typed)
    {
        // Feed and axis words would be there twice.
        while (!analysis.Text.LineText(line).StartsWith('X'))
            line++;
        var at = analysis.Text.OffsetOf(line, int.MaxValue);
        var typing = analysis.WithText(analysis.Text.WithChange(at, at, System.Text.Encoding.ASCII.GetBytes(typed)));
        var column = typing.Text.Line(line).Length;
        return () =>
        {
            Assert.NotEmpty(Completion.At(typing, line, column, true).Entries);
            Signatures.At(typing, line, column);
        };
    }

    static void HoverFrom(ProgramAnalysis analysis, int line, string at)
    {
        for (; ; line++)
            if (analysis.Text.LineText(line).IndexOf(at, StringComparison.Ordinal) is >= 0 and var column)
            {
                Assert.NotNull(Hover.At(analysis, line, column));
                return;
            }
    }

    /// <summary>Each program of a file is asked for what lies in it: the marks of the whole text are gone over a few times for all of them, and not for each.</summary>
    [Theory]
    [InlineData("M98 P#\n", "O#\nG1 X1 F100\nM99\n")]
    [InlineData("O# CALL\n", "O# SUB\nG1 X1 F100\nO# ENDSUB\n")]
    public void The_outline_of_many_programs_goes_over_the_text_a_few_times(string call, string program)
    {
        const int Programs = 500, FewPasses = 8;
        string Each(string text) => string.Concat(Enumerable.Range(1, Programs).Select(i => text.Replace("#", $"{i}", StringComparison.Ordinal)));
        var analysis = Editor.Analyse("O9000\n" + Each(call) + "M30\n" + Each(program));
        var before = analysis.Main.Flow!.Text.Passes;
        Assert.Equal(Programs, Outline.Of(analysis).Count(item => item.TellsCalls));
        Assert.InRange(analysis.Main.Flow.Text.Passes - before, 0, FewPasses);
    }

    /// <summary>Each M99 P10 asks who calls the program that it stands in: the calls are read once for all of them.</summary>
    [Fact]
    public void The_uses_of_a_block_that_many_programs_return_to_take_no_square_of_the_bytes()
    {
        const int Few = 50, Times = 8;
        var (few, many) = (Returning(Few), Returning(Few * Times));
        Assert.InRange(Bytes(() => References.Highlights(many, 0, 1)), 0, 2 * Times * Bytes(() => Assert.Equal(Few + 1, References.Highlights(few, 0, 1).Count)));

        static ProgramAnalysis Returning(int programs) => Editor.Analyse(
            "N10 G0 X1\n" + string.Concat(Enumerable.Range(1, programs).Select(i => $"M98 P{i}\n")) + "M30\n" + string.Concat(Enumerable.Range(1, programs).Select(i => $"O{i}\nG0 X2\nM99 P10\n")));
    }

    [Fact]
    public void Hints_of_a_visible_range_cost_the_same_in_a_long_program()
    {
        var ofShort = Bytes(() => InlayHints.In(Short.Value, 400, 460));
        Assert.InRange(Bytes(() => InlayHints.In(Long.Value, Blocks - 600, Blocks - 540)), 0, 2 * ofShort + GrowthAllowed);
    }

    /// <summary>Where the other reading cannot be told from nearby, it is not told: no run from the program's start.</summary>
    [Fact]
    public void The_other_reading_is_looked_for_nearby_only()
    {
        var analysis = Editor.Analyse(
            "G21 G90 G0 X0 Y0 Z50\nG99 G81 X1 Y1 Z-3 R2 F100\n" + string.Concat(Enumerable.Range(0, Blocks).Select(i => $"X{i % 90} Y{i % 41}\n")));
        Assert.Contains("as distances drills at X", HoverOfBlank(analysis, 40), StringComparison.Ordinal);
        Assert.DoesNotContain("drills at", HoverOfBlank(analysis, Blocks - 10), StringComparison.Ordinal);
        // A few chunks are lexed for it.
        Assert.InRange(Bytes(() => HoverOfBlank(analysis, Blocks - 10)), 0, 500_000);
    }

    static string HoverOfBlank(ProgramAnalysis analysis, int line) =>
        Hover.At(analysis, line, analysis.Text.LineText(line).IndexOf(' ', StringComparison.Ordinal))!.Markdown;

    /// <summary>1,000 tools and 1,000 operations in 100,000 blocks: less than one step object for each of them.</summary>
    [Fact]
    public void The_outline_runs_no_block_again()
    {
        var items = Outline.Of(Long.Value).Count;
        Assert.Equal(1001, items);
        Assert.InRange(Bytes(() => Outline.Of(Long.Value)), 0, items * 2500L);
    }

    /// <summary>The measure itself: a step object, as running one block again makes, would be seen.</summary>
    [Fact]
    public void Running_a_block_again_would_be_counted() => Assert.InRange(Bytes(() => Long.Value.Main.StepAt(5000)), 2500, long.MaxValue);
}
