namespace NcLanguage.Server;

/// <summary>Methods of LSP 3.17, and of 3.18 as far as that is published, that are not answered, and why. A request for one gets "method not found", a notification is dropped.
/// A test asserts that none of them is announced or has a row in the method table.</summary>
/// <remarks>Of document links one is left out: from a program to its setup and its machine only the names of the files lead, where a comment at the head
/// tells them. Nothing else in a program names them, and a link that hides under a number or a title would be found by nobody; T, H, D and variables lead
/// there by their definition.</remarks>
static class Unsupported
{
    public const string NoDeclarations = "a program declares no types";
    public const string OneText = "a program and what it calls is all there is: nothing to index or to browse across a workspace";
    public const string NoNotebooks = "programs are plain text";

    public static IReadOnlyDictionary<string, string> Reasons { get; } = new Dictionary<string, string>
    {
        ["documentLink/resolve"] = "links come complete",
        ["workspaceSymbol/resolve"] = "symbols come complete",
        ["textDocument/moniker"] = OneText,
        ["textDocument/implementation"] = NoDeclarations,
        ["textDocument/typeDefinition"] = NoDeclarations,
        ["textDocument/prepareTypeHierarchy"] = NoDeclarations,
        ["typeHierarchy/supertypes"] = NoDeclarations,
        ["typeHierarchy/subtypes"] = NoDeclarations,
        ["textDocument/documentColor"] = "a program has no colours",
        ["textDocument/colorPresentation"] = "a program has no colours",
        ["textDocument/willSave"] = "nothing depends on it",
        ["textDocument/willSaveWaitUntil"] = "a program is never changed unasked",
        ["workspace/willCreateFiles"] = OneText,
        ["workspace/didCreateFiles"] = OneText,
        ["workspace/didRenameFiles"] = OneText,
        ["workspace/willDeleteFiles"] = OneText,
        ["workspace/didDeleteFiles"] = OneText,
        ["$/progress"] = "the server asks a client for nothing that takes long",
        ["window/workDoneProgress/cancel"] = "progress belongs to a request of the client's, which is cancelled as any other",
        // Of 3.18.
        ["textDocument/rangesFormatting"] = "several ranges are formatted one by one",
        ["textDocument/inlineCompletion"] = "nothing is guessed: what is offered comes from the setup, the tables and the program",
        ["workspace/textDocumentContent"] = "no documents are made up: pages are files",
        ["notebookDocument/didOpen"] = NoNotebooks,
        ["notebookDocument/didChange"] = NoNotebooks,
        ["notebookDocument/didSave"] = NoNotebooks,
        ["notebookDocument/didClose"] = NoNotebooks,
    };
}
