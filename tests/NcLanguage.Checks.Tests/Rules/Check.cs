using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.Rules;

/// <summary>Runs a few blocks and tells the findings by name and line.</summary>
static class Check
{
    public static ProgramAnalysis Analyse(string program, string readings = "", Setup? setup = null, MachineProfile? machine = null)
    {
        machine ??= MachineProfile.IsoMill with { IsChosen = true };
        foreach (var reading in readings.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            machine = ReadingOption.Apply(machine, reading, out var error);
            Assert.Null(error);
        }
        return ProgramAnalysis.Create(SourceText.From(program.ReplaceLineEndings("\n")), setup ?? Setup.None, machine);
    }

    /// <summary>The findings of one rule.</summary>
    public static List<Finding> Of(string rule, string program, string readings = "", Setup? setup = null, MachineProfile? machine = null) =>
        [.. Analyse(program, readings, setup, machine).Findings.Where(finding => finding.Name == rule)];

    /// <summary>The names of all findings of a line (counted from 1).</summary>
    public static List<string> NamesOn(int line, string program, string readings = "", Setup? setup = null, MachineProfile? machine = null) =>
        [.. Analyse(program, readings, setup, machine).Findings.Where(finding => finding.Line == line - 1).Select(finding => finding.Name)];

    /// <summary>The program after the first fix of a rule's first finding.</summary>
    public static string Fixed(string rule, string program, string readings = "", Setup? setup = null, MachineProfile? machine = null)
    {
        var analysis = Analyse(program, readings, setup, machine);
        var finding = analysis.Findings.First(found => found.Name == rule);
        return TextEdits.Apply(analysis.Text, analysis.FixesOf(finding).First().Edits).ToString();
    }
}
