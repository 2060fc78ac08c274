using System.Text;
using CsCheck;
using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.Clearance;

/// <summary>How much of the stock is followed again after an edit, counted in cuts.</summary>
public sealed class StockReplayTests
{
    const int Cuts = 6000;

    static readonly Setup Plate = new()
    {
        IsPresent = true,
        Stock = new Box3(new Point3(0, 0, -20), new Point3(300, 200, 0)),
        Tools = [new Tool { Number = 1, Kind = ToolKind.EndMill, Diameter = 10 }],
    };

    static SourceText Program()
    {
        var text = new StringBuilder("G21 G90 G17 G54 (first)\nT1 M6\nS3000 M3\nG0 X-10 Y5 Z5\nZ-2\nG1 F600\n");
        for (var i = 0; i < Cuts; i++)
            text.Append($"X{i * 7 % 290} Y{i * 11 % 190} Z{-2 - i * 5 % 17}.\n");
        return SourceText.From(text + "G0 Z50\nG0 X20 Y20\nZ-30 (last)\nM30\n");
    }

    static SourceText Replaced(SourceText text, string old, string by)
    {
        var at = Encoding.UTF8.GetString(text.ToBytes()).IndexOf(old, StringComparison.Ordinal);
        return text.WithChange(at, at + old.Length, Encoding.UTF8.GetBytes(by));
    }

    static (ProgramAnalysis Analysis, int Followed) Edited(ProgramAnalysis analysis, string old, string by)
    {
        var edited = analysis.WithText(Replaced(analysis.Text, old, by));
        var fresh = ProgramAnalysis.Create(SourceText.From(edited.Text.ToBytes()), Plate, MachineProfile.IsoMill);
        Assert.Equal(fresh.Findings.ToList(), edited.Findings.ToList());
        return (edited, edited.Main.CutsFollowed);
    }

    [Fact]
    public void An_edit_follows_no_more_cuts_than_lie_behind_it()
    {
        var analysis = ProgramAnalysis.Create(Program(), Plate, MachineProfile.IsoMill);
        Assert.Equal(Cuts, analysis.Main.CutsFollowed);
        // At the end: from the last kept picture of the stock, an eighth of the program at most.
        var (end, atEnd) = Edited(analysis, "(last)", "X25");
        Assert.InRange(atEnd, 0, Cuts / 8 + 300);
        Assert.InRange(Edited(end, "M30", "G0 X40\nM30").Followed, 0, Cuts / 8 + 300);
        // Where nothing moves otherwise nothing is followed, wherever it stands.
        Assert.Equal(0, Edited(end, "(first)", "(once)").Followed);
        Assert.Equal(0, Edited(end, "F600", "F650").Followed);
        // At the beginning: all.
        Assert.Equal(Cuts, Edited(end, "X7 Y11", "X8 Y11").Followed);
        var middle = $"X{3000 * 7 % 290} Y{3000 * 11 % 190} Z{-2 - 3000 * 5 % 17}.";
        Assert.InRange(Edited(end, middle, middle + " (here)\nY20").Followed, Cuts / 4, Cuts);
    }

    static string Drilled(int holes, string drilling = "G99 G81 X10 Y10 Z-12 R2 F100")
    {
        var text = new StringBuilder($"G21 G90 G17 G54 (first)\nT1 M6\nS3000 M3\nG0 X10 Y10 Z50\n{drilling}\n");
        for (var i = 0; i < holes; i++)
            text.Append($"X{i * 7 % 290} Y{i * 11 % 190}\n");
        return text + "G80\nG0 Z50\n(last)\nM30\n";
    }

    [Fact]
    public void What_asks_nothing_of_the_stock_is_not_followed()
    {
        var drilled = ProgramAnalysis.Create(SourceText.From(Drilled(2000)), Plate, MachineProfile.IsoMill);
        Assert.Equal(0, drilled.Main.CutsFollowed);
        // A low rapid asks what all cuts before it have left; what lies behind it asks nothing.
        var (low, followed) = Edited(drilled, "(last)", "G0 X5 Y5\nZ-15");
        Assert.Equal(2001, followed);
        Assert.Contains(low.Findings.ToList(), finding => finding.Rule.Info.Id == "NC4005");
        Assert.Equal(0, Edited(low, "Z-15", "Z15").Followed);
        var first = ProgramAnalysis.Create(SourceText.From(Drilled(2000).Replace("(first)", "G0 X5 Y5 Z-3", StringComparison.Ordinal)), Plate, MachineProfile.IsoMill);
        Assert.InRange(first.Main.CutsFollowed, 0, 200);
    }

    [Fact]
    public void A_drill_that_comes_to_travel_is_asked_for_all_its_cuts()
    {
        var drilled = ProgramAnalysis.Create(SourceText.From(Drilled(2000)), Plate, MachineProfile.IsoMill);
        var (mills, followed) = Edited(drilled, "(last)", "G0 X-50 Y-50\nZ-3\nG1 X-90 F1\nG0 Z50");
        Assert.Equal(2002, followed);
        Assert.Contains(mills.Findings.ToList(), finding => finding.Rule.Info.Name == "cut-in-air" && !finding.Message.Contains("cuts nothing at all", StringComparison.Ordinal));
    }

    /// <summary>Whether a way down was one in air is asked of a tool that travels later on, though nothing before it has changed.</summary>
    [Fact]
    public void Ways_down_are_asked_for_once_their_tool_travels()
    {
        var blank = string.Concat(Enumerable.Repeat("\n", 600));
        var program = $"G21 G90 G17 G54\nT1 M6\nS3000 M3\nG0 X-50 Y-50 Z5\nG1 Z-3 F100\nG0 X50 Y50\nG0 Z50\n{blank}G0 X-50 Y-50 Z-3\n(last)\nG0 Z50\n{blank}G0 Z-5 X50 Y50\nM30\n";
        var down = ProgramAnalysis.Create(SourceText.From(program), Plate, MachineProfile.IsoMill);
        Assert.Equal(1, down.Main.CutsFollowed);
        var (travels, _) = Edited(down, "(last)", "G1 X-90 F20");
        Assert.Contains(travels.Findings.ToList(), finding => finding.Message.Contains("cuts nothing at all", StringComparison.Ordinal));
    }

    /// <summary>Behind the last cut that is followed nobody knows whether the tool meets anything.</summary>
    [Theory]
    [InlineData(49_000, true)]
    [InlineData(51_000, false)]
    public void Of_a_tool_that_goes_on_cutting_beyond_what_is_followed_nothing_is_said_of_all_its_cuts(int feeds, bool all)
    {
        var text = new StringBuilder("G21 G90 G17 G54\nT1 M6\nS3000 M3\nG0 X-50 Y-50 Z-3\nG1 F600\n");
        for (var i = 0; i < feeds; i++)
            text.Append(i % 2 == 0 ? "X-60\n" : "X-50\n");
        var analysis = ProgramAnalysis.Create(SourceText.From(text + "G0 Z50\nM30\n"), Plate, MachineProfile.IsoMill);
        var told = Assert.Single(analysis.Findings.ToList(), finding => finding.Rule.Info.Name == "cut-in-air");
        Assert.Equal(all, told.Message.Contains("cuts nothing at all", StringComparison.Ordinal));
    }

    static readonly Setup Bodies = Plate with
    {
        Tools =
        [
            new Tool { Number = 1, Kind = ToolKind.EndMill, Diameter = 10, FluteLength = 10, Length = 70, HolderGauge = 50, HolderDiameter = 50 },
            new Tool { Number = 2, Kind = ToolKind.Drill, Diameter = 8, PointAngle = 118, FluteLength = 12, ShankDiameter = 9, Length = 60, HolderGauge = 35, HolderDiameter = 40 },
        ],
    };

    /// <summary>Pieces of a program, some of more than a chunk of the text.</summary>
    static readonly Gen<string> Piece = Gen.OneOf(
        Gen.Const("T1 M6\nG0 Z50\n"), Gen.Const("T2 M6\nG0 Z50\n"), Gen.Const("M0\n"),
        Gen.Select(Gen.Int[1, 300], Gen.Int[1, 30], (holes, depth) => string.Concat(Enumerable.Range(0, holes).Select(
            i => i == 0 ? $"G99 G81 X9 Y9 Z-{depth} R2 F900\n" : $"X{i * 7 % 290} Y{i * 11 % 190}\n")) + "G80\n"),
        Gen.Select(Gen.Int[-20, 320], Gen.Int[-20, 220], Gen.Int[-9, 3], (x, y, z) => $"G0 X{x} Y{y}\nZ{z}\nG1 X{y} F20\nY{x}\nG0 Z50\n"),
        Gen.Select(Gen.Int[-20, 320], Gen.Int[-9, 3], (x, z) => $"G0 X{x}\nG0 Z{z}\nX{x / 2}\nZ50\n"));

    [Fact]
    public void Chance_edits_find_in_the_stock_what_a_fresh_look_finds() =>
        Gen.Select(Piece.Array[1, 8], Gen.Select(Gen.Double[0, 1], Gen.Bool, Piece).Array[1, 6]).Sample((start, edits) =>
        {
            var pieces = start.ToList();
            string Text() => "G21 G90 G17 G54\nT1 M6\nS3000 M3\n" + string.Concat(pieces) + "M30\n";
            var analysis = ProgramAnalysis.Create(SourceText.From(Text()), Bodies, MachineProfile.IsoMill);
            foreach (var (where, replaces, piece) in edits)
            {
                var at = (int)(where * (pieces.Count - 1));
                var (from, old) = (Text().IndexOf("M3\n", StringComparison.Ordinal) + 3 + pieces.Take(at).Sum(before => before.Length), replaces ? pieces[at].Length : 0);
                if (replaces)
                    pieces[at] = piece;
                else
                    pieces.Insert(at, piece);
                analysis = analysis.WithText(analysis.Text.WithChange(from, from + old, Encoding.UTF8.GetBytes(piece)));
                Assert.Equal(Text(), Encoding.UTF8.GetString(analysis.Text.ToBytes()));
                Assert.Equal(ProgramAnalysis.Create(SourceText.From(Text()), Bodies, MachineProfile.IsoMill).Findings.ToList(), analysis.Findings.ToList());
            }
        }, iter: 60);
}
