using NcLanguage.Checks;
using NcLanguage.Editing.Tests.Support;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Editing.Tests.FixAnswers;

/// <summary>Fixes on offer in a range of lines, and all safe ones at once.</summary>
public sealed class FixesTests
{
    const string Faulty =
        """
        T4 M6
        S1500 M3 F120
        G0 X10 Y10 Z50
        G99 G82 X10 Y10 Z-3 R2 P500
        X60
        M30
        """;

    [Fact]
    public void Fixes_of_a_range_are_those_of_its_findings()
    {
        var analysis = Editor.Analyse(Faulty, Editor.PlateSetup);
        var all = Fixes.In(analysis, 0, int.MaxValue);
        Assert.NotEmpty(all);
        Assert.All(all, fix => Assert.Contains(fix.Finding, analysis.Findings));
        for (var line = 0; line < analysis.Text.LineCount; line++)
        {
            var here = Fixes.In(analysis, line, line);
            Assert.Equal(all.Where(fix => fix.Finding.Line == line).Select(fix => (fix.Title, fix.Finding)), here.Select(fix => (fix.Title, fix.Finding)));
        }
        Assert.Empty(Fixes.In(analysis, 99, 200));
        Assert.Empty(Fixes.In(analysis, int.MinValue, -1));
        Assert.Empty(Fixes.In(analysis, 3, 2));
    }

    /// <summary>Taken again and again, all safe fixes come to an end, and none of them is left on offer.</summary>
    [Fact]
    public void All_safe_fixes_come_to_an_end()
    {
        var analysis = Editor.Analyse(Faulty, Editor.PlateSetup);
        var passes = 0;
        for (; Fixes.AllSafe(analysis) is { Length: > 0 } edits; passes++)
        {
            Assert.True(passes < 10, analysis.Text.ToString());
            analysis = analysis.WithText(TextEdits.Apply(analysis.Text, edits));
        }
        Assert.NotEqual(0, passes);
        Assert.DoesNotContain(Fixes.In(analysis, 0, int.MaxValue), fix => fix.Safety == FixSafety.Safe);
    }

    /// <summary>A fix is taken whole or not at all: the edits are those of whole fixes.</summary>
    [Fact]
    public void Fixes_are_taken_whole()
    {
        var analysis = Editor.Analyse(Faulty, Editor.PlateSetup);
        var taken = Fixes.AllSafe(analysis);
        var whole = Fixes.In(analysis, 0, int.MaxValue).Where(fix => fix.Safety == FixSafety.Safe && fix.Edits.All(edit => taken.Contains(edit)));
        Assert.All(taken, edit => Assert.Contains(whole, fix => fix.Edits.Contains(edit)));
        for (var i = 1; i < taken.Length; i++)
            Assert.True(taken[i].Line > taken[i - 1].Line || taken[i].StartColumn >= taken[i - 1].EndColumn);
    }

    [Fact]
    public void A_sound_program_has_none() =>
        Assert.Empty(Fixes.AllSafe(Editor.Analyse("G21 G90 G17 G54\nM30\n", machine: MachineProfile.IsoMill with { IsChosen = true })));
}
