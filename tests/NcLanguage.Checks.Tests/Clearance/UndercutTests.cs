using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Checks.Tests.Rules;
using NcLanguage.Machine.Loading;
using NcLanguage.Machine.Profiles;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.Clearance;

/// <summary>T-slots: where the flutes of a slot mill are lifted under what they left standing, and where its neck has no room. Expected outcomes are closed-form; sizes of a T-slot of 12
/// (throat 12, bottom 21 wide and 9 high, common practice from memory).</summary>
public sealed class UndercutTests
{
    // T1 mills the throat; T2 cuts the T; T3 is one of which nobody says that it has a neck; T4 makes a pocket wide enough for T2.
    const string Block = """
        { "stock": { "min": [0, 0, -40], "max": [100, 60, 0] },
          "tools": [ { "number": 1, "kind": "end-mill", "diameter": 12, "fluteLength": 26, "length": 90 },
                     { "number": 2, "kind": "slot-mill", "diameter": 21, "shankDiameter": 10, "fluteLength": 9, "length": 95 },
                     { "number": 3, "kind": "slot-mill", "diameter": 21, "fluteLength": 9, "length": 95 },
                     { "number": 4, "kind": "end-mill", "diameter": 24, "fluteLength": 40, "length": 95 } ] }
        """;

    const string Start = "G21 G90 G17 G54\nS800 M3\n";
    const string Throat = "T1 M6\nG0 X-10 Y30 Z40\nZ-20\nG1 X110 F150\nG0 Z40\n";
    const string ToSlot = "T2 M6\nG0 X-15 Y30\nZ-20\n";

    static IEnumerable<string> Lifts(string moves, string setup = Block) => Programs.Of("lifted-under-stock", Start + moves, setup).Select(finding => BlockOf(Start + moves, finding));

    static IEnumerable<string> Necks(string moves) => Programs.Of("holder-meets-stock", Start + moves, Block).Select(finding => BlockOf(Start + moves, finding));

    static string BlockOf(string program, Finding finding) => program.Split('\n')[finding.Line];

    [Theory]
    [InlineData(Throat + ToSlot + "G1 X60 F60\nG0 Z50\nM30", "G0 Z50")]
    [InlineData(Throat + ToSlot + "G1 X30 F60\nX60\nG0 Z50\nM30", "G0 Z50")]
    [InlineData(Throat + ToSlot + "G1 X60 F60\nG91 G0 Z50\nG90\nM30", "G91 G0 Z50")]
    // One lead out at the far side, and one back to where it came in.
    [InlineData(Throat + ToSlot + "G1 X115 F60\nG0 Z50\nM30")]
    [InlineData(Throat + ToSlot + "G1 X60 F60\nG0 X-15\nZ50\nM30")]
    [InlineData(Throat + ToSlot + "G1 X60 F60\nX-15\nG0 Z50\nM30")]
    // A pocket of 24 at the end gives the flutes room.
    [InlineData(Throat + "T4 M6\nG0 X60 Y30 Z40\nG1 Z-20 F50\nG0 Z40\n" + ToSlot + "G1 X60 F60\nG0 Z50\nM30")]
    // In the open: a groove along an edge, with the stock's top no higher than the flutes reach.
    [InlineData("T2 M6\nG0 X-15 Y30 Z40\nZ-8\nG1 X60 F60\nG0 Z50\nM30")]
    // Let go by a little, so that the flutes do not rub on the way out.
    [InlineData(Throat + ToSlot + "G1 X60 F60\nG91 G0 Z0.3\nG90 X-15\nZ50\nM30")]
    // Down from above, no deeper than its flutes are long and in a pocket: it comes out as it went in.
    [InlineData("T4 M6\nG0 X60 Y30 Z40\nG1 Z-20 F50\nG0 Z40\nT2 M6\nG0 X60 Y30\nG1 Z-20 F60\nG0 Z50\nM30")]
    // Nobody knows that it is narrower above its flutes.
    [InlineData(Throat + "T3 M6\nG0 X-15 Y30\nZ-20\nG1 X60 F60\nG0 Z50\nM30")]
    public void A_slot_mill_lifted_under_what_stands(string moves, params string[] blocks) => Assert.Equal(blocks, Lifts(moves));

    /// <summary>The flutes end 9 above the tip at Z-20: 11 stand above them.</summary>
    [Fact]
    public void It_says_how_much_stands_above() => Assert.Equal(
        "This rapid lifts tool 2, a slot mill, at X60 Y30 where stock stands above its flutes, at least 11 mm thick: lead it out of its slot first.",
        Assert.Single(Programs.Of("lifted-under-stock", Start + Throat + ToSlot + "G1 X60 F60\nG0 Z50\nM30", Block)).Message);

    /// <summary>A ring groove in a bore of 60: out, round, back to the middle and up.</summary>
    [Fact]
    public void A_groove_in_a_bore_is_left_from_its_middle() => Assert.Empty(Lifts(
        "T4 M6\nG0 X50 Y30 Z40\nG1 Z-20 F50\nX62\nG3 I-12\nG1 X50\nG0 Z40\nT2 M6\nG0 X50 Y30\nG1 Z-15 F60\nX66\nG3 I-16\nG1 X50\nG0 Z50\nM30"));

    [Theory]
    // No throat, and one not deep enough by 2; the T beside the throat by 4.
    [InlineData(ToSlot + "G1 X115 F60\nG0 Z50\nM30", "G1 X115 F60")]
    [InlineData("T1 M6\nG0 X-10 Y30 Z40\nZ-9\nG1 X110 F150\nG0 Z40\n" + ToSlot + "G1 X115 F60\nG0 Z50\nM30", "G1 X115 F60")]
    [InlineData(Throat + "T2 M6\nG0 X-15 Y34\nZ-20\nG1 X115 F60\nG0 Z50\nM30", "G1 X115 F60")]
    // As deep as the flutes end, and deeper.
    [InlineData("T1 M6\nG0 X-10 Y30 Z40\nZ-11\nG1 X110 F150\nG0 Z40\n" + ToSlot + "G1 X115 F60\nG0 Z50\nM30")]
    [InlineData(Throat + ToSlot + "G1 X115 F60\nG0 Z50\nM30")]
    // Under an edge: the neck of 5 to each side passes the stock by 1.
    [InlineData("T2 M6\nG0 X-15 Y-6 Z40\nZ-20\nG1 X115 F60\nG0 Z50\nM30")]
    [InlineData("T2 M6\nG0 X-15 Y-4 Z40\nZ-20\nG1 X115 F60\nG0 Z50\nM30", "G1 X115 F60")]
    public void The_neck_of_a_slot_mill_needs_room_above_its_flutes(string moves, params string[] blocks) => Assert.Equal(blocks, Necks(moves));

    /// <summary>The part that lifts begins behind 128 lines, another than that of the cut.</summary>
    [Fact]
    public void A_lift_far_behind_its_cut_in_the_text_is_found_too() =>
        Assert.Single(Lifts(Throat + ToSlot + "G1 X60 F60\n" + string.Concat(Enumerable.Repeat("(WAIT)\n", 300)) + "G0 Z50\nM30"));

    /// <summary>Beside the throat the T takes 21 - 12 wide, 9 high and 100 long; a ring groove in a bore of 48 takes π (26.5² - 24²) of 9. Neither takes what stands above it.</summary>
    [Theory]
    [InlineData(Throat + ToSlot + "G1 X115 F60\nG0 Z50\nM30", 9 * 9 * 100)]
    [InlineData("T4 M6\nG0 X50 Y30 Z40\nG1 Z-20 F50\nX62\nG3 I-12\nG1 X50\nG0 Z40\nT2 M6\nG0 X50 Y30\nG1 Z-15 F60\nX66\nG3 I-16\nG1 X50\nG0 Z50\nM30", Math.PI * (26.5 * 26.5 - 24 * 24) * 9)]
    public void What_a_slot_mill_takes_is_as_high_as_its_flutes(string moves, double removed)
    {
        var setup = SetupFile.Read("test.setup.json", Encoding.UTF8.GetBytes(Block));
        var run = ProgramRun.Create(SourceText.From(Start + moves), new Job(MachineProfile.IsoMill, setup.Setup), [], [], CancellationToken.None);
        var taken = StockLeft.Of(run)!.Cuts.ToArray().Where(cut => cut.Tool == 2).ToList();
        Assert.Equal(removed, taken.Sum(cut => cut.Removed), 0.02 * removed);
        Assert.Equal(9, taken.Max(cut => cut.Deepest), 0.001);
    }

    /// <summary>The field is open above what a slot mill leaves standing, and says by which tools; in the open, or at the top, nothing stands there.</summary>
    [Theory]
    [InlineData(Throat + ToSlot + "G1 X115 F60\nG0 Z50\nM30", 2)]
    [InlineData("T2 M6\nG0 X-15 Y30 Z40\nZ-8\nG1 X60 F60\nG0 Z50\nM30")]
    [InlineData("T4 M6\nG0 X-20 Y30 Z40\nZ-20\nG1 X120 F50\nG0 Z40\n" + ToSlot + "G1 X115 F60\nG0 Z50\nM30")]
    public void What_stands_above_the_flutes_is_not_held(string moves, params int[] tools)
    {
        var setup = SetupFile.Read("test.setup.json", Encoding.UTF8.GetBytes(Block));
        var run = ProgramRun.Create(SourceText.From(Start + moves), new Job(MachineProfile.IsoMill, setup.Setup), [], [], CancellationToken.None);
        Assert.Equal(tools, StockLeft.Of(run)!.OpenedAbove);
    }

    /// <summary>What is drawn as a contact is what is told as one.</summary>
    [Fact]
    public void A_lift_under_stock_is_a_contact()
    {
        var setup = SetupFile.Read("test.setup.json", Encoding.UTF8.GetBytes(Block));
        var run = ProgramRun.Create(SourceText.From(Start + Throat + ToSlot + "G1 X60 F60\nG0 Z50\nM30"), new Job(MachineProfile.IsoMill, setup.Setup), [], [], CancellationToken.None);
        var contact = Assert.Single(StockContact.Of(run, CancellationToken.None));
        Assert.Equal((11, ToolPart.Cutting, -20.0), (contact.Line, contact.Part, contact.Tip.Z));
        Assert.Equal(11, contact.Depth, 0.001);
    }

    /// <summary>A loop comes to a line again: the contacts stand as the machine comes to them.</summary>
    [Fact]
    public void Contacts_of_a_loop_are_in_the_order_of_the_run()
    {
        var setup = SetupFile.Read("test.setup.json", Encoding.UTF8.GetBytes(Block));
        const string loop = "T4 M6\nG0 X20 Y30 Z5\n#1=0\nWHILE [#1 LT 2] DO1\nG0 X[20+#1*20]\nZ-2\nZ5\nY10\nZ-3\nZ5\nY30\n#1=[#1+1]\nEND1\nG0 Z50\nM30";
        var run = ProgramRun.Create(SourceText.From(Start + loop), new Job(MachineProfile.IsoMill, setup.Setup), [], [], CancellationToken.None);
        Assert.Equal([(20, -2), (20, -3), (40, -2), (40, -3)], StockContact.Of(run, CancellationToken.None).Select(contact => ((int)contact.To.X, (int)contact.To.Z)));
    }

    /// <summary>The cut lies in one stretch of the text and the lift in another; whichever is edited, what is found is what a fresh look finds.</summary>
    [Theory]
    [InlineData("X60 F60", "X115 F60", 0)]
    [InlineData("Z50 (UP)", "Z60 (UP)", 1)]
    [InlineData("G0 Z50 (UP)", "G0 X-15\nZ50 (UP)", 0)]
    [InlineData("(LAST)", "(END)", 1)]
    public void After_an_edit_the_same_is_found(string old, string by, int lifts)
    {
        var setup = SetupFile.Read("test.setup.json", Encoding.UTF8.GetBytes(Block)).Setup;
        var program = Start + Throat + ToSlot + "G1 X60 F60\n" + string.Concat(Enumerable.Repeat("(WAIT)\n", 2000)) + "G0 Z50 (UP)\nM30 (LAST)\n";
        var text = SourceText.From(program);
        var at = program.IndexOf(old, StringComparison.Ordinal);
        var edited = ProgramAnalysis.Create(text, setup, MachineProfile.IsoMill).WithText(text.WithChange(at, at + old.Length, Encoding.UTF8.GetBytes(by)));
        Assert.Equal(ProgramAnalysis.Create(SourceText.From(edited.Text.ToBytes()), setup, MachineProfile.IsoMill).Findings.ToList(), edited.Findings.ToList());
        Assert.Equal(lifts, edited.Findings.Count(finding => finding.Name == "lifted-under-stock"));
    }
}
