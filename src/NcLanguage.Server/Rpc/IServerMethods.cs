using NcLanguage.Editing;
using NcLanguage.Server.Protocol;
using PolyType;
using StreamJsonRpc;

namespace NcLanguage.Server.Rpc;

/// <summary>What a client may call. How each is scheduled stands in <see cref="Scheduling.MethodTable"/>.</summary>
[JsonRpcContract]
[GenerateShape(IncludeMethods = MethodShapeFlags.PublicInstance)]
internal partial interface IServerMethods
{
    [JsonRpcMethod(Methods.Initialize, UseSingleObjectParameterDeserialization = true)]
    Task<InitializeResult> InitializeAsync(InitializeParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.Initialized, UseSingleObjectParameterDeserialization = true)]
    Task InitializedAsync(InitializedParams notification);

    [JsonRpcMethod(Methods.Shutdown)]
    Task ShutdownAsync();

    [JsonRpcMethod(Methods.Exit)]
    Task ExitAsync();

    [JsonRpcMethod(Methods.SetTrace, UseSingleObjectParameterDeserialization = true)]
    Task SetTraceAsync(SetTraceParams notification);

    [JsonRpcMethod(Methods.DidOpen, UseSingleObjectParameterDeserialization = true)]
    Task DidOpenAsync(DidOpenTextDocumentParams notification);

    [JsonRpcMethod(Methods.DidChange, UseSingleObjectParameterDeserialization = true)]
    Task DidChangeAsync(DidChangeTextDocumentParams notification);

    [JsonRpcMethod(Methods.DidClose, UseSingleObjectParameterDeserialization = true)]
    Task DidCloseAsync(DidCloseTextDocumentParams notification);

    [JsonRpcMethod(Methods.DidSave, UseSingleObjectParameterDeserialization = true)]
    Task DidSaveAsync(DidSaveTextDocumentParams notification);

    [JsonRpcMethod(Methods.DidChangeWatchedFiles, UseSingleObjectParameterDeserialization = true)]
    Task DidChangeWatchedFilesAsync(DidChangeWatchedFilesParams notification);

    [JsonRpcMethod(Methods.Hover, UseSingleObjectParameterDeserialization = true)]
    Task<Protocol.Hover?> HoverAsync(HoverParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.CodeAction, UseSingleObjectParameterDeserialization = true)]
    Task<CodeAction[]> CodeActionAsync(CodeActionParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.CodeActionResolve, UseSingleObjectParameterDeserialization = true)]
    Task<CodeAction> ResolveCodeActionAsync(CodeAction request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.InlayHint, UseSingleObjectParameterDeserialization = true)]
    Task<InlayHint[]> InlayHintAsync(InlayHintParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.DocumentSymbol, UseSingleObjectParameterDeserialization = true)]
    Task<DocumentSymbol[]> DocumentSymbolAsync(DocumentSymbolParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.StateAt, UseSingleObjectParameterDeserialization = true)]
    Task<StateAnswer?> StateAtAsync(StateAtParams request, CancellationToken cancellationToken);

    [JsonRpcMethod(Methods.Holes, UseSingleObjectParameterDeserialization = true)]
    Task<HolesAnswer> HolesAsync(HolesParams request, CancellationToken cancellationToken);
}
