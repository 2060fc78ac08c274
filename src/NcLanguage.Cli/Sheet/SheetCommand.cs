using System.CommandLine;
using System.Text;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Cli.Common;
using NcLanguage.Cli.Files;
using NcLanguage.Reports.Sheet;

namespace NcLanguage.Cli.Sheet;

/// <summary><c>sheet FILE -o OUT.html</c>: the setup sheet to print.</summary>
static class SheetCommand
{
    public static Command Create()
    {
        var file = new Argument<string>("FILE") { Description = "A program, or - for standard input." };
        var output = new Option<string>("--output", "-o") { HelpName = "OUT.html", Description = "The page to write; one that is there is written over.", Required = true };
        var failOn = FailOn.Create("never");
        var choices = new JobChoices();
        var command = new Command("sheet", "Writes the setup sheet of a program: one page to print, with what the setter needs at the machine.") { file, output, failOn };
        choices.AddTo(command);
        command.SetAction((parse, cancel) =>
        {
            var target = parse.GetValue(output)!;
            if (!IsPage(target))
                throw new CannotRunException($"{(target.Length == 0 ? "an empty name" : target)} is no name of a page: it has to end in .html");
            var program = ProgramFile.Read(parse.GetValue(file)!);
            var job = JobResolver.Resolve(program, choices.Options(parse));
            var analysis = ProgramAnalysis.Create(
                program.Text, job.Setup, job.Machine, choices.Analysis(parse) with { Programs = JobResolver.ProgramsBeside(program) }, cancel);
            var page = SetupSheet.Html(new SheetInput(program.Path, analysis, job.Problems, TimeProvider.System.GetLocalNow()), cancel);
            WrittenFile.PutBeside(program.Path, target, Encoding.UTF8.GetBytes(page));
            Caution.TellWritten(target, analysis.Findings.Count(finding => finding.Severity == Severity.Error), "error");
            return Task.FromResult(FailOn.ExitCodeFor(parse.GetValue(failOn)!, analysis.Findings.Select(finding => finding.Severity)));
        });
        return command;
    }

    static bool IsPage(string path) =>
        path.EndsWith(".html", StringComparison.OrdinalIgnoreCase) || path.EndsWith(".htm", StringComparison.OrdinalIgnoreCase);
}
