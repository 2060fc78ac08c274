using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.Cycles;

/// <summary>Runs a few blocks of a cycle in a program that is sound around them.</summary>
static class CycleJob
{
    /// <summary>Lines before the first of the blocks.</summary>
    public const int Before = 5;

    public static Setup Plate(Tool? tool = null) => new()
    {
        IsPresent = true,
        Stock = new Box3(new(0, 0, -40), new(80, 50, 0)),
        Tools = tool is null ? [] : [tool],
    };

    public static ProgramAnalysis Run(string blocks, Setup? setup = null, Readings? readings = null, bool chosen = true) =>
        ProgramAnalysis.Create(
            SourceText.From("G21 G90 G17 G54\nT3 M6\nS1000 M3\nG0 X10 Y10 Z40\nM8\n" + blocks.ReplaceLineEndings("\n")), setup ?? Setup.None,
            MachineProfile.IsoMill with { IsChosen = chosen, Readings = readings ?? new Readings() });

    /// <summary>The findings of one name, by the index of the block.</summary>
    public static List<(int Block, Severity Severity)> Find(string name, string blocks, Setup? setup = null, Readings? readings = null, bool chosen = true) =>
        [.. Run(blocks, setup, readings, chosen).Findings.Where(f => f.Name == name).Select(f => (f.Line - Before, f.Severity))];

    /// <summary>The blocks after the first fix of the first finding of that name; null where none is offered.</summary>
    public static string? Fix(string name, string blocks, Setup? setup = null, Readings? readings = null)
    {
        var analysis = Run(blocks, setup, readings);
        var fix = analysis.Findings.Where(f => f.Name == name).SelectMany(f => analysis.FixesOf(f)).FirstOrDefault();
        return fix is null ? null : string.Join("\n", TextEdits.Apply(analysis.Text, fix.Edits).ToString().Split('\n')[Before..]);
    }
}
