using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Flow;

namespace NcLanguage.Editing;

/// <summary>A place in a program that names a file.</summary>
/// <param name="IsProgram">Whether the file is a program; else it is the setup or the machine.</param>
public readonly record struct ProgramLink(int Line, int StartColumn, int EndColumn, string Path, bool IsProgram);

/// <summary>Calls of programs that lie beside this one as files of their own, and the names of its setup and its machine where a comment at its head tells them.</summary>
public static class ProgramLinks
{
    /// <summary>Links of one text that are told.</summary>
    const int Most = 1000;

    /// <summary>Lines from the beginning whose comments are looked at.</summary>
    const int Head = 100;

    public static IReadOnlyList<ProgramLink> Of(ProgramAnalysis analysis, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        var links = new List<ProgramLink>();
        AddNamed(analysis, analysis.Setup.Path, links);
        AddNamed(analysis, analysis.Machine.Path, links);
        if (analysis.Main.Flow is not { } flow || analysis.Main.Job.Programs is not { } programs)
            return links;
        var found = new Dictionary<int, CalledFile?>();
        foreach (var use in SymbolReader.In(analysis.Text, cancel))
        {
            if (use is not { Symbol.Kind: NamedKind.Program, Role: UseRole.Call } || flow.Text.LinesOfProgram(use.Symbol.Number) is not null)
                continue;
            if (!found.TryGetValue(use.Symbol.Number, out var file))
                found[use.Symbol.Number] = file = programs.Find(use.Symbol.Number);
            if (file is not null)
                links.Add(new ProgramLink(use.Line, use.Start, use.End, file.Path, true));
            if (links.Count >= Most)
                break;
        }
        return links;
    }

    static void AddNamed(ProgramAnalysis analysis, string? path, List<ProgramLink> links)
    {
        if (path is null)
            return;
        var name = Encoding.UTF8.GetBytes(Path.GetFileName(path));
        for (var line = 0; line < Math.Min(Head, analysis.Text.LineCount); line++)
        {
            var block = analysis.Main.BlockAt(line);
            foreach (ref readonly var token in block.Tokens)
                if (token.IsComment && block.TextOf(token).IndexOf(name) is >= 0 and var at)
                    links.Add(new ProgramLink(line, token.Start + at, token.Start + at + name.Length, path, false));
        }
    }
}
