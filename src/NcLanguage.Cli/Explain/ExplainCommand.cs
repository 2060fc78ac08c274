using System.Collections.Immutable;
using System.CommandLine;
using NcLanguage.Cli.Common;
using NcLanguage.Reports.Explain;
using Spectre.Console;

namespace NcLanguage.Cli.Explain;

/// <summary><c>explain NAME</c>: a rule, a code, an address, a statement, a function or a reading.</summary>
static class ExplainCommand
{
    static readonly Style Heading = new(decoration: Decoration.Bold);

    public static Command Create()
    {
        var name = new Argument<string[]>("NAME")
        {
            Arity = ArgumentArity.ZeroOrMore,
            Description = "A finding's name or number, a code such as G81, an address, a statement, a function, a reading. Without one: all that can be explained.",
        };
        var format = ChoiceOption.Create("--format", "How to tell it.", "text", "json");
        var command = new Command("explain", "Explains a finding, a code, an address, a statement, a function or a reading.") { name, format };
        command.SetAction(parse => Run(string.Join(' ', parse.GetValue(name) ?? []), parse.GetValue(format)!));
        return command;
    }

    static int Run(string name, string format)
    {
        var entries = name.Length == 0 ? Glossary.All : Glossary.Find(name);
        if (entries.IsEmpty)
            throw new CannotRunException($"nothing is named {name}; {Hint(name)}");
        if (format == "json")
        {
            JsonOutput.Write(json => ExplainJson.Write(entries, json));
            return ExitCode.Clean;
        }
        using var screen = Screen.Open();
        if (name.Length == 0)
            List(entries, screen);
        else
            foreach (var entry in entries)
                Show(entry, screen);
        return ExitCode.Clean;
    }

    static string Hint(string name) => Glossary.Nearest(name) switch
    {
        [] => "nclanguage explain lists all names",
        [var one] => $"did you mean {one}?",
        [.. var first, var last] => $"did you mean {string.Join(", ", first)} or {last}?",
    };

    static void List(ImmutableArray<Explanation> entries, Screen screen)
    {
        foreach (var group in entries.GroupBy(entry => entry.Group))
        {
            screen.WriteLine(group.Key, Heading);
            var width = group.Max(entry => entry.Name.Length);
            foreach (var entry in group)
                screen.WriteLine($"  {entry.Name.PadRight(width)}  {(entry.Alias is null ? "" : entry.Alias + "  ")}{entry.Title}");
            screen.WriteLine();
        }
    }

    static void Show(Explanation entry, Screen screen)
    {
        screen.WriteLine($"{entry.Name}{(entry.Alias is null ? "" : $" ({entry.Alias})")}: {entry.Title}", Heading);
        foreach (var section in entry.Sections)
        {
            screen.WriteLine();
            screen.WriteLine(section.Heading, Heading);
            if (!section.IsVerbatim)
                screen.WriteParagraph(section.Text, 2);
            else
                foreach (var line in section.Text.Split('\n'))
                    screen.WriteLine("  " + line);
        }
        screen.WriteLine();
    }
}
