using System.Text.Json.Nodes;

namespace NcLanguage.Benchmarks.Soak;

/// <summary>What an editor asks about a document while somebody types in it.</summary>
static class SomeRequest
{
    public const int Kinds = 13;

    /// <param name="kind">From 0 to <see cref="Kinds"/>, exclusive.</param>
    /// <param name="uri">The document.</param>
    /// <param name="line">The cursor's line, from 0.</param>
    /// <param name="character">The cursor's place in it, from 0.</param>
    /// <param name="lineCount">Lines of the document.</param>
    public static (string Method, JsonObject Parameters) Of(int kind, string uri, int line, int character, int lineCount)
    {
        var document = new JsonObject { ["uri"] = uri };
        var range = new JsonObject { ["start"] = Typist.At(Math.Max(0, line - 30), 0), ["end"] = Typist.At(Math.Min(lineCount, line + 30), 0) };
        JsonObject At() => new() { ["textDocument"] = document, ["position"] = Typist.At(line, character) };
        JsonObject Of() => new() { ["textDocument"] = document };
        JsonObject In() => new() { ["textDocument"] = document, ["range"] = range };
        JsonObject With(JsonObject parameters, string name, JsonNode value)
        {
            parameters[name] = value;
            return parameters;
        }
        return kind switch
        {
            0 => ("textDocument/hover", At()),
            1 => ("textDocument/completion", At()),
            2 => ("textDocument/signatureHelp", At()),
            3 => ("textDocument/inlayHint", In()),
            4 => ("textDocument/semanticTokens/range", In()),
            5 => ("textDocument/semanticTokens/full", Of()),
            6 => ("textDocument/documentSymbol", Of()),
            7 => ("textDocument/foldingRange", Of()),
            8 => ("textDocument/codeAction", With(In(), "context", new JsonObject { ["diagnostics"] = new JsonArray() })),
            9 => ("textDocument/documentHighlight", At()),
            10 => ("textDocument/references", With(At(), "context", new JsonObject { ["includeDeclaration"] = true })),
            11 => ("nclanguage/stateAt", At()),
            _ => ("textDocument/diagnostic", Of()),
        };
    }
}
