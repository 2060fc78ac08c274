using System.Text;

namespace NcLanguage.Reports.Grammars;

/// <summary>The colours of a program as a syntax file of Vim's. What begins at the same place and is named later comes first there.</summary>
static class VimGrammar
{
    const string Number = @"\%(\d\+\.\=\d*\|\.\d\+\)";

    public static string Text()
    {
        var file = new StringBuilder();
        var links = new List<string>();
        file.Append("\" ").Append(Grammar.Written("vim")).Append('\n');
        file.Append("if exists('b:current_syntax')\n  finish\nendif\nsyntax case ignore\n\n");
        Match("Operator", @"\*\*\|[-+*/=]", "Operator");
        Match("Number", Number, "Number");
        Match("Number", $@"\%(\a\s*\)\@<=[-+]{Number}", "Number");
        Match("Variable", @"#\s*\%(\d\+\|<[^>]*>\)\=", "Identifier");
        foreach (var family in WordFamily.OfLetters)
            Match(Name(family), $@"[{family.Letters}]\%(\s*[-+.#[[:digit:]]\)\@=", family.Vim);
        foreach (var family in WordFamily.OfCodes.Reverse())
        {
            foreach (var letter in "GM")
            {
                var numbers = family.Numbers(letter).ToList();
                if (Grammar.TakesTheRest(family, letter))
                    Match(Name(family), $@"{letter}\s*\%(\d\+\%(\.\d*\)\=\|[-+#[]\@=\)", family.Vim);
                else if (numbers.Count > 0)
                    Match(Name(family), $@"{letter}\s*0*\%({Any(numbers.Select(number => number.Replace(".", @"\.", StringComparison.Ordinal)))}\)[0-9.]\@!", family.Vim);
            }
        }
        Match("Function", Word(WordFamily.Functions), "Function");
        Match("WordOperator", Word(WordFamily.WordOperators), "Operator");
        Match("Flow", Word(WordFamily.Statements(behindO: false).Concat(WordFamily.Statements(behindO: true)).Distinct()), "Conditional");
        Match("BlockNumber", @"\a\@<!N\s*\d\+", "Label");
        Match("BlockNumber", @"\%(GOTO\s*\)\@<=\d\+", "Label");
        Match("Program", @"\a\@<![O:]\s*\%(\d\+\|<[^>]*>\)", "Function");
        Match("Skip", @"^\s*/\d\=", "Special");
        Match("Mark", @"^\s*%.*$", "Special");
        file.Append("syntax match ncAllow /\\%((\\s*\\)\\@<=nc-allow\\s\\+[[:alnum:]-]\\+/ contained\n");
        file.Append("syntax match ncComment /([^)]*\\%()\\|$\\)/ contains=ncAllow,@Spell\n");
        file.Append("syntax match ncComment /;.*$/ contains=@Spell\n\n");
        links.Add("highlight default link ncAllow SpecialComment");
        links.Add("highlight default link ncComment Comment");
        foreach (var link in links.Distinct())
            file.Append(link).Append('\n');
        file.Append("\nlet b:current_syntax = 'nc'\n");
        return file.ToString();

        void Match(string name, string pattern, string group)
        {
            // The sign that ends a pattern may stand in it behind a backslash.
            file.Append("syntax match nc").Append(name).Append(" /").Append(pattern.Replace("/", @"\/", StringComparison.Ordinal)).Append("/\n");
            links.Add($"highlight default link nc{name} {group}");
        }
    }

    static string Name(WordFamily family) => family.Kind.ToString();

    static string Any(IEnumerable<string> words) => string.Join(@"\|", words);

    static string Word(IEnumerable<string> words) => $@"\a\@<!\%({Any(words)}\)\a\@!";
}
