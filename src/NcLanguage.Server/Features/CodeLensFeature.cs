using System.Runtime.CompilerServices;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Operations;
using NcLanguage.Editing;
using NcLanguage.Server.Protocol;
using NcLanguage.Server.Rpc;

namespace NcLanguage.Server.Features;

/// <summary>textDocument/codeLens and codeLens/resolve. The places cost nothing; times and distances are worked out once a snapshot, when the first of them is shown.</summary>
sealed class CodeLensFeature
{
    sealed record Shown(IReadOnlyList<LensPlace> Places, OperationList Operations);

    readonly ConditionalWeakTable<ProgramAnalysis, Shown> _shown = [];

    public static CodeLens[] Answer(FeatureContext context) => [.. Lenses.Of(context.Analysis, context.Cancel).Select((place, index) => new CodeLens(
        context.Positions.ToRange(context.Text, place.Line, 0, int.MaxValue),
        place.IsWhole ? new Command(place.Text, "") : null, new CodeLensData(context.Uri, context.Snapshot.Version, index)))];

    public CodeLens Resolve(FeatureContext context, CodeLens lens)
    {
        if (lens.Data?.Version != context.Snapshot.Version)
            throw Errors.DocumentChanged();
        var shown = ShownOf(context);
        // Two may stand on one line: the program's and that of its first tool.
        return lens.Data.Place >= 0 && lens.Data.Place < shown.Places.Count
            ? lens with { Command = new Command(Lenses.TextOf(context.Analysis, shown.Operations, shown.Places[lens.Data.Place]), "") }
            : lens with { Command = lens.Command ?? new Command("", "") };
    }

    Shown ShownOf(FeatureContext context)
    {
        if (_shown.TryGetValue(context.Analysis, out var known))
            return known;
        var shown = new Shown(Lenses.Of(context.Analysis, context.Cancel), Lenses.Operations(context.Analysis, context.Cancel));
        _shown.AddOrUpdate(context.Analysis, shown);
        return shown;
    }
}
