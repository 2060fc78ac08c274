using System.CommandLine;
using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Cli.Common;
using NcLanguage.Cli.Files;
using NcLanguage.Reports.Drawing;
using NcLanguage.Reports.MotionView;

namespace NcLanguage.Cli.View;

/// <summary><c>view FILE -o OUT.svg|OUT.html</c>: the motion of a program as a drawing or as a page.</summary>
static class ViewCommand
{
    public static Command Create()
    {
        var file = new Argument<string>("FILE") { Description = "A program, or - for standard input." };
        var output = new Option<string>("-o", "--output") { HelpName = "OUT.html|OUT.svg", Description = "What to write: a page to step through, or a drawing.", Required = true };
        var projection = ChoiceOption.Create("--projection", "How the views are arranged.", "first", "third");
        var failOn = FailOn.Create("never");
        var choices = new JobChoices();
        var command = new Command("view", "Draws the motion of a program: plan, front and side, with clamps, stock, holes and contacts.") { file, output, projection, failOn };
        choices.AddTo(command);
        command.SetAction((parse, cancel) =>
        {
            var analysis = choices.Analysis(parse);
            var target = parse.GetValue(output)!;
            var write = WriterFor(target);
            var program = LoadedProgram.Load(parse.GetValue(file)!, choices.Options(parse), analysis);
            var recording = MotionRecording.Create(program.File.Path, program.File.Text, program.Job, cancel);
            var method = parse.GetValue(projection) == "third" ? ProjectionMethod.ThirdAngle : ProjectionMethod.FirstAngle;
            WrittenFile.PutBeside(program.File.Path, target, write(recording, method));
            Caution.TellWritten(target, recording.ContactCount, "contact");
            return Task.FromResult(program.ExitCodeFor(parse.GetValue(failOn)!, analysis, cancel));
        });
        return command;
    }

    static Func<MotionRecording, ProjectionMethod, byte[]> WriterFor(string target) => Path.GetExtension(target).ToLowerInvariant() switch
    {
        ".svg" => (recording, method) => Encoding.UTF8.GetBytes(MotionDrawing.Of(recording, method)),
        ".html" or ".htm" => (recording, method) => MotionPage.Write(recording, method),
        _ => throw new CannotRunException($"{(target.Length == 0 ? "the name behind -o" : target)} must end in .html or .svg"),
    };
}
