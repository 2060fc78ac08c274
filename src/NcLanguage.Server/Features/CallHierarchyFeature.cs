using NcLanguage.Editing;
using NcLanguage.Server.Protocol;

namespace NcLanguage.Server.Features;

/// <summary>textDocument/prepareCallHierarchy and the calls to and from an item, over the program and those beside it.</summary>
static class CallHierarchyFeature
{
    public static CallHierarchyItem[] Prepare(FeatureContext context, Position position)
    {
        (var line, var column) = context.Positions.ToPlace(context.Text, position);
        return Calls(context).At(line, column) is { } program ? [Item(context, new PlaceMap(context), program)] : [];
    }

    public static CallHierarchyIncomingCall[] Incoming(FeatureContext context, CallHierarchyItem item)
    {
        var calls = Calls(context);
        if (Find(context, calls, item) is not { } program)
            return [];
        var map = new PlaceMap(context);
        return [.. calls.To(program).Select(call => new CallHierarchyIncomingCall(
            Item(context, map, call.Other), [.. call.From.Select(from => map.Range(call.Other.Path, from))]))];
    }

    public static CallHierarchyOutgoingCall[] Outgoing(FeatureContext context, CallHierarchyItem item)
    {
        var calls = Calls(context);
        if (Find(context, calls, item) is not { } program)
            return [];
        var map = new PlaceMap(context);
        return [.. calls.From(program).Select(call => new CallHierarchyOutgoingCall(
            Item(context, map, call.Other), [.. call.From.Select(from => map.Range(program.Path, from))]))];
    }

    static Calls Calls(FeatureContext context) => new(context.Analysis, context.Path, context.Folder, context.Cancel);

    static CalledProgram? Find(FeatureContext context, Calls calls, CallHierarchyItem item)
    {
        var path = item.Uri == context.Uri ? null : Documents.DocumentUri.ToPath(item.Uri);
        return calls.InFile(path, (int)item.SelectionRange.Start.Line);
    }

    static CallHierarchyItem Item(FeatureContext context, PlaceMap map, CalledProgram program) => new(
        program.Name, SymbolKind.Function, map.UriOf(program.Path),
        map.Range(program.Path, new TextStretch(program.FirstLine, 0, program.LastLine, int.MaxValue)),
        map.Range(program.Path, program.NumberAt), new CallHierarchyData(context.Uri));
}
