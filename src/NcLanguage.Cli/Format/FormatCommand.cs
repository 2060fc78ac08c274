using System.CommandLine;
using NcLanguage.Cli.Common;
using NcLanguage.Editing.Formatting;

namespace NcLanguage.Cli.Format;

/// <summary><c>format FILE…</c>: tidies programs, and proves that they move as before.</summary>
static class FormatCommand
{
    const int UsualStep = 10;
    const string Renumber = "--renumber";

    /// <summary>The arguments with a step for each --renumber that has none: what follows it is a file.</summary>
    public static string[] WithStep(string[] args)
    {
        var end = Array.IndexOf(args, "--") is >= 0 and var dashes ? dashes : args.Length;
        return [.. args.Select((argument, index) => argument == Renumber && index < end ? $"{Renumber}={UsualStep}" : argument)];
    }

    public static Command Create()
    {
        var files = new Argument<string[]>("FILE") { Description = "Programs, or - for standard input.", Arity = ArgumentArity.OneOrMore };
        var check = new Option<bool>("--check") { Description = "Only tell which programs are not tidy; exit code 1 where any is not." };
        var write = new Option<bool>("--write") { Description = "Write the tidy text in the place of the old one, instead of showing it." };
        var renumber = new Option<int?>(Renumber)
        {
            HelpName = "STEP",
            Arity = ArgumentArity.ZeroOrOne,
            Description = $"Number the blocks anew from the beginning of each program, in steps of {UsualStep}, or as in {Renumber}=5; jumps follow.",
            CustomParser = result => result.Tokens.Count == 0 ? UsualStep : int.TryParse(result.Tokens[0].Value, out var step) && step is > 0 and <= 1000 ? step : Refuse(result),
        };
        var choices = new JobChoices();
        var command = new Command("format", "Tidies programs: capital letters, one blank between words, no empty lines in a row. Writes nothing unless the motion is unchanged.")
        {
            files, check, write, renumber,
        };
        choices.AddTo(command);
        command.SetAction((parse, cancel) =>
        {
            if (parse.GetValue(check) && parse.GetValue(write))
                throw new CannotRunException("--check only tells and --write writes: give one of them");
            var step = parse.GetResult(renumber) is null ? 0 : parse.GetValue(renumber) ?? UsualStep;
            var paths = parse.GetValue(files)!;
            if (step > 0 && paths.FirstOrDefault(path => int.TryParse(path, out _) && !File.Exists(path)) is { } number)
                throw new CannotRunException($"there is no file {number}; steps of {number} are written {Renumber}={number}");
            var outcome = parse.GetValue(check) ? FormatOutcome.Told : parse.GetValue(write) ? FormatOutcome.Written : FormatOutcome.Shown;
            var run = new FormatRun(choices.Options(parse), choices.Analysis(parse), new FormatOptions(step), outcome);
            return Task.FromResult(run.Tidy(paths, cancel));
        });
        return command;
    }

    static int? Refuse(System.CommandLine.Parsing.ArgumentResult result)
    {
        result.AddError($"--renumber takes a whole number of steps from 1 to 1000, not {result.Tokens[0].Value}");
        return null;
    }
}
