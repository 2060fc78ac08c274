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
        var file = new Argument<string?>("FILE") { Description = "A program, or - for standard input.", Arity = ArgumentArity.ZeroOrOne };
        var import = new Option<string?>("--import")
        {
            HelpName = "TABLE.csv",
            Description = "Reads the drawing's holes from a table with columns x, y, diameter, depth, thread, and prints them as the setup's \"holes\".",
        };
        var output = new Option<string?>("--output", "-o") { HelpName = "SETUP", Description = "With --import: the setup file to write the holes into." };
        var units = ChoiceOption.Create("--units", "With --import: the unit of columns that do not name theirs; without it that of the setup written into.", "mm", "inch");
        var format = ChoiceOption.Create("--format", "How to tell it.", "text", "json", "csv");
        var failOn = FailOn.Create("never");
        var choices = new JobChoices();
        var command = new Command("holes", "Lists the holes a program drills; with holes of a drawing in the setup, side by side with them.") { file, format, failOn, import, output, units };
        choices.AddTo(command);
        command.Validators.Add(result =>
        {
            var hasFile = result.GetResult(file) is { Tokens.Count: > 0 };
            if (hasFile == result.GetResult(import) is not null)
                result.AddError(hasFile ? "holes takes a program or --import TABLE.csv, not both" : "holes needs a program, or --import TABLE.csv");
            else if (hasFile && result.GetResult(output) is not null)
                result.AddError("-o goes with --import TABLE.csv");
        });
        command.SetAction((parse, cancel) =>
        {
            if (parse.GetValue(import) is { } table)
                return Task.FromResult(HoleImport.Run(table, parse.GetValue(output), parse.GetResult(units) is { Implicit: false } ? parse.GetValue(units) == "inch" : null));
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
            new HolesText(screen, report).Write();
    }
}
