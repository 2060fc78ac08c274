using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Loading;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.Rules;

/// <summary>Small programs run for one rule: what it says, and at which blocks.</summary>
static class Programs
{
    /// <summary>The findings of one rule.</summary>
    public static List<Finding> Of(string rule, string program, string? setup = null, string? machine = null, string readings = "", AnalysisOptions? options = null) =>
        [.. Analyse(program, setup, machine, readings, options).Findings.Where(finding => finding.Name == rule)];

    /// <summary>The lines, counted from 1, at which one rule speaks.</summary>
    public static int[] Lines(string rule, string program, string? setup = null, string? machine = null, string readings = "") =>
        [.. Of(rule, program, setup, machine, readings).Select(finding => finding.Line + 1)];

    public static ProgramAnalysis Analyse(string program, string? setup = null, string? machine = null, string readings = "", AnalysisOptions? options = null)
    {
        var profile = MachineProfile.IsoMill;
        if (machine is not null)
        {
            var read = MachineFile.Read("test.machine.json", Encoding.UTF8.GetBytes(machine), MachineProfile.FindBuiltIn);
            Assert.Empty(read.Problems);
            profile = read.Machine;
        }
        foreach (var reading in readings.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            profile = ReadingOption.Apply(profile, reading, out var error);
            Assert.Null(error);
        }
        return ProgramAnalysis.Create(SourceText.From(program), SetupOf(setup), profile with { IsChosen = true }, options);
    }

    static Setup SetupOf(string? json)
    {
        if (json is null)
            return Setup.None;
        var read = SetupFile.Read("test.setup.json", Encoding.UTF8.GetBytes(json));
        Assert.Empty(read.Problems);
        return read.Setup;
    }
}
