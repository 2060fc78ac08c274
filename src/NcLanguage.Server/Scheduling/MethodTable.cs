using System.Collections.Frozen;
using NcLanguage.Server.Rpc;

namespace NcLanguage.Server.Scheduling;

/// <summary>How a method takes its turn.</summary>
enum Schedule
{
    /// <summary>Not queued at all: it must get through while others wait.</summary>
    AtOnce,

    /// <summary>Awaited: nothing that came later starts before it is done. For all that changes what the server knows.</summary>
    InOrder,

    /// <summary>Started in its turn on the snapshot that then stands, and not awaited: later messages run beside it. A change of
    /// its document meanwhile ends it with "content modified".</summary>
    Snapshot,
}

/// <summary>Every method the server takes and how it is scheduled. What it does not take stands in <see cref="Unsupported"/>.</summary>
static class MethodTable
{
    public static FrozenDictionary<string, Schedule> Rows { get; } = new Dictionary<string, Schedule>
    {
        [Methods.Initialize] = Schedule.InOrder,
        [Methods.Initialized] = Schedule.InOrder,
        [Methods.Shutdown] = Schedule.InOrder,
        [Methods.Exit] = Schedule.AtOnce,
        [Methods.CancelRequest] = Schedule.AtOnce,
        [Methods.SetTrace] = Schedule.AtOnce,

        [Methods.DidOpen] = Schedule.InOrder,
        [Methods.DidChange] = Schedule.InOrder,
        [Methods.DidClose] = Schedule.InOrder,
        [Methods.DidSave] = Schedule.InOrder,
        [Methods.DidChangeWatchedFiles] = Schedule.InOrder,
        [Methods.DidChangeWorkspaceFolders] = Schedule.InOrder,
        [Methods.DidChangeConfiguration] = Schedule.InOrder,

        [Methods.Hover] = Schedule.Snapshot,
        [Methods.CodeAction] = Schedule.Snapshot,
        [Methods.CodeActionResolve] = Schedule.Snapshot,
        [Methods.InlayHint] = Schedule.Snapshot,
        [Methods.InlayHintResolve] = Schedule.Snapshot,
        [Methods.DocumentSymbol] = Schedule.Snapshot,
        [Methods.Definition] = Schedule.Snapshot,
        [Methods.Declaration] = Schedule.Snapshot,
        [Methods.References] = Schedule.Snapshot,
        [Methods.DocumentHighlight] = Schedule.Snapshot,
        [Methods.PrepareRename] = Schedule.Snapshot,
        [Methods.Rename] = Schedule.Snapshot,
        [Methods.LinkedEditingRange] = Schedule.Snapshot,
        [Methods.FoldingRange] = Schedule.Snapshot,
        [Methods.SelectionRange] = Schedule.Snapshot,
        [Methods.DocumentLink] = Schedule.Snapshot,
        [Methods.PrepareCallHierarchy] = Schedule.Snapshot,
        [Methods.IncomingCalls] = Schedule.Snapshot,
        [Methods.OutgoingCalls] = Schedule.Snapshot,
        [Methods.SemanticTokensFull] = Schedule.Snapshot,
        [Methods.SemanticTokensDelta] = Schedule.Snapshot,
        [Methods.SemanticTokensRange] = Schedule.Snapshot,
        [Methods.Formatting] = Schedule.Snapshot,
        [Methods.RangeFormatting] = Schedule.Snapshot,
        [Methods.OnTypeFormatting] = Schedule.Snapshot,
        [Methods.InlineValue] = Schedule.Snapshot,
        [Methods.PullDiagnostics] = Schedule.Snapshot,
        [Methods.WorkspaceDiagnostics] = Schedule.Snapshot,
        [Methods.WorkspaceSymbol] = Schedule.Snapshot,
        [Methods.Completion] = Schedule.Snapshot,
        [Methods.CompletionResolve] = Schedule.Snapshot,
        [Methods.SignatureHelp] = Schedule.Snapshot,
        [Methods.CodeLens] = Schedule.Snapshot,
        [Methods.CodeLensResolve] = Schedule.Snapshot,
        [Methods.WillRenameFiles] = Schedule.Snapshot,
        [Methods.ExecuteCommand] = Schedule.Snapshot,
        [Methods.MotionView] = Schedule.Snapshot,
        [Methods.SetupSheet] = Schedule.Snapshot,
        [Methods.StateAt] = Schedule.Snapshot,
        [Methods.Holes] = Schedule.Snapshot,
        [Methods.JobInUse] = Schedule.Snapshot,
        [Methods.NewSetup] = Schedule.Snapshot,
    }.ToFrozenDictionary();
}
