using System.CommandLine;
using NcLanguage.Cli.Common;
using NcLanguage.Reports.Comparison;

namespace NcLanguage.Cli.Compare;

/// <summary><c>compare A B</c>: do two programs make the machine do the same?</summary>
static class CompareCommand
{
    public static Command Create()
    {
        var first = new Argument<string>("A") { Description = "A program." };
        var second = new Argument<string>("B") { Description = "The program to hold against it." };
        var format = ChoiceOption.Create("--format", "How to tell it.", "text", "json");
        var choices = new JobChoices();
        var command = new Command(
            "compare", "Holds two programs against each other move for move, whatever their layout, numbering and style; exit code 1 where they differ.")
        {
            first, second, format,
        };
        choices.AddTo(command);
        command.SetAction((parse, cancel) =>
        {
            var analysis = choices.Analysis(parse);
            var (a, b) = (Load(parse.GetValue(first)!), Load(parse.GetValue(second)!));
            var report = ComparisonReport.Of(a, b, cancel);
            cancel.ThrowIfCancellationRequested();
            Show(report, parse.GetValue(format)!, cancel);
            return Task.FromResult(report.IsSame ? ExitCode.Clean : ExitCode.Findings);

            ComparedProgram Load(string path)
            {
                var program = LoadedProgram.Load(path, choices.Options(parse), analysis);
                return new ComparedProgram(program.File.Path, program.File.Text, program.Job);
            }
        });
        return command;
    }

    static void Show(ComparisonReport report, string format, CancellationToken cancel)
    {
        if (format == "json")
        {
            JsonOutput.Write(json => ComparisonJson.Write(report, json, cancel));
            return;
        }
        using var screen = Screen.Open();
        new CompareText(screen, report).Write();
    }
}
