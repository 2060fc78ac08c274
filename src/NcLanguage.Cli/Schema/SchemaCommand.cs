using System.CommandLine;
using NcLanguage.Cli.Common;
using NcLanguage.Machine;
using NcLanguage.Machine.Loading;

namespace NcLanguage.Cli.Schema;

/// <summary><c>schema setup|machine|cutting</c>: the JSON Schema of a file that stands beside programs.</summary>
static class SchemaCommand
{
    static readonly string[] Names = ["setup", "machine", "cutting"];

    public static Command Create()
    {
        var name = new Argument<string>("setup|machine|cutting") { Description = "Which file." };
        name.CompletionSources.Add(Names);
        var command = new Command("schema", "Prints the JSON Schema of setup files, machine files or files of cutting data, for editors.") { name };
        command.SetAction(parse => Run(parse.GetValue(name)!));
        return command;
    }

    static int Run(string name)
    {
        var schema = name switch
        {
            "setup" => Schemas.Setup,
            "machine" => Schemas.Machine,
            "cutting" => Schemas.Cutting,
            _ => throw new CannotRunException(
                $"there is no schema {name}; {NearestName.DidYouMean(name, Names, "there are setup, machine and cutting")}"),
        };
        using var screen = Screen.Open();
        screen.Writer.WriteLine(schema.TrimEnd());
        return ExitCode.Clean;
    }
}
