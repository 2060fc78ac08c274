using System.CommandLine;
using NcLanguage.Checks.Analysis;
using NcLanguage.Cli.Common;
using NcLanguage.Reports.Trace;

namespace NcLanguage.Cli.Trace;

/// <summary><c>trace FILE</c>: every step and move, as the control would run it.</summary>
static class TraceCommand
{
    public static Command Create()
    {
        var file = new Argument<string>("FILE") { Description = "A program, or - for standard input." };
        var format = ChoiceOption.Create("--format", "How to tell it.", "text", "json");
        var failOn = FailOn.Create("never");
        var choices = new JobChoices();
        var command = new Command("trace", "Shows every block and every move of a program, as the control would run it.") { file, format, failOn };
        choices.AddTo(command);
        command.SetAction((parse, cancel) =>
        {
            var analysis = choices.Analysis(parse);
            var program = LoadedProgram.Load(parse.GetValue(file)!, choices.Options(parse), analysis);
            Show(program, parse.GetValue(format)!, cancel);
            return Task.FromResult(program.ExitCodeFor(parse.GetValue(failOn)!, analysis, cancel));
        });
        return command;
    }

    static void Show(LoadedProgram program, string format, CancellationToken cancel)
    {
        if (format == "json")
        {
            JsonOutput.Write(json => TraceJson.Write(program.File.Path, program.File.Text, program.Job, json, cancel));
            return;
        }
        using var screen = Screen.Open();
        new TraceText(screen, program).Write(cancel);
    }
}
