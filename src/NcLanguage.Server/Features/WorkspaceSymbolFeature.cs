using NcLanguage.Control.Flow;
using NcLanguage.Editing;
using NcLanguage.Server.Documents;
using NcLanguage.Server.Jobs;
using NcLanguage.Server.Protocol;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Server.Features;

/// <summary>workspace/symbol: programs, subroutines, tools and operations of open programs, and the programs of all files of the workspace.</summary>
internal sealed class WorkspaceSymbolFeature(JobLoader jobs, PositionMapper positions)
{
    /// <summary>Files of the workspace that are looked at, and symbols that are told.</summary>
    private const int MostFiles = 5000;
    private const int MostSymbols = 1000;

    private static readonly EnumerationOptions s_walk = new()
    {
        RecurseSubdirectories = true,
        IgnoreInaccessible = true,
        // Links lead out of the workspace, or round in it.
        AttributesToSkip = FileAttributes.ReparsePoint | FileAttributes.Hidden | FileAttributes.System,
        MaxRecursionDepth = 16,
    };

    /// <summary>Those of an open program whose name holds the query, in any case.</summary>
    public static SymbolInformation[] Open(FeatureContext context, string query)
    {
        List<SymbolInformation> found = [];
        Add(Outline.Of(context.Analysis), null);
        return [.. found];

        void Add(IEnumerable<OutlineItem> items, string? container)
        {
            foreach (OutlineItem item in items)
            {
                if (found.Count < MostSymbols && Fits(item.Name, query))
                    found.Add(new SymbolInformation(item.Name, DocumentSymbolFeature.Kind(item.Kind),
                        new Location(context.Uri, context.Positions.ToRange(context.Text, item.FirstLine, 0, int.MaxValue)), container ?? Path.GetFileName(context.Path)));
                Add(item.Children, item.Name);
            }
        }
    }

    /// <summary>The programs of files that are not open.</summary>
    public SymbolInformation[] OnDisk(string query, CancellationToken cancel)
    {
        List<SymbolInformation> found = [];
        foreach (string path in Files().Take(MostFiles))
        {
            cancel.ThrowIfCancellationRequested();
            if (found.Count >= MostSymbols) break;
            if (jobs.IsOpen(path) || jobs.TextOf(path) is not { } text) continue;
            foreach ((string name, int line) in ProgramNames.In(text))
                if (Fits(name, query))
                    found.Add(new SymbolInformation(name, SymbolKind.Module, new Location(DocumentUri.FromPath(path), positions.ToRange(text, line, 0, int.MaxValue)), Path.GetFileName(path)));
        }
        return [.. found];
    }

    private IEnumerable<string> Files() => jobs.Roots.Where(Directory.Exists).SelectMany(root => Directory.EnumerateFiles(root, "*", s_walk))
        .Where(path => SiblingPrograms.Extensions.Contains(Path.GetExtension(path), StringComparer.OrdinalIgnoreCase));

    private static bool Fits(string name, string query) => name.Contains(query, StringComparison.OrdinalIgnoreCase);
}
