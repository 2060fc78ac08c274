using System.Text.Json;
using System.Text.Json.Nodes;
using NcLanguage.EndToEnd.Lsp;
using NcLanguage.EndToEnd.Support;

namespace NcLanguage.EndToEnd;

/// <summary>
/// The TextMate grammar, which knows the text alone, gives each sign of every program of the corpus the same kind as the server,
/// which reads it as the control does. The grammar is read by vscode-textmate, the library that VS Code colours with.
/// </summary>
public sealed class GrammarAgreementTests
{
    [EditorFact(Editor.Workbench)]
    public async Task Grammar_and_server_take_every_sign_of_the_corpus_for_the_same()
    {
        Assert.True(Editors.Missing(Editor.Workbench) is null, Editors.Missing(Editor.Workbench));
        var programs = Directory.GetFiles(Repository.At("tests", "corpus"), "*.nc", SearchOption.AllDirectories).Order(StringComparer.Ordinal).ToList();
        Assert.True(programs.Count > 30);
        var told = JsonElement.Parse(await CommandLine.OutputAsync(
            ["node", Repository.At("tests", "NcLanguage.EndToEnd", "grammar", "tokenize.mjs"), Repository.At("grammars", "nc.tmLanguage.json"), .. programs],
            TimeSpan.FromMinutes(1)));
        await using var session = await LspSession.StartAsync(Repository.At("tests", "corpus"), "utf-16");
        var types = session.Initialized.GetProperty("capabilities").GetProperty("semanticTokensProvider").GetProperty("legend").GetProperty("tokenTypes")
            .EnumerateArray().Select(type => type.GetString()!).ToList();
        var differing = new List<string>();
        var kinds = new HashSet<string>();
        foreach (var program in programs)
        {
            var text = await File.ReadAllTextAsync(program);
            await session.OpenAsync(program, text);
            var answer = await session.Client.RequestAsync("textDocument/semanticTokens/full", new JsonObject { ["textDocument"] = new JsonObject { ["uri"] = LspSession.Uri(program) } });
            var lines = text.ReplaceLineEndings("\n").Split('\n');
            var byServer = ByServer(lines, answer.GetProperty("data"), types);
            var byGrammar = ByGrammar(lines, told.GetProperty(program));
            for (var line = 0; line < lines.Length; line++)
            {
                for (var at = 0; at < lines[line].Length; at++)
                {
                    if (lines[line][at] is ' ' or '\t')
                        continue;
                    kinds.Add(byServer[line][at]);
                    if (byServer[line][at] != byGrammar[line][at])
                        differing.Add($"{Path.GetFileName(program)} line {line + 1} column {at + 1} of {lines[line]}: \"{byServer[line][at]}\" by the server, \"{byGrammar[line][at]}\" by the grammar");
                }
            }
        }

        Assert.True(differing.Count == 0, string.Join('\n', differing.Take(40)));
        Assert.Superset(new HashSet<string> { "comment", "code", "number", "variable", "statement", "letter", "label", "program", "operator", "function", "mark" }, kinds);
    }

    static string[][] ByServer(string[] lines, JsonElement data, List<string> types)
    {
        var kinds = Empty(lines);
        int line = 0, start = 0;
        var numbers = data.EnumerateArray().Select(number => number.GetInt32()).ToList();
        for (var i = 0; i < numbers.Count; i += 5)
        {
            start = numbers[i] == 0 ? start + numbers[i + 1] : numbers[i + 1];
            line += numbers[i];
            Fill(kinds[line], start, start + numbers[i + 2], KindOf(types[numbers[i + 3]], lines[line].Substring(start, numbers[i + 2]), isFirst: string.IsNullOrWhiteSpace(lines[line][..start])));
        }

        return kinds;
    }

    static string KindOf(string type, string text, bool isFirst) => type switch
    {
        "keyword" or "function" or "property" when text.Length > 1 && char.ToUpperInvariant(text[0]) is 'G' or 'M' && text.Any(char.IsDigit) => "code",
        "keyword" => "statement",
        "function" => char.ToUpperInvariant(text[0]) is 'O' or ':' ? "program" : "function",
        "property" or "parameter" => "letter",
        "operator" when isFirst => "mark",
        _ => type,
    };

    static string[][] ByGrammar(string[] lines, JsonElement told)
    {
        var kinds = Empty(lines);
        var line = 0;
        foreach (var tokens in told.EnumerateArray())
        {
            foreach (var token in tokens.EnumerateArray())
                Fill(kinds[line], token[0].GetInt32(), token[1].GetInt32(), KindOf(token[2].GetString()!));
            line++;
        }

        return kinds;
    }

    static string KindOf(string scopes) => scopes.Split(' ')[0] switch
    {
        "" or "punctuation.section.expression.nc" => "",
        "punctuation.section.program.nc" or "keyword.control.block-skip.nc" => "mark",
        "support.function.nc" => "function",
        "support.class.feed-speed.nc" or "support.class.tool.nc" => "letter",
        var scope when scope.StartsWith("comment.", StringComparison.Ordinal) => "comment",
        var scope when scope.StartsWith("constant.numeric.", StringComparison.Ordinal) => "number",
        var scope when scope.StartsWith("variable.other.", StringComparison.Ordinal) => "variable",
        var scope when scope.StartsWith("variable.parameter.", StringComparison.Ordinal) => "letter",
        var scope when scope.StartsWith("entity.name.label.", StringComparison.Ordinal) => "label",
        var scope when scope.StartsWith("entity.name.function.", StringComparison.Ordinal) => "program",
        var scope when scope.StartsWith("keyword.operator.", StringComparison.Ordinal) => "operator",
        "keyword.control.flow.nc" => "statement",
        var scope when scope.StartsWith("keyword.", StringComparison.Ordinal) || scope.StartsWith("support.", StringComparison.Ordinal) => "code",
        var scope => scope,
    };

    static string[][] Empty(string[] lines) => [.. lines.Select(line => Enumerable.Repeat("", line.Length).ToArray())];

    static void Fill(string[] kinds, int start, int end, string kind) => kinds.AsSpan(start, Math.Min(end, kinds.Length) - start).Fill(kind);
}
