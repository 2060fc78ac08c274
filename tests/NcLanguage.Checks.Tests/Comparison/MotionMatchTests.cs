using CsCheck;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Comparison;
using NcLanguage.Control.Flow;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.Comparison;

/// <summary>Two programs side by side, without lists of what they do: the answer is that of the lists.</summary>
public sealed class MotionMatchTests
{
    const string Head = "G21 G90 G17 G54 G40 G49 G80\nG0 X0 Y0 Z50\nS1200 M3 F200\n";

    /// <summary>A hole of 1,077 strokes, some 3,000 moves.</summary>
    const string Pecks = "G99 G83 X5 Y5 Z-19 R2 Q0.0195\n";

    static readonly Job Mill = new(MachineProfile.IsoMill, Setup.None);

    internal static MotionMatch Match(string first, string second, int most = int.MaxValue, CancellationToken cancel = default) => MotionMatch.Of(
        SourceText.From(first), SourceText.From(second), most < int.MaxValue ? Few(most) : Mill, MotionComparison.UsualTolerance, cancel);

    static Job Few(int mostBlocks) => new(MachineProfile.IsoMill, Setup.None, mostBlocks: mostBlocks);

    static readonly string[] Blocks = ["G1 X1", "G1 X2", "G4 P1", "M98 P5", "M98 P6", "M30", "M99", "O5", "O6", "#1=0\nWHILE [#1 LT 9] DO 1\n#1=#1+1\nG1 X#1\nEND 1"];

    /// <summary>Programs of a few moves, calls and further programs that nothing, or only something, calls.</summary>
    static readonly Gen<string> Texts = Gen.Int[0, Blocks.Length - 1].Array[1, 8].Select(blocks => Head + string.Join('\n', blocks.Select(block => Blocks[block])));

    static readonly Gen<int> MostBlocks = Gen.Bool.Select(isLong => isLong ? 100_000 : 6);

    [Fact]
    public void What_it_calls_the_same_the_lists_do() => Gen.Select(Texts, Texts, MostBlocks).Sample((first, second, most) =>
    {
        var job = Few(most);
        foreach (var other in new[] { second, first })
        {
            var lists = MotionComparison.Of(MotionList.Of(SourceText.From(first), job, default), MotionList.Of(SourceText.From(other), job, default));
            var match = MotionMatch.Of(SourceText.From(first), SourceText.From(other), job, MotionComparison.UsualTolerance, default);
            // The lists hold all further programs as one: what one does at its end may stand for what the next does at its beginning. Side by side it may not.
            Assert.True(lists.IsSame || !match.IsSame, $"{first}\nand\n{other}");
            Assert.True(match.IsSame || other != first, first);
            Assert.True(match.IsSame || !lists.IsSame || first.Contains("\nO", StringComparison.Ordinal) || other.Contains("\nO", StringComparison.Ordinal), $"{first}\nand\n{other}");
        }
    }, iter: 3000);

    [Fact]
    public void How_far_a_program_is_known_is_what_the_list_of_it_says() => Gen.Select(Texts, MostBlocks).Sample((text, most) =>
    {
        var list = MotionList.Of(SourceText.From(text), Few(most), default);
        Assert.Equal(new MotionReach(list.End, list.LineOfLostWay), MotionReach.Of(SourceText.From(text), Few(most), default));
    }, iter: 1000);

    [Theory]
    [InlineData("G1 X10\nX20", "G1 X10\nX21", 4, 4)]
    [InlineData("G1 X10\nX20", "G1 X10", 4, null)]
    [InlineData("G1 X10", "G1 X10\nX20", null, 4)]
    [InlineData("M30\nO5\nG1 X1\nM99", "M30\nO6\nM99", 5, null)]
    public void Where_they_differ(string first, string second, int? line, int? other)
    {
        var match = Match(Head + first, Head + second);
        Assert.Equal((false, line, other), (match.IsSame, match.First?.Line, match.Second?.Line));
    }

    /// <summary>Where both runs are broken off, what one has more at its end the other would have made later; where one is, it is not known to be the same.</summary>
    [Fact]
    public void Two_runs_that_are_both_too_long_are_held_as_far_as_they_were_followed()
    {
        const string Loop = "#1=0\nWHILE [#1 LT 900] DO 1\n#1=#1+1\nG1 X#1\nEND 1\n";
        Assert.Equal(FlowEnd.TooLong, MotionReach.Of(SourceText.From(Loop), Few(50), default).End);
        Assert.True(Match(Loop, Loop.Replace("G1 X#1", "\nG90\nG1 X#1", StringComparison.Ordinal), most: 50).IsSame);
        Assert.False(Match(Loop, Loop.Replace("LT 900", "LT 9", StringComparison.Ordinal), most: 50).IsSame);
    }

    /// <summary>A list of 150,000 motions takes more than 30 MB, and two of them twice that.</summary>
    [Fact]
    public void Nothing_is_kept_of_motions_that_are_alike()
    {
        var text = Head + string.Concat(Enumerable.Repeat(Pecks, 50)) + "G80\nM30\n";
        Assert.InRange(MotionList.Of(SourceText.From(text), Mill, default).Motions.Count, 150_000, int.MaxValue);
        var before = GC.GetAllocatedBytesForCurrentThread();
        Assert.True(Match(text, text.Replace("Z-19", "Z-19.0", StringComparison.Ordinal)).IsSame);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 10_000_000);
    }

    /// <summary>Also where few blocks make many moves.</summary>
    [Fact]
    public void It_ends_where_it_is_not_wanted_any_longer()
    {
        var text = Head + Pecks + Pecks + "G80\nM30\n";
        var canceled = new CancellationToken(canceled: true);
        Assert.Throws<OperationCanceledException>(() => Match(text, text, cancel: canceled));
        Assert.Throws<OperationCanceledException>(() => MotionReach.Of(SourceText.From(text), Mill, canceled));
        Assert.Throws<OperationCanceledException>(() => MotionList.Of(SourceText.From(text), Mill, canceled));
    }
}
