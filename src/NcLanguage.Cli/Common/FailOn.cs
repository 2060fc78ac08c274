using System.CommandLine;
using NcLanguage.Checks;
using NcLanguage.Reports.Findings;

namespace NcLanguage.Cli.Common;

/// <summary><c>--fail-on</c>: the least severity that makes the exit code 1.</summary>
static class FailOn
{
    static readonly string[] Choices = ["error", "warning", "note", "never"];

    /// <param name="usual">What is in force where the option is not given.</param>
    public static Option<string> Create(string usual = "error") => ChoiceOption.Create(
        "--fail-on", "The least severity of a finding that makes the exit code 1.", [usual, .. Choices.Where(choice => choice != usual)]);

    /// <summary>The exit code for findings of these severities.</summary>
    public static int ExitCodeFor(string failOn, IEnumerable<Severity> found) =>
        Least(failOn) is { } least && found.Any(severity => severity <= least) ? ExitCode.Findings : ExitCode.Clean;

    /// <summary>The exit code for what a check found.</summary>
    public static int ExitCodeFor(string failOn, CheckTotals found) =>
        Least(failOn) is { } least && found.Has(least) ? ExitCode.Findings : ExitCode.Clean;

    static Severity? Least(string failOn) => failOn switch
    {
        "error" => Severity.Error,
        "warning" => Severity.Warning,
        "note" => Severity.Note,
        _ => null,
    };
}
