using System.CommandLine;
using NcLanguage.Checks;
using NcLanguage.Cli.Common;
using NcLanguage.Cli.Files;
using NcLanguage.Reports.Findings;

namespace NcLanguage.Cli.Check;

/// <summary><c>check PATH…</c>: the findings of programs.</summary>
static class CheckCommand
{
    public static Command Create()
    {
        var paths = new Argument<string[]>("PATH")
        {
            Arity = ArgumentArity.OneOrMore,
            Description = "Programs, folders with programs, or - for standard input.",
        };
        var format = ChoiceOption.Create("--format", "How to tell it.", "text", "json", "sarif", "github");
        var failOn = ChoiceOption.Create("--fail-on", "The least severity that makes the exit code 1.", "error", "warning", "note", "never");
        var fix = new Option<bool>("--fix") { Description = "Write the fixes that are certain into the programs, then tell what is left." };
        var preview = new Option<bool>("--preview") { Description = "With --fix: show the changed blocks and write nothing." };
        var choices = new JobChoices();
        var command = new Command("check", "Tells what would go wrong at the machine: the findings of programs, or of all programs under folders.")
        {
            paths, format, failOn, fix, preview,
        };
        choices.AddTo(command);
        command.SetAction((parse, cancel) => Task.FromResult(Run(
            new CheckRun
            {
                Options = choices.Options(parse),
                Analysis = choices.Analysis(parse),
                Fix = parse.GetValue(fix) || parse.GetValue(preview),
                Write = !parse.GetValue(preview),
                Cancel = cancel,
            },
            parse.GetValue(paths)!, parse.GetValue(format)!, parse.GetValue(failOn)!)));
        return command;
    }

    static int Run(CheckRun run, string[] paths, string format, string failOn)
    {
        if (run.Fix && run.Write && paths.Contains(ProgramFile.StandardInput))
            throw new CannotRunException("--fix needs a file to write to; with standard input use --preview");
        var report = run.Check(ProgramSearch.Find(paths));
        switch (format)
        {
            case "json":
                JsonOutput.Write(json => CheckJson.Write(report, json));
                break;
            case "sarif":
                JsonOutput.Write(json => CheckSarif.Write(report, Application.Version, json));
                break;
            case "github":
                using (var screen = Screen.Open())
                    CheckAnnotations.Write(report, screen.Writer);
                break;
            default:
                using (var screen = Screen.Open())
                    new CheckText(screen).Write(report);
                break;
        }
        if (!report.NotRead.IsEmpty)
            throw new CannotRunException("not checked: " + string.Join("; ", report.NotRead.Select(unread => unread.Reason)));
        return IsReached(report, failOn) ? ExitCode.Findings : ExitCode.Clean;
    }

    static bool IsReached(CheckReport report, string failOn) => failOn switch
    {
        "error" => report.Errors > 0,
        "warning" => report.Errors + report.Warnings > 0,
        "note" => report.Errors + report.Warnings + report.Notes > 0,
        _ => false,
    };
}
