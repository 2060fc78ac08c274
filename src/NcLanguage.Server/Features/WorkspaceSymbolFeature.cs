using NcLanguage.Editing;
using NcLanguage.Server.Documents;
using NcLanguage.Server.Jobs;
using NcLanguage.Server.Protocol;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Server.Features;

/// <summary>workspace/symbol: programs, subroutines, tools and operations of open programs, and the programs of all files of the workspace.</summary>
sealed class WorkspaceSymbolFeature(JobLoader jobs, PositionMapper positions)
{
    /// <summary>Symbols that are told.</summary>
    const int MostSymbols = 1000;

    /// <summary>Those of an open program whose name holds the query, in any case.</summary>
    public static SymbolInformation[] Open(FeatureContext context, string query)
    {
        List<SymbolInformation> found = [];
        Add(Outline.Of(context.Analysis, DocumentSymbolFeature.NameOf(context), context.Cancel), null);
        return [.. found];

        void Add(IEnumerable<OutlineItem> items, string? container)
        {
            foreach (var item in items)
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
        foreach (var path in WorkspaceFiles.Programs(jobs.Roots))
        {
            cancel.ThrowIfCancellationRequested();
            if (found.Count >= MostSymbols)
                break;
            if (jobs.IsOpen(path) || jobs.TextOf(path) is not { } text)
                continue;
            // A file without a program number has its name alone.
            foreach ((var name, var line) in ProgramNames.In(text).DefaultIfEmpty((Path.GetFileName(path), 0)))
                if (Fits(name, query))
                    found.Add(new SymbolInformation(name, SymbolKind.Module, new Location(DocumentUri.FromPath(path), positions.ToRange(text, line, 0, int.MaxValue)), Path.GetFileName(path)));
        }
        return [.. found];
    }

    static bool Fits(string name, string query) => name.Contains(query, StringComparison.OrdinalIgnoreCase);
}
