using System.Security;
using System.Text;

namespace NcLanguage.Reports.Grammars;

/// <summary>The colours of a program as a syntax definition of Kate's. The first rule that matches at a place has it.</summary>
static class KateGrammar
{
    const string Number = @"[+-]?(?:\d+\.?\d*|\.\d+)";

    public static string Text()
    {
        var file = new StringBuilder();
        var endings = string.Join(';', Grammar.Endings.Select(ending => "*." + ending));
        file.Append("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<!DOCTYPE language>\n<!-- ").Append(Grammar.Written("kate")).Append(" -->\n");
        file.Append($"<language name=\"{Grammar.Language}\" section=\"Other\" version=\"1\" kateversion=\"5.79\" extensions=\"{endings}\" priority=\"10\" casesensitive=\"0\" license=\"MIT\">\n");
        file.Append("  <highlighting>\n    <contexts>\n      <context name=\"block\" attribute=\"text\" lineEndContext=\"#stay\">\n");
        Rule("mark", @"^\s*%.*$");
        Rule("skip", @"^\s*/\d?");
        Rule("comment", @"\([^)]*(?:\)|$)");
        Rule("comment", ";.*$");
        Rule("program", @"(?<![A-Za-z])[O:]\s*(?:\d+|<[^>]*>)");
        Rule("blockNumber", @"(?<![A-Za-z#<])N\s*\d+");
        Rule("flow", Word(WordFamily.Statements(behindO: false).Concat(WordFamily.Statements(behindO: true)).Distinct()));
        Rule("wordOperator", Word(WordFamily.WordOperators));
        Rule("function", Word(WordFamily.Functions));
        foreach (var family in WordFamily.OfCodes)
        {
            foreach (var letter in "GM")
            {
                var numbers = family.Numbers(letter).ToList();
                if (Grammar.TakesTheRest(family, letter))
                    Rule(family.Name, $@"{letter}\s*(?:\d+(?:\.\d*)?|(?=[-+#\[]))");
                else if (numbers.Count > 0)
                    Rule(family.Name, $@"{letter}\s*0*(?:{string.Join('|', numbers.Select(number => number.Replace(".", @"\.", StringComparison.Ordinal)))})(?![\d.])");
            }
        }
        foreach (var family in WordFamily.OfLetters)
            Rule(family.Name, $@"[{family.Letters}](?=\s*[-+.#\[\d])");
        Rule("number", $@"(?<=[A-Za-z]){Number}");
        Rule("number", @"\d+\.?\d*|\.\d+");
        Rule("variable", @"#\s*(?:\d+|<[^>]*>)?");
        Rule("operator", @"\*\*|[-+*/=]");
        file.Append("      </context>\n    </contexts>\n    <itemDatas>\n");
        (string Name, string Style)[] styles =
        [
            ("text", "dsNormal"), ("mark", "dsRegionMarker"), ("skip", "dsRegionMarker"), ("comment", "dsComment"), ("program", "dsFunction"),
            ("blockNumber", "dsAnnotation"), ("flow", "dsControlFlow"), ("wordOperator", "dsOperator"), ("function", "dsFunction"),
            .. WordFamily.All.Select(family => (family.Name, family.Kate)),
            ("number", "dsDecVal"), ("variable", "dsVariable"), ("operator", "dsOperator"),
        ];
        foreach (var (name, style) in styles)
            file.Append($"      <itemData name=\"{name}\" defStyleNum=\"{style}\"{(name == "comment" ? "" : " spellChecking=\"0\"")}/>\n");
        file.Append("    </itemDatas>\n  </highlighting>\n  <general>\n    <comments>\n      <comment name=\"singleLine\" start=\";\"/>\n");
        file.Append("      <comment name=\"multiLine\" start=\"(\" end=\")\"/>\n    </comments>\n  </general>\n</language>\n");
        return file.ToString();

        void Rule(string attribute, string pattern) =>
            file.Append($"        <RegExpr attribute=\"{attribute}\" context=\"#stay\" String=\"{SecurityElement.Escape(pattern)}\" insensitive=\"1\"/>\n");
    }

    static string Word(IEnumerable<string> words) => $"(?<![A-Za-z])(?:{string.Join('|', words)})(?![A-Za-z])";
}
