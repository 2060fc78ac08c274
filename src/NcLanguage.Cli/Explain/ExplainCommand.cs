using System.Collections.Immutable;
using System.CommandLine;
using System.CommandLine.Completions;
using NcLanguage.Cli.Common;
using NcLanguage.Cli.Files;
using NcLanguage.Reports.Explain;
using NcLanguage.Reports.Reference;

namespace NcLanguage.Cli.Explain;

/// <summary><c>explain NAME</c>: what a name stands for; with <c>--all</c> everything, with <c>-o</c> as files.</summary>
static class ExplainCommand
{
    const string What = "a finding, a code, an address, a statement, a function, a variable, a sign, a reading or a member of a setup file, a machine file or a file of cutting data";

    public static Command Create()
    {
        var name = new Argument<string[]>("NAME")
        {
            // Else the help would list all that can be explained.
            HelpName = "NAME",
            Arity = ArgumentArity.ZeroOrMore,
            Description = "Such as G81, R, WHILE, SIN, #5221 (in quotes), dwell, program-end-missing, NC6003, setup.tools. Without one: a list of all that can be explained.",
        };
        name.CompletionSources.Add(_ => Glossary.All.Select(entry => entry.Name).Distinct().Select(one => new CompletionItem(one)));
        var all = new Option<bool>("--all") { Description = "Explain everything." };
        var folder = new Option<string?>("--output", "-o")
        {
            HelpName = "FOLDER",
            Description = "With --all: write it into this folder, one page for each name and a list; --format html (what it does by itself) or markdown.",
        };
        var format = ChoiceOption.Create("--format", "How to tell it; html and markdown only into a folder.", "text", "json", "html", "markdown");
        var command = new Command("explain", $"Explains {What}.") { name, all, folder, format };
        command.SetAction(parse =>
        {
            var (wanted, isAll, output, how) = (string.Join(' ', parse.GetValue(name) ?? []), parse.GetValue(all), parse.GetValue(folder), parse.GetValue(format)!);
            if (isAll && wanted.Length > 0)
                throw new CannotRunException("give either a name or --all");
            if (output is null)
                return Tell(wanted, isAll, how);
            if (!isAll)
                throw new CannotRunException("-o writes the whole reference: give --all with it");
            return Write(output, how);
        });
        return command;
    }

    static int Tell(string name, bool all, string format)
    {
        if (format is "html" or "markdown")
            throw new CannotRunException($"--format {format} writes files: give --all and -o with a folder");
        var entries = name.Length == 0 ? Glossary.All : Glossary.Find(name);
        if (entries.IsEmpty)
            throw new CannotRunException($"nothing is named {name}; {Hint(name)}");
        if (format == "json")
        {
            JsonOutput.Write(json => ExplainJson.Write(entries, json));
            return ExitCode.Clean;
        }
        using var screen = Screen.Open();
        if (name.Length == 0 && !all)
            List(entries, screen);
        else
            foreach (var entry in entries)
                Show(entry, screen);
        return ExitCode.Clean;
    }

    static int Write(string folder, string format)
    {
        if (format == "json")
            throw new CannotRunException("with -o the format is html or markdown");
        var pages = ReferencePages.All(format == "markdown" ? PageFormat.Markdown : PageFormat.Html);
        if (File.Exists(folder))
            throw new CannotRunException($"{folder} is a file, not a folder");
        try
        {
            ReferenceFolder.Write(folder, pages);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw new CannotRunException($"the reference could not be written into {folder}: {WriteFailure.Clause(e)}");
        }
        using var screen = Screen.Open();
        screen.WriteLine($"{Path.Combine(folder, pages[0].FileName)} and {pages.Length - 1} pages");
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
            screen.WriteLine(group.Key, Styles.Heading);
            var width = group.Max(entry => entry.Name.Length);
            foreach (var entry in group)
                screen.WriteParagraph($"{entry.Name.PadRight(width)}  {(entry.Alias is null ? "" : entry.Alias + "  ")}{entry.Title}", 2, hang: width + 2 + (entry.Alias is { } alias ? alias.Length + 2 : 0));
            screen.WriteLine();
        }
    }

    static void Show(Explanation entry, Screen screen)
    {
        screen.WriteLine($"{entry.Name}{(entry.Alias is null ? "" : $" ({entry.Alias})")}: {entry.Title}", Styles.Heading);
        foreach (var section in entry.Sections)
        {
            screen.WriteLine();
            screen.WriteLine(section.Heading, Styles.Heading);
            if (!section.IsVerbatim)
                screen.WriteParagraph(section.Text, 2);
            else
                foreach (var line in section.Text.Split('\n'))
                    if (section.Hang > 0)
                        screen.WriteParagraph(line, 2, hang: section.Hang);
                    else
                        screen.WriteLine("  " + line);
        }
        screen.WriteLine();
    }
}
