using System.Text;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing;

/// <summary>A code with its words as they stand in the block.</summary>
static class CodeSignature
{
    public static SignatureLine Of(ProgramAnalysis analysis, int line, in Block block, Step step, CodeEntry code, char letter)
    {
        var facts = CodeWords.Of(analysis, line, step, code);
        var writer = new SignatureWriter(code.Text);
        foreach (var fact in facts)
            writer.Add(Shown(block, step, fact), fact.Describe(analysis, step.After));
        var active = facts.FindIndex(fact => fact.Use.Letter == letter);
        return writer.Line(Documentation(code, facts), active >= 0 ? active : Next(facts));
    }

    /// <summary>The first word that is missing, else the first that could still be given.</summary>
    static int Next(List<CodeWordFact> facts)
    {
        var missing = facts.FindIndex(fact => fact.Standing == WordStanding.Missing);
        return missing >= 0 ? missing : Math.Max(0, facts.FindIndex(fact => fact.Standing is WordStanding.Free or WordStanding.Carried));
    }

    static string Shown(in Block block, Step step, in CodeWordFact fact) => fact.Standing switch
    {
        WordStanding.Given => Quote.Text(block.TextOf(block.Tokens[step.Words.TokenOf(fact.Use.Letter)])),
        WordStanding.Carried => $"({fact.Carried})",
        WordStanding.Missing => fact.Use.Letter + "…",
        _ => $"[{fact.Use.Letter}]",
    };

    static string Documentation(CodeEntry code, List<CodeWordFact> facts)
    {
        var text = new StringBuilder(code.Name).Append(". ").Append(code.Meaning);
        List(text, "Still missing", facts.Where(fact => fact is { Standing: WordStanding.Missing, Use.Need: not WordNeed.OneOf }).Select(fact => Named(fact.Use)), "; ");
        List(text, "One of these is needed", facts.Where(fact => fact is { Standing: WordStanding.Missing, Use.Need: WordNeed.OneOf }).Select(fact => Named(fact.Use)), "; ");
        List(text, "Carried over", facts.Where(fact => fact.Standing == WordStanding.Carried).Select(fact => fact.Carried + (fact.SetLine >= 0 ? $" (line {fact.SetLine + 1})" : "")), ", ");
        return text.ToString();
    }

    /// <summary>Z bottom of the hole; a meaning that begins with the letter itself as it is: R level, where the feed begins.</summary>
    public static string Named(WordUse use) => use.Meaning.StartsWith(use.Letter + " ", StringComparison.Ordinal) ? use.Meaning : $"{use.Letter} {use.Meaning}";

    static void List(StringBuilder text, string title, IEnumerable<string> items, string between)
    {
        var joined = string.Join(between, items);
        if (joined.Length > 0)
            text.Append("\n\n").Append(title).Append(": ").Append(joined).Append('.');
    }
}
