using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Flow;

namespace NcLanguage.Editing;

/// <summary>A number in a program that names a file.</summary>
public readonly record struct ProgramLink(int Line, int StartColumn, int EndColumn, string Path);

/// <summary>Calls of programs that lie beside this one as files of their own.</summary>
public static class ProgramLinks
{
    /// <summary>Links of one text that are told.</summary>
    const int Most = 1000;

    public static IReadOnlyList<ProgramLink> Of(ProgramAnalysis analysis, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        var links = new List<ProgramLink>();
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
                links.Add(new ProgramLink(use.Line, use.Start, use.End, file.Path));
            if (links.Count >= Most)
                break;
        }
        return links;
    }
}
