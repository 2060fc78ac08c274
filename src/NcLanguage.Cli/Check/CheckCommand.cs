using System.CommandLine;
using NcLanguage.Checks;
using NcLanguage.Cli.Common;
using NcLanguage.Cli.Files;
using NcLanguage.Control.Flow;
using NcLanguage.Machine.Files;
using NcLanguage.Reports.Findings;

namespace NcLanguage.Cli.Check;

/// <summary><c>check PATH…</c>: the findings of programs.</summary>
static class CheckCommand
{
    /// <summary>Files that could not be read are named on standard error up to that many; JSON and SARIF tell all.</summary>
    const int MostReasons = 20;

    public static Command Create()
    {
        var paths = new Argument<string[]>("PATH")
        {
            Arity = ArgumentArity.OneOrMore,
            Description = $"Programs, folders with programs ({string.Join(' ', SiblingPrograms.Extensions)}), or - for standard input; setup, machine and cutting files are looked through for mistakes.",
        };
        var format = ChoiceOption.Create("--format", "How to tell it.", "text", "json", "sarif", "github");
        var failOn = FailOn.Create();
        var fix = new Option<bool>("--fix") { Description = "Write the fixes that are certain into the programs, then tell what is left." };
        var preview = new Option<bool>("--preview") { Description = "Show the blocks that --fix would change, and write nothing." };
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
                Folders = JobFence.Named(parse.GetValue(paths)!.Where(path => Directory.Exists(path) || JobFileName.IsJobFile(path))),
                Fixes = parse.GetValue(preview) ? FixUse.Preview : parse.GetValue(fix) ? FixUse.Write : FixUse.None,
                Cancel = cancel,
            },
            parse.GetValue(paths)!, parse.GetValue(format)!, parse.GetValue(failOn)!)));
        return command;
    }

    /// <summary>Checks a folder as <c>check FOLDER</c> does.</summary>
    public static int Run(string folder, CancellationToken cancel) =>
        Run(new CheckRun { Options = JobOptions.None, Analysis = JobChoices.Usual, Folders = JobFence.Named([folder]), Cancel = cancel }, [folder], "text", "error");

    static int Run(CheckRun run, string[] paths, string format, string failOn)
    {
        if (run.Fixes == FixUse.Write && paths.Contains(ProgramFile.StandardInput))
            throw new CannotRunException("--fix needs a file to write to; with standard input use --preview");
        var search = ProgramSearch.Find(paths);
        var totals = Tell(run, search, format);
        if (totals.LeftOut is { } leftOut)
            throw new StoppedException($"stopped: {search.Paths.Length - leftOut:N0} of {search.Paths.Length:N0} programs were checked");
        if (totals.NotRead.Count > 0)
            throw new CannotRunException((totals.Programs > 0 ? "not checked: " : "") + Reasons(totals.NotRead));
        return FailOn.ExitCodeFor(failOn, totals);
    }

    static CheckTotals Tell(CheckRun run, ProgramSearch search, string format)
    {
        CheckTotals totals = null!;
        switch (format)
        {
            case "json":
                JsonOutput.Write(json => totals = run.Check(search, new CheckJson(json)));
                break;
            case "sarif":
                JsonOutput.Write(json => totals = run.Check(search, new CheckSarif(Application.Version, json)));
                break;
            default:
                using (var screen = Screen.Open())
                    totals = run.Check(search, format == "github" ? new CheckAnnotations(screen.Writer) : new CheckText(screen, run.Fixes));
                break;
        }
        return totals;
    }

    static string Reasons(List<UnreadFile> unread)
    {
        var told = string.Join("; ", unread.Take(MostReasons).Select(file => file.Reason));
        return unread.Count > MostReasons ? $"{told}; and {unread.Count - MostReasons:N0} more" : told;
    }
}
