using System.Runtime.CompilerServices;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Operations;
using NcLanguage.Editing;
using NcLanguage.Server.Protocol;
using NcLanguage.Server.Rpc;

namespace NcLanguage.Server.Features;

/// <summary>textDocument/codeLens and codeLens/resolve. The places cost nothing; times and distances are worked out once a snapshot, when the first of them is shown.</summary>
internal sealed class CodeLensFeature
{
    private readonly ConditionalWeakTable<ProgramAnalysis, OperationList> _operations = [];

    public static CodeLens[] Answer(FeatureContext context) => [.. Lenses.Of(context.Analysis, context.Cancel).Select(place => new CodeLens(
        context.Positions.ToRange(context.Text, place.Line, 0, int.MaxValue),
        place.Text is { } text ? new Command(text, "") : null, new CodeLensData(context.Uri, context.Snapshot.Version)))];

    public CodeLens Resolve(FeatureContext context, CodeLens lens)
    {
        if (lens.Data?.Version != context.Snapshot.Version) throw Errors.DocumentChanged();
        int line = (int)lens.Range.Start.Line;
        foreach (LensPlace place in Lenses.Of(context.Analysis, context.Cancel))
            if (place.Line == line && place.Text is null)
                return lens with { Command = new Command(Lenses.TextOf(context.Analysis, OperationsOf(context), place), "") };
        return lens with { Command = lens.Command ?? new Command("", "") };
    }

    private OperationList OperationsOf(FeatureContext context)
    {
        if (_operations.TryGetValue(context.Analysis, out OperationList? known)) return known;
        OperationList operations = Lenses.Operations(context.Analysis, context.Cancel);
        _operations.AddOrUpdate(context.Analysis, operations);
        return operations;
    }
}
