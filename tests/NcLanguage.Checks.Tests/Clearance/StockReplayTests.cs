using System.Text;
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
}
