using System.CommandLine;
using System.CommandLine.Parsing;
using NcLanguage.Machine.Loading;

namespace NcLanguage.Cli.Common;

/// <summary>Says in one line what is wrong with a command line.</summary>
static class UsageError
{
    public static string Of(ParseResult parse)
    {
        var command = parse.CommandResult.Command;
        var help = command is RootCommand ? "nclanguage --help" : $"nclanguage {Path(command)} --help";
        if (Unknown(parse) is { } unknown)
            return Unknown(unknown, command, help);
        if (command is RootCommand)
            return $"no command is given; {help} lists them";
        if (command.Subcommands.Count > 0)
            return $"{Path(command)} needs one of {string.Join(", ", command.Subcommands.Select(sub => sub.Name))}; see {help}";
        return command.Arguments.FirstOrDefault(argument => argument.Arity.MinimumNumberOfValues > 0 && parse.GetResult(argument) is null or { Tokens.Count: 0 }) is { } missing
            ? $"{Path(command)} needs {missing.Name}; see {help}"
            : $"{parse.Errors[0].Message.TrimEnd('.')}; see {help}";
    }

    /// <summary>The command behind nclanguage, with those it stands under: figure tap.</summary>
    static string Path(Command command) =>
        command.Parents.OfType<Command>().FirstOrDefault(parent => parent is not RootCommand) is { } parent ? $"{Path(parent)} {command.Name}" : command.Name;

    /// <summary>Whether something stands there that the parser took for an argument and that cannot be one.</summary>
    public static bool HasUnknown(ParseResult parse) => Unknown(parse) is not null;

    /// <summary>An argument that looks like an option: a file of such a name can be given as ./--name, or behind --.</summary>
    static bool IsOptionLike(string argument) => argument.Length > 1 && argument[0] == '-';

    static string? Unknown(ParseResult parse)
    {
        // Behind -- nothing is an option, whatever it looks like.
        var mayBeOptions = parse.Tokens.TakeWhile(token => token.Type != TokenType.DoubleDash).Select(token => token.Value).Where(IsOptionLike).ToHashSet(StringComparer.Ordinal);
        return parse.UnmatchedTokens
            .Concat(parse.CommandResult.Command.Arguments.SelectMany(argument => parse.GetResult(argument)?.Tokens.Select(token => token.Value).Where(mayBeOptions.Contains) ?? []))
            .FirstOrDefault();
    }

    static string Unknown(string written, Command command, string help)
    {
        var (what, names) = (IsOptionLike(written), command) switch
        {
            (true, _) => ("option", command.Options.Select(option => option.Name)),
            (_, { Subcommands.Count: > 0 }) => ("command", command.Subcommands.Select(sub => sub.Name)),
            _ => ("", []),
        };
        if (what.Length == 0)
            return $"{written} is one argument too many; see {help}";
        return $"there is no {what} {written}; {NearestName.DidYouMean(written, names, $"see {help}")}";
    }
}
