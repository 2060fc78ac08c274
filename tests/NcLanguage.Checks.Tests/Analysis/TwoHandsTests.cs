using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.Analysis;

/// <summary>Two threads find what one finds.</summary>
public class TwoHandsTests
{
    static readonly AnalysisOptions TwoHands = AnalysisOptions.Default with { WithTwoHands = true };

    static string Holes(int blocks) =>
        "T1 M6\nG21 G90 G54 G0 X0 Y0\nS900 M3\nG43 H1 Z50\nG99 G81 X10 Y10 Z-4 R2 F100\n"
        + string.Concat(Enumerable.Range(0, blocks).Select(i => i % 97 == 0 ? $"(row {i}) G91 X{i % 7} R3\nG90\n" : $"N{i} X{i % 113} Y{i % 71}\n")) + "M30\n";

    static string Contour(int blocks) =>
        "T1 M6\nG21 G90 G54 G0 X0 Y0\nS900 M3\nG43 H1 Z2\nG1 Z-1 F100\nG41 D1 X5 Y5\n"
        + string.Concat(Enumerable.Range(0, blocks).Select(i => $"X{10 + i % 3 * 20} Y{10 + i / 3 % 40}\n")) + "G40 X0 Y0\nM30\n";

    static void SameAsOne(string program)
    {
        var text = SourceText.From(program);
        var setup = Setup.None with { Tools = [new Tool { Number = 1, Diameter = 6, Length = 80, LengthOffset = 1, RadiusOffset = 1 }] };
        var one = ProgramAnalysis.Create(text, setup, MachineProfile.IsoMill);
        var two = ProgramAnalysis.Create(text, setup, MachineProfile.IsoMill, TwoHands);
        Assert.Equal(one.Findings.AsSpan(), two.Findings.AsSpan());
        Assert.Equal(one.Main.Exit, two.Main.Exit);
        Assert.Equal(one.BlocksRun, two.BlocksRun);
        for (var i = 0; i < one.Main.Results.Length; i++)
        {
            Assert.Equal(one.Main.Results[i].Entry, two.Main.Results[i].Entry);
            Assert.Equal(one.Main.Results[i].Seconds, two.Main.Results[i].Seconds);
            Assert.Equal(one.Main.Results[i].LinesAhead, two.Main.Results[i].LinesAhead);
            Assert.Equal(one.Main.Results[i].Sets, two.Main.Results[i].Sets);
            Assert.Equal(one.Main.Results[i].Holes, two.Main.Results[i].Holes);
        }
    }

    [Fact]
    public void A_drilling_program_is_the_same() => SameAsOne(Holes(6000));

    [Fact]
    public void A_contour_that_looks_ahead_is_the_same() => SameAsOne(Contour(6000));

    [Fact]
    public void A_program_that_leaves_its_order_far_down_is_the_same() => SameAsOne(Holes(5000).Replace("M30\n", "#1=3\nIF [#1 GT 2] GOTO 3000\nG80\nM30\n", StringComparison.Ordinal));

    static string LongRows(int rows, string behind) =>
        "T1 M6\nG21 G90 G54 G0 X0 Y0\nS900 M3\nG43 H1 Z50\nG99 G81 X10 Y10 Z-4 R2 F100\n" + string.Concat(Enumerable.Range(0, 300).Select(i => $"N{i} X{i % 113} Y{i % 71}\n"))
        + "G91\n" + string.Concat(Enumerable.Repeat("X0.01 L9999\n", rows)) + behind + string.Concat(Enumerable.Range(300, 2000).Select(i => $"N{i} X{i % 113} Y{i % 71}\n")) + "X0.01 L9999\nM30\n";

    /// <summary>A block of very many moves is looked at as it is carried out, and the two go on behind it.</summary>
    [Theory]
    [InlineData(4, "G90\n")]
    [InlineData(200, "G90\n")]
    [InlineData(4, "G90\n#1=3\nIF [#1 GT 2] GOTO 2200\n")]
    public void Rows_of_very_many_holes_are_the_same(int rows, string behind) => SameAsOne(LongRows(rows, behind));

    /// <summary>An edit at the beginning: the rest runs again as far as it meets another state, with two threads once a first look has been given.</summary>
    [Theory]
    [InlineData("G90 G54", "G91 G54", true)]
    [InlineData("S900", "S950", true)]
    [InlineData("X10 Y10", "X11 Y10", false)]
    public void An_edit_that_changes_what_follows_is_run_as_by_one(string word, string by, bool changesAll)
    {
        var text = SourceText.From(Holes(9000).Replace("N6000 ", "G90 S900 N6000 ", StringComparison.Ordinal));
        var setup = Setup.None with { Tools = [new Tool { Number = 1, Diameter = 6, Length = 80, LengthOffset = 1 }] };
        var at = text.ToString().IndexOf(word, StringComparison.Ordinal);
        var changed = text.WithChange(at, at + word.Length, Encoding.ASCII.GetBytes(by));
        foreach (var isAwaited in (bool[])[true, false])
        {
            var looks = 0;
            var two = ProgramAnalysis.Create(text, setup, MachineProfile.IsoMill, TwoHands).WithText(changed, isAwaited ? _ => looks++ : null);
            var one = ProgramAnalysis.Create(text, setup, MachineProfile.IsoMill).WithText(changed);
            var anew = ProgramAnalysis.Create(changed, setup, MachineProfile.IsoMill);
            Assert.Equal(isAwaited && changesAll ? 1 : 0, looks);
            Assert.Equal(one.BlocksRun, two.BlocksRun);
            Assert.Equal(anew.Findings.AsSpan(), two.Findings.AsSpan());
            Assert.Equal(anew.Main.Results.ToArray().Select(part => part.Entry), two.Main.Results.ToArray().Select(part => part.Entry));
            Assert.Equal(anew.Main.Results.ToArray().SelectMany(part => part.Holes), two.Main.Results.ToArray().SelectMany(part => part.Holes));
        }
    }

    /// <summary>Another speed runs everything again; what the blocks set and how long they take is as it was, and is not kept a second time.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void What_an_edit_far_above_leaves_as_it_was_is_kept_once(bool withTwoHands)
    {
        var text = SourceText.From(Holes(9000));
        var setup = Setup.None with { Tools = [new Tool { Number = 1, Diameter = 6, Length = 80, LengthOffset = 1 }] };
        var analysis = ProgramAnalysis.Create(text, setup, MachineProfile.IsoMill with { IsChosen = true }, TwoHands with { WithTwoHands = withTwoHands });
        var at = text.ToString().IndexOf("S900", StringComparison.Ordinal);
        var edited = analysis.WithText(text.WithChange(at, at + 4, "S950"u8));
        Assert.InRange(edited.BlocksRun, 9_000, 10_000);
        for (var i = 1; i < edited.Main.Results.Length; i++)
        {
            Assert.NotSame(analysis.Main.Results[i], edited.Main.Results[i]);
            Assert.Same(analysis.Main.Results[i].Sets, edited.Main.Results[i].Sets);
            Assert.Same(analysis.Main.Results[i].StepSeconds, edited.Main.Results[i].StepSeconds);
        }
    }

    [Fact]
    public void Cancelled_it_stops()
    {
        using var source = new CancellationTokenSource();
        source.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => ProgramAnalysis.Create(SourceText.From(Holes(6000)), Setup.None, MachineProfile.IsoMill, TwoHands, source.Token));
    }
}
