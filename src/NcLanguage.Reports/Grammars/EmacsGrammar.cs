using System.Text;

namespace NcLanguage.Reports.Grammars;

/// <summary>The colours of a program as a list for Emacs' font-lock. The first to match a place has it; the first group is what is coloured.</summary>
static class EmacsGrammar
{
    public static string Text()
    {
        var file = new StringBuilder();
        file.Append(";;; nc-words.el --- Colours of NC programs  -*- lexical-binding: t -*-\n\n;; ").Append(Grammar.Written("emacs")).Append("\n\n;;; Code:\n\n");
        file.Append("(defconst nc-words\n  '(");
        Row(@"\(([^)\n]*\(?:)\|$\)\)", "comment");
        Row(@"\(;.*\)$", "comment");
        Row(@"^[ \t]*\(%.*\)$", "preprocessor");
        Row(@"^[ \t]*\(/[0-9]?\)", "preprocessor");
        Row(@"\(?:^\|[^A-Z]\)\([O:][ \t]*\(?:[0-9]+\|<[^>\n]*>\)\)", "function-name");
        Row(@"\(?:^\|[^A-Z#<]\)\(N[ \t]*[0-9]+\)", "constant");
        Row(@"GOTO[ \t]*\([0-9]+\)", "constant");
        Row(@"\(#[ \t]*\(?:[0-9]+\|<[^>\n]*>\)?\)", "variable-name");
        Row(Word(WordFamily.Statements(behindO: false).Concat(WordFamily.Statements(behindO: true)).Distinct()), "keyword");
        Row(Word(WordFamily.WordOperators), "builtin");
        Row(Word(WordFamily.Functions), "function-name");
        foreach (var family in WordFamily.OfCodes)
        {
            foreach (var letter in "GM")
            {
                var numbers = family.Numbers(letter).ToList();
                if (Grammar.TakesTheRest(family, letter))
                    Row($@"\({letter}[ \t]*[0-9]+\(?:\.[0-9]*\)?\)", family.Emacs);
                else if (numbers.Count > 0)
                    Row($@"\({letter}[ \t]*0*\(?:{Any(numbers.Select(number => number.Replace(".", @"\.", StringComparison.Ordinal)))}\)\)\(?:[^0-9.]\|$\)", family.Emacs);
            }
        }
        foreach (var family in WordFamily.OfLetters)
            Row($@"\([{family.Letters}]\)[ \t]*[-+.#[0-9]", family.Emacs);
        Row(@"\([0-9]+\.?[0-9]*\|\.[0-9]+\)", "constant");
        file.Append(")\n  \"Patterns of an NC program, each with the face of its first group.\")\n\n(provide 'nc-words)\n;;; nc-words.el ends here\n");
        return file.ToString();

        void Row(string pattern, string face)
        {
            if (file[^1] != '(')
                file.Append("\n    ");
            // The reader of Lisp takes one backslash of two; of \n and \t it makes the signs themselves.
            var text = pattern.Replace(@"\n", "\n", StringComparison.Ordinal).Replace(@"\t", "\t", StringComparison.Ordinal)
                .Replace(@"\", @"\\", StringComparison.Ordinal).Replace("\n", @"\n", StringComparison.Ordinal).Replace("\t", @"\t", StringComparison.Ordinal);
            file.Append("(\"").Append(text).Append("\" . font-lock-").Append(face).Append("-face)");
        }
    }

    static string Any(IEnumerable<string> words) => string.Join(@"\|", words);

    static string Word(IEnumerable<string> words) => $@"\(?:^\|[^A-Z]\)\({Any(words.OrderByDescending(word => word.Length))}\)\(?:[^A-Z]\|$\)";
}
