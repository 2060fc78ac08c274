using System.CommandLine;
using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Files;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Cli.Common;

/// <summary>The options that choose setup, machine and way of reading: the same for every command that runs a program.</summary>
sealed class JobChoices
{
    readonly Option<string?> _setup = new("--setup") { HelpName = "FILE", Description = "Setup file to use instead of the one beside the program." };

    readonly Option<string?> _machine = new("--machine")
    {
        HelpName = "FILE|PROFILE",
        Description = "Machine file, or built-in profile (iso-mill, training-mill), to use instead of what the setup names.",
    };

    readonly Option<string[]> _readings = new("--reading")
    {
        HelpName = "NAME=CHOICE",
        Description = "Reads the program in one way, such as dwell=seconds; may be given several times. 'explain' lists them.",
        DefaultValueFactory = _ => [],
    };

    readonly Option<bool> _portable = new("--portable") { Description = "Also tell where other readings would change the outcome, though a machine is chosen." };

    readonly Option<bool> _skip = new("--skip") { Description = "Pass over the blocks that begin with /." };

    /// <summary>What is asked for where no option is given.</summary>
    public static AnalysisOptions Usual { get; } = new(MentionMissingSetup: true);

    public JobChoices()
    {
        _machine.CompletionSources.Add([.. MachineProfile.BuiltIns.Select(profile => profile.Name)]);
        _readings.CompletionSources.Add([.. ReadingTable.All.SelectMany(reading => reading.ChoiceNames.Select(choice => $"{reading.Name}={choice}"))]);
    }

    public void AddTo(Command command)
    {
        command.Add(_setup);
        command.Add(_machine);
        command.Add(_readings);
        command.Add(_portable);
        command.Add(_skip);
    }

    public JobOptions Options(ParseResult parse) => new()
    {
        SetupPath = parse.GetValue(_setup),
        Machine = parse.GetValue(_machine),
        Readings = [.. parse.GetValue(_readings) ?? []],
    };

    public AnalysisOptions Analysis(ParseResult parse) => Usual with { Portable = parse.GetValue(_portable), Skip = parse.GetValue(_skip) };
}
