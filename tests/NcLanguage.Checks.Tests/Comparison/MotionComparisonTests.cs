using CsCheck;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Comparison;
using NcLanguage.Control.Moves;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.Comparison;

/// <summary>Two programs are the same where the machine does the same, and differ where it does not.</summary>
public sealed class MotionComparisonTests
{
    const string Head = "G21 G90 G17 G54 G40 G49 G80\nG0 X0 Y0 Z50\nS1200 M3 F200\n";

    static MotionList ListOf(string text) => MotionList.Of(SourceText.From(text), new Job(MachineProfile.IsoMill, Setup.None), CancellationToken.None);

    static MotionComparison Compare(string first, string second) => MotionComparison.Of(ListOf(Head + first), ListOf(Head + second));

    [Fact]
    public void It_ends_where_it_is_not_wanted_any_longer() =>
        Assert.Throws<OperationCanceledException>(() => MotionComparison.Of(ListOf("G0 X1"), ListOf("G0 X2"), cancel: new CancellationToken(canceled: true)));

    [Theory]
    [InlineData("G1 X10\nX20", "n5 g1x10.0 (there)\n\nN6 G01 X20.")]
    [InlineData("G1 X10\nX20", "G91 G1 X10\nX10\nG90")]
    [InlineData("G1 X25.4", "G20 G1 X1 F7.874016\nG21")]
    [InlineData("G2 X10 Y0 I5", "G2 X10 R5")]
    [InlineData("G99 G81 X1 Y2 Z-3 R2\nG80", "G0 X1 Y2\nZ2\nG1 Z-3\nG0 Z2")]
    [InlineData("G1 X0", "")]
    [InlineData("#1=0\nWHILE [#1 LT 3] DO 1\n#1=#1+1\nG1 X#1\nEND 1", "G1 X1\nX2\nX3")]
    [InlineData("M98 P5\nM30\nO5\nG1 X1\nM99", "G1 X1\nM30")]
    [InlineData("M98 P6\nM30\nO5\nG1 X1\nM99\nO6\nM98 P5\nM99", "M98 P5\nM30\nO5\nG1 X1\nM99")]
    [InlineData("M98 P5\nM30\nO5\nG1 X1\nM99", "G1 X1\nM30\nO5\nG1 X1\nM99")]
    [InlineData("M30\nO5\nG90 G0 X1\nM30", "M30\nO5\nN1 G90 G00 X1.0\nM2")]
    [InlineData("M30\nO5\n#1=0\nWHILE [#1 LT 2] DO 1\n#1=#1+1\nG0 X#1\nEND 1\nM30", "M30\nO5\nG0 X1\nX2\nM30")]
    public void The_same_in_other_words(string first, string second)
    {
        Assert.Empty(Compare(first, second).Changes);
        Assert.True(MotionMatchTests.Match(Head + first, Head + second).IsSame);
    }

    [Theory]
    [InlineData("G1 X10", "G1 X10.001", ChangeKind.Removed, ChangeKind.Added)]
    [InlineData("G1 X10", "G0 X10", ChangeKind.Removed, ChangeKind.Added)]
    [InlineData("G1 X10", "G1 X10 F201", ChangeKind.Altered)]
    [InlineData("G1 X10", "S1201 G1 X10", ChangeKind.Altered)]
    [InlineData("G1 X10", "M8 G1 X10", ChangeKind.Altered)]
    [InlineData("G1 X10", "M4 G1 X10", ChangeKind.Altered)]
    [InlineData("G4 P1", "G4 P2", ChangeKind.Altered)]
    [InlineData("G2 X10 R5", "G3 X10 R5", ChangeKind.Removed, ChangeKind.Added)]
    [InlineData("G1 X10", "G55 G1 X10", ChangeKind.Removed, ChangeKind.Added)]
    [InlineData("G1 X10", "G1 X10\nM0", ChangeKind.Added)]
    [InlineData("G1 X10\nX20\nX30", "G1 X10\nX30", ChangeKind.Removed, ChangeKind.Removed, ChangeKind.Added)]
    [InlineData("G41 D2 G1 X10\nX20", "G42 D2 G1 X10\nX20", ChangeKind.Altered, ChangeKind.Altered)]
    [InlineData("G41 D2 G1 X10", "G41 D7 G1 X10", ChangeKind.Altered)]
    [InlineData("G1 X10", "G41 D2 G1 X10", ChangeKind.Altered)]
    [InlineData("G43 H2 G0 Z5", "G0 Z5", ChangeKind.Removed, ChangeKind.Added)]
    [InlineData("G43 H2 G0 Z5", "G44 H2 G0 Z5", ChangeKind.Altered)]
    [InlineData("G43 H2 G0 Z5", "G43 H3 G0 Z5", ChangeKind.Altered)]
    [InlineData("M0", "M1", ChangeKind.Altered)]
    [InlineData("G96 S100\nG1 X10", "G96 S200\nG1 X10", ChangeKind.Altered)]
    [InlineData("G96 S100\nG1 X10", "G20 G96 S100\nG21 G1 X10", ChangeKind.Altered)]
    [InlineData("G61 G1 X10", "G64 G1 X10", ChangeKind.Altered)]
    [InlineData("G1 X10", "M49 G1 X10", ChangeKind.Altered)]
    [InlineData("M30\nO5\nG4 P1\nM30", "M30\nO5\nG4 P2\nM30", ChangeKind.Altered)]
    [InlineData("M30\nO5\nG4 P1\nM99\nO6\nM98 P5\nG4 P1\nM30", "M30\nO5\nG4 P1\nM99\nO6\nM98 P5\nG4 P2\nM30", ChangeKind.Altered)]
    [InlineData("M98 P5\nM30\nO5\nG1 X1\nM99", "G1 X1\nM30\nO5\nG4 P1\nM99", ChangeKind.Removed, ChangeKind.Added)]
    [InlineData("G1 X10\nO5\nX20", "G1 X10\nO5\nG91 X20", ChangeKind.Removed, ChangeKind.Added)]
    public void What_differs(string first, string second, params ChangeKind[] kinds)
    {
        Assert.Equal(kinds, Compare(first, second).Changes.Select(change => change.Kind));
        Assert.False(MotionMatchTests.Match(Head + first, Head + second).IsSame);
        Assert.False(MotionMatchTests.Match(Head + second, Head + first).IsSame);
    }

    /// <summary>Where the radius that compensation goes by is not given, nobody knows how the tool's centre runs.</summary>
    [Fact]
    public void A_centre_beside_the_path_by_an_unknown_amount_is_at_no_known_place()
    {
        Assert.Equal(0, ListOf(Head + "G1 X10\nX20").NotKnown - ListOf(Head).NotKnown);
        Assert.Equal(2, ListOf(Head + "G41 D2 G1 X10\nX20").NotKnown - ListOf(Head).NotKnown);
        Assert.Equal(3, ListOf(Head + "A90").LineOfRotation);
    }

    /// <summary>The differences are as few as can be: against the longest common part found by the textbook table (Wagner and Fischer, 1974).</summary>
    [Fact]
    public void Differences_are_as_few_as_can_be() => Gen.Select(Gen.Int[0, 3].Array[0, 14], Gen.Int[0, 3].Array[0, 14]).Sample((a, b) =>
    {
        // From Z0 down and up again: each place is its own, and stands between two others that are always the same.
        var changes = Compare(TextOf(a), TextOf(b)).Changes;
        Assert.Equal(a.Length + b.Length - (2 * CommonPart(a, b)), changes.Count / 2);
        Assert.Equal(a.Length - b.Length, changes.Count(change => change.Kind == ChangeKind.Removed) / 2 - (changes.Count(change => change.Kind == ChangeKind.Added) / 2));
    }, iter: 2000);

    static string TextOf(int[] places) => string.Concat(places.Select(place => $"G1 X{place + 1}\nX0\n"));

    static int CommonPart(int[] a, int[] b)
    {
        var table = new int[a.Length + 1, b.Length + 1];
        for (var i = 1; i <= a.Length; i++)
            for (var j = 1; j <= b.Length; j++)
                table[i, j] = a[i - 1] == b[j - 1] ? table[i - 1, j - 1] + 1 : Math.Max(table[i - 1, j], table[i, j - 1]);
        return table[a.Length, b.Length];
    }

    [Theory]
    [InlineData("G98 G81 X1 Y1 Z-3 R2\nX5", "G98 G81 X5 Y1 Z-3 R2\nX1", 0)]
    [InlineData("G81 X1 Y1 Z-3 R2\nX5", "G81 X1 Y1 Z-3 R2\nX5 Z-4", 1, "depth")]
    [InlineData("G99 G81 X1 Y1 Z-3 R2\nX5", "G98 G81 X1 Y1 Z-3 R2\nX5", 2, "return level")]
    [InlineData("G82 X1 Y1 Z-3 R2 P1", "G82 X1 Y1 Z-3 R2 P2 F100", 1, "dwell, feed")]
    [InlineData("G81 X1 Y1 Z-3 R2\nX5", "G81 X1 Y1 Z-3 R2", 1, "")]
    public void Holes(string first, string second, int changes, string what = "")
    {
        var found = HoleChanges.Of(TableOf(first), TableOf(second));
        Assert.Equal(changes, found.Count);
        if (changes > 0)
            Assert.Contains(what, found[0].What, StringComparison.Ordinal);
    }

    static HoleTable TableOf(string text) =>
        HoleTable.Of(ProgramRun.Create(SourceText.From(Head + text), new Job(MachineProfile.IsoMill, Setup.None), [], [], CancellationToken.None));

    /// <summary>The same numbers under another datum are another place (NISTIR 6556 §3.5.13, §3.5.18; G52 and G10 L2 for a datum: §3.5.5 and common practice).</summary>
    [Theory]
    [InlineData("G54", "G55")]
    [InlineData("G52 X5", "G52 X7")]
    [InlineData("G52 X5", "")]
    [InlineData("G92 X0", "G92 X2")]
    [InlineData("G10 L2 P1 X10", "G10 L2 P1 X12")]
    [InlineData("G10 L2 P1 X10", "")]
    [InlineData("G91 G10 L2 P1 X10\nG90", "")]
    public void Places_under_another_datum_are_others(string first, string second)
    {
        const string Holes = "\nG99 G81 X10 Y10 Z-5 R2\nX30\nG80 G0 Z50\nG1 X80\nM30";
        var found = Compare(first + Holes, second + Holes);
        Assert.Equal(found.First.Motions.Count(Travels) + found.Second.Motions.Count(Travels), found.Changes.Count(change => Travels((change.First ?? change.Second)!.Value)));
        Assert.Equal(
            [ChangeKind.Removed, ChangeKind.Removed, ChangeKind.Added, ChangeKind.Added],
            HoleChanges.Of(TableOf(Head + first + Holes), TableOf(Head + second + Holes)).Select(change => change.Kind));
        Assert.Empty(Compare(first + Holes, first + Holes).Changes);

        static bool Travels(Motion motion) => motion.Line > 3 && motion.Kind is (MoveKind.Rapid or MoveKind.Feed);
    }

    /// <summary>A datum that is written to where the setup has it stays there.</summary>
    [Fact]
    public void A_datum_that_stays_is_the_same()
    {
        var job = new Job(MachineProfile.IsoMill, new Setup { WorkOffsets = Setup.None.WorkOffsets.Add(54, new Point3(-300, -200, -400)) });
        MotionList Of(string block) => MotionList.Of(SourceText.From($"{Head}{block}\nG0 X10\nM30"), job, CancellationToken.None);
        Assert.Empty(MotionComparison.Of(Of(""), Of("G10 L2 P1 X-300")).Changes);
        Assert.NotEmpty(MotionComparison.Of(Of(""), Of("G10 L2 P1 X-301")).Changes);
    }
}
