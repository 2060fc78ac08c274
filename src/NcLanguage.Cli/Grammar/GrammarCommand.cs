using System.CommandLine;
using NcLanguage.Cli.Common;
using NcLanguage.Machine.Loading;
using Colouring = NcLanguage.Reports.Grammars.Grammar;

namespace NcLanguage.Cli.Grammar;

/// <summary><c>grammar textmate|vim|emacs|kate</c>: the colouring for an editor.</summary>
static class GrammarCommand
{
    public static Command Create()
    {
        var kinds = string.Join('|', Colouring.Kinds);
        var kind = new Argument<string>(kinds) { Description = "For which editors." };
        kind.CompletionSources.Add(Colouring.Kinds.ToArray());
        var command = new Command("grammar", "Prints the colouring of programs for an editor, made from the table of codes.") { kind };
        command.SetAction(parse => Run(parse.GetValue(kind)!));
        return command;
    }

    static int Run(string kind)
    {
        var text = Colouring.For(kind) ?? throw new CannotRunException(
            $"there is no grammar {kind}; {NearestName.DidYouMean(kind, Colouring.Kinds, $"there are {string.Join(", ", Colouring.Kinds)}")}");
        // The bytes as they stand in the file, whatever the terminal's encoding and line ends.
        using var output = StandardStreams.Output();
        output.Write(System.Text.Encoding.UTF8.GetBytes(text));
        return ExitCode.Clean;
    }
}
