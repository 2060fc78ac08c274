using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Flow;
using NcLanguage.Control.State;

namespace NcLanguage.Editing;

/// <summary>Uses of a program's number, or of a variable that programs share, in the files beside it.</summary>
sealed class FolderUses(ProgramAnalysis analysis, string ownPath, IProgramFolder folder, CancellationToken cancel)
{
    /// <summary>The uses in other files, each with its file; none for what does not reach beyond one text.</summary>
    public IEnumerable<(FolderProgram File, SymbolUse Use)> Of(ProgramSymbol symbol)
    {
        var shared = symbol.Kind switch
        {
            NamedKind.Program => Meant(symbol.Number),
            NamedKind.Variable when symbol.Number > Variables.LastLocal => Sharing(symbol),
            NamedKind.NamedVariable when symbol.Name!.StartsWith('_') => Sharing(symbol),
            _ => [],
        };
        foreach (var file in shared)
            foreach (var use in SymbolReader.In(file.Text, cancel))
                if (use.Symbol == symbol)
                    yield return (file, use);
    }

    /// <summary>The files in which a program's number means the same: that found by it, and those that have no program of this number.</summary>
    IEnumerable<FolderProgram> Meant(int number)
    {
        var isDeclaredHere = new Symbols(analysis).Flow.LinesOfProgram(number) is not null;
        var isFoundHere = new FolderProgram(ownPath, analysis.Text).CalledBy == number;
        return folder.Others(cancel).Where(file => (file.CalledBy == number && !isDeclaredHere)
            || ((isFoundHere || !isDeclaredHere) && FlowText.Of(file.Text, null).LinesOfProgram(number) is null));
    }

    /// <summary>The files that use a variable in one run with this one: what a file calls, and what those that call it call, over any number of calls.</summary>
    IEnumerable<FolderProgram> Sharing(ProgramSymbol symbol)
    {
        var own = new FolderProgram(ownPath, analysis.Text);
        var all = folder.Others(cancel).Append(own).ToList();
        var called = all.ToDictionary(file => file, Called);
        var sharing = new HashSet<FolderProgram> { own };
        for (var open = new Queue<FolderProgram>([own]); open.TryDequeue(out var user);)
            foreach (var file in Reached(Reached([user], (one, other) => called[other].Contains(one.CalledBy)), (one, other) => called[one].Contains(other.CalledBy)))
                if (!sharing.Contains(file) && SymbolReader.In(file.Text, cancel).Any(use => use.Symbol == symbol) && sharing.Add(file))
                    open.Enqueue(file);
        return all.Where(file => file != own && sharing.Contains(file));

        HashSet<FolderProgram> Reached(IEnumerable<FolderProgram> from, Func<FolderProgram, FolderProgram, bool> leads)
        {
            var reached = new HashSet<FolderProgram>(from);
            for (var next = new Queue<FolderProgram>(reached); next.TryDequeue(out var one);)
                foreach (var other in all)
                    if (leads(one, other) && reached.Add(other))
                        next.Enqueue(other);
            return reached;
        }
    }

    /// <summary>The numbers of the programs that a file calls and does not hold itself.</summary>
    HashSet<int> Called(FolderProgram file)
    {
        var flow = FlowText.Of(file.Text, null);
        return flow.Steers
            ? [.. SymbolReader.In(file.Text, cancel).Where(use => use.Symbol.Kind == NamedKind.Program && use.Role == UseRole.Call && flow.LinesOfProgram(use.Symbol.Number) is null)
                .Select(use => use.Symbol.Number)]
            : [];
    }
}
