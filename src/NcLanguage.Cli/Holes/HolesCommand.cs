using System.CommandLine;
using NcLanguage.Checks.Analysis;
using NcLanguage.Cli.Common;
using NcLanguage.Reports.Holes;

namespace NcLanguage.Cli.Holes;

/// <summary><c>holes FILE</c>: the hole table, beside the drawing's holes where the setup lists them.</summary>
static class HolesCommand
{
    public static Command Create()
    {
        var file = new Argument<string>("FILE") { Description = "A program, or - for standard input." };
        var format = ChoiceOption.Create("--format", "How to tell it.", "text", "json", "csv");
        var failOn = FailOn.Create("never");
        var choices = new JobChoices();
        var command = new Command("holes", "Lists the holes a program drills; with holes of a drawing in the setup, side by side with them.") { file, format, failOn };
        choices.AddTo(command);
        command.SetAction((parse, cancel) =>
        {
            var analysis = choices.Analysis(parse);
            var program = LoadedProgram.Load(parse.GetValue(file)!, choices.Options(parse), analysis);
            Show(HoleReport.Of(program.File.Path, ProgramRun.Create(program.File.Text, program.Job, [], [], cancel)), parse.GetValue(format)!);
            return Task.FromResult(program.ExitCodeFor(parse.GetValue(failOn)!, analysis, cancel));
        });
        return command;
    }

    static void Show(HoleReport report, string format)
    {
        if (format == "json")
        {
            JsonOutput.Write(json => HoleJson.Write(report, json));
            return;
        }
        using var screen = Screen.Open();
        if (format == "csv")
            HoleCsv.Write(report, screen.Writer);
        else
            new HolesText(screen).Write(report);
    }
}
