using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace NcLanguage.Reports.Grammars;

/// <summary>The colours of a program as a TextMate grammar, in JSON. Its regular expressions are Oniguruma's.</summary>
static class TextMateGrammar
{
    const string Number = @"[+-]?(?:\d+\.?\d*|\.\d+)";

    /// <summary>Not within a longer word.</summary>
    const string Before = "(?<![A-Za-z])";

    /// <summary>What is tried first at a place.</summary>
    static readonly string[] Order = ["mark", "skip", "comment", "program", "block-number", "statement", "code", "address", "operand"];

    public static string Text()
    {
        var grammar = new JsonObject
        {
            ["information_for_contributors"] = new JsonArray(Grammar.Written("textmate")),
            ["name"] = Grammar.Language,
            ["scopeName"] = "source.nc",
            ["fileTypes"] = Array(Grammar.Endings.Select(ending => (JsonNode)ending)),
            ["patterns"] = Array(Order.Select(name => (JsonNode)new JsonObject { ["include"] = "#" + name })),
            ["repository"] = new JsonObject
            {
                ["mark"] = Match(@"^\s*%.*$", "punctuation.section.program"),
                ["skip"] = Match(@"^\s*/\d?", "keyword.control.block-skip"),
                ["comment"] = Patterns(
                    Match(@"(?i)(\()(nc-allow)\s+([\w-]+)(:)?([^)]*)(\)|$)", "comment.block",
                        (1, "punctuation.definition.comment.begin"), (2, "keyword.other.allow"), (3, "entity.name.tag.finding"), (6, "punctuation.definition.comment.end")),
                    Match(@"(\()[^)]*(\)|$)", "comment.block", (1, "punctuation.definition.comment.begin"), (2, "punctuation.definition.comment.end")),
                    Match("(;).*$", "comment.line.semicolon", (1, "punctuation.definition.comment"))),
                ["program"] = Patterns(
                    Match($@"(?i){Before}(O\s*(?:\d+|<[^>]*>))\s*({Any(WordFamily.Statements(behindO: true))})(?![A-Z])", null,
                        (1, "entity.name.function"), (2, "keyword.control.flow")),
                    Match($@"(?i){Before}[O:]\s*(?:\d+|<[^>]*>)", "entity.name.function.program")),
                ["block-number"] = Match($@"(?i){Before}(?<![#<])N\s*\d+", "entity.name.label.block-number"),
                ["statement"] = Patterns(
                    Match($@"(?i){Before}(GOTO)\s*(\d+)", null, (1, "keyword.control.flow"), (2, "entity.name.label.block-number")),
                    Match($@"(?i){Before}(?:{Any(WordFamily.Statements(behindO: false))})(?![A-Z])", "keyword.control.flow"),
                    Match($@"(?i){Before}(?:{Any(WordFamily.WordOperators)})(?![A-Z])", "keyword.operator.word"),
                    Match($@"(?i){Before}(?:{Any(WordFamily.Functions)})(?=\s*\[)", "support.function")),
                ["code"] = Patterns([.. WordFamily.OfCodes.SelectMany(Codes)]),
                ["address"] = Patterns([.. WordFamily.OfLetters.Select(Letters)]),
                ["operand"] = Patterns(
                    Match(@"#\s*(?:\d+|<[^>]*>)?", "variable.other"),
                    Match(@"[\[\]]", "punctuation.section.expression"),
                    Match(@"\*\*|[-+*/]", "keyword.operator.arithmetic"),
                    Match("=", "keyword.operator.assignment"),
                    Match(@"\d+\.?\d*|\.\d+", "constant.numeric")),
            },
        };
        using var written = new MemoryStream();
        // The file is no part of a web page: signs may stand as they are.
        using (var json = new Utf8JsonWriter(written, new JsonWriterOptions { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, NewLine = "\n" }))
            grammar.WriteTo(json);
        return Encoding.UTF8.GetString(written.ToArray()) + "\n";
    }

    static IEnumerable<JsonNode> Codes(WordFamily family)
    {
        foreach (var letter in "GM")
        {
            var numbers = family.Numbers(letter).ToList();
            if (Grammar.TakesTheRest(family, letter))
                yield return Match($@"(?i){letter}\s*(?:\d+(?:\.\d*)?|(?=[-+#\[]))", family.Scope);
            else if (numbers.Count > 0)
                yield return Match($@"(?i){letter}\s*0*(?:{Any(numbers.Select(number => number.Replace(".", @"\.", StringComparison.Ordinal)))})(?![\d.])", family.Scope);
        }
    }

    static JsonNode Letters(WordFamily family) => Match($@"(?i)([{family.Letters}])\s*(?:({Number})|(?=[-+#\[]))", null,
        (1, family.Scope), (2, "constant.numeric." + family.Scope[(family.Scope.LastIndexOf('.') + 1)..]));

    static string Any(IEnumerable<string> words) => string.Join('|', words);

    static JsonObject Match(string pattern, string? scope, params (int Group, string Scope)[] captures)
    {
        var match = new JsonObject { ["match"] = pattern };
        if (scope is not null)
            match["name"] = scope + ".nc";
        if (captures.Length > 0)
            match["captures"] = new JsonObject(captures.Select(capture =>
                KeyValuePair.Create(capture.Group.ToString(System.Globalization.CultureInfo.InvariantCulture), (JsonNode?)new JsonObject { ["name"] = capture.Scope + ".nc" })));
        return match;
    }

    static JsonObject Patterns(params JsonNode[] patterns) => new() { ["patterns"] = Array(patterns) };

    static JsonArray Array(IEnumerable<JsonNode> nodes) => new([.. nodes]);
}
