using NcLanguage.Checks;
using NcLanguage.Control.Codes;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Editing;

/// <summary>The documentation of what completion offers, by a topic that an editor hands back when somebody looks at an entry. It comes from the
/// tables alone: whatever became of the text meanwhile, it still holds.</summary>
public static class CompletionTopics
{
    /// <param name="repeats">The reading in force: it tells which of the words that count repeats the code takes.</param>
    internal static string OfCode(CodeEntry code, RepeatReading repeats) => $"code {code.Text} {repeats}";

    internal static string OfWord(CodeEntry code, char letter) => $"word {letter} {code.Text}";

    internal static string OfAddress(char letter) => "address " + letter;

    internal static string OfFunction(string text) => "function " + text;

    internal static string OfStatement(StatementEntry row) => (row.BehindO ? "statementO " : "statement ") + row.Keyword;

    internal static string OfVariable(string name) => "variable " + name;

    internal static string OfRule(RuleInfo rule) => "rule " + rule.Name;

    /// <summary>The Markdown of a topic; null for one that there is none of.</summary>
    public static string? Documentation(string topic)
    {
        ArgumentNullException.ThrowIfNull(topic);
        var blank = topic.IndexOf(' ', StringComparison.Ordinal);
        if (blank < 0)
            return null;
        var name = topic[(blank + 1)..];
        return topic[..blank] switch
        {
            "code" => name.Split(' ') is [var text, var repeats] && CodeTable.Find(text) is { } code && Enum.TryParse<RepeatReading>(repeats, out var reading) ? OfCodeText(code, reading) : null,
            "word" => name.Length > 2 && CodeTable.Find(name[2..]) is { } owner ? OfWordText(owner, name[0]) : null,
            "address" => name.Length == 1 && AddressTable.Find(name[0]) is { } address ? $"{address.Meaning}\n\nSource: {address.Source}" : null,
            "function" => FunctionTable.Find(name) is { } row ? $"{row.Meaning}\n\n`{row.Example}` is {Say.Number(row.ExampleValue, 6)}.\n\nSource: {row.Source}" : null,
            "statement" => StatementTable.Find(name, behindO: false) is { } plain ? OfStatementText(plain) : null,
            "statementO" => StatementTable.Find(name, behindO: true) is { } numbered ? OfStatementText(numbered) : null,
            "variable" => OfVariableText(name),
            "rule" => RuleList.Find(name) is { } rule ? $"**{rule.Info.Id}** {rule.Info.Title}\n\n{rule.Info.Finds}\n\n{rule.Info.AtTheMachine}" : null,
            _ => null,
        };
    }

    static string OfCodeText(CodeEntry code, RepeatReading repeats)
    {
        var words = code.Words.Where(use => use.OnlyUnder is null || use.OnlyUnder == repeats).Select(use => $"{CodeSignature.Named(use)}{(use.Need is WordNeed.Required or WordNeed.CarriedOver ? " (needed)" : "")}").Distinct();
        var takes = code.Words.IsEmpty ? "" : $"\n\nTakes {string.Join("; ", words)}.";
        return $"{code.Meaning}{CodeHover.HowLong(code)}{takes}\n\nSource: {code.Source}";
    }

    static string? OfWordText(CodeEntry code, char letter)
    {
        // In XZ and YZ another axis stands in the place of Z: the letter's own meaning holds in every plane.
        var use = code.Words.FirstOrDefault(word => word.Letter == letter);
        if (AddressTable.Find(letter) is not { } address)
            return null;
        return $"{(use is null ? address.Name : use.Meaning)}, a word of {code.Text} {code.Name}.\n\n{address.Meaning}\n\nSource: {code.Source}";
    }

    static string OfStatementText(StatementEntry row) => $"`{row.Form}`\n\n{row.Meaning}\n\nSource: {row.Source}";

    static string OfVariableText(string name)
    {
        var row = int.TryParse(name.AsSpan().TrimStart('#'), out var number) ? VariableTable.Find(number) : null;
        var sign = SignTable.Find(row is null ? "#<name>" : "#")!;
        return row is null ? $"{sign.Meaning}\n\nSource: {sign.Source}" : $"{row.NameOf(number)}: {row.Meaning}\n\nSource: {row.Source}";
    }
}
