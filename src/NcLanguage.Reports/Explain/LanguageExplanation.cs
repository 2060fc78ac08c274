using NcLanguage.Control.Codes;

namespace NcLanguage.Reports.Explain;

/// <summary>Words and signs of the language.</summary>
static class LanguageExplanation
{
    public static Explanation Of(AddressEntry address)
    {
        List<ExplainedSection> sections = [new("What it says", address.Meaning)];
        if (UnitText.Of(address.Unit, address.Letter) is { Length: > 0 } unit)
            sections.Add(new("Unit", $"{char.ToUpperInvariant(unit[0])}{unit[1..]}."));
        sections.Add(new("Source", address.Source + "."));
        return new(ExplainedKind.Address, address.Letter.ToString(), address.Name, "Addresses", "address-" + address.Letter, [.. sections]);
    }

    public static Explanation Of(StatementEntry statement) => new(
        ExplainedKind.Statement, statement.Keyword, $"{statement.Name}: {statement.Form}",
        statement.BehindO ? "Statements behind an O word" : "Statements",
        (statement.BehindO ? "statement-O-" : "statement-") + statement.Keyword,
        [
            new("What the control does", statement.Meaning),
            new("How it is written", statement.Form, IsVerbatim: true),
            new("Source", Sentence(statement.Source)),
        ]);

    public static Explanation Of(FunctionEntry function)
    {
        List<ExplainedSection> sections =
        [
            new("Its value", function.Meaning),
            new("Example", $"{function.Example} is {JsonNumbers.Rounded(function.ExampleValue)}", IsVerbatim: true),
        ];
        if (function.IsOperator)
            sections.Add(new("What goes first", RankText(function)));
        sections.Add(new("Source", Sentence(function.Source)));
        return function.IsOperator
            ? new(ExplainedKind.Function, function.Text, function.Name, "Operators", "operator-" + Slug.Of(function.Name), [.. sections])
            : new(ExplainedKind.Function, function.Text, function.Name, "Functions", "function-" + function.Text, [.. sections]);
    }

    static string RankText(FunctionEntry function)
    {
        var before = Ranked(rank => rank > function.Rank);
        var after = Ranked(rank => rank < function.Rank);
        return (before.Length > 0 ? $"Carried out after {before}. " : "Carried out first. ")
            + (after.Length > 0 ? $"Carried out before {after}. " : "")
            + "Among its equals from left to right; brackets go before all.";
    }

    static string Ranked(Func<int, bool> isWanted) =>
        string.Join(" ", FunctionTable.All.Where(row => row.IsOperator && isWanted(row.Rank)).Select(row => row.Text));

    public static Explanation Of(VariableEntry variable) => new(
        ExplainedKind.Variable, variable.Text, variable.Name, "Variables", $"variable-{variable.First}",
        [
            new(variable.First == variable.Last ? "What it holds" : "What each holds", variable.Meaning),
            .. variable.IsByAxis ? [new ExplainedSection("Which is which", "One for each axis, in the order X Y Z A B C.")] : Array.Empty<ExplainedSection>(),
            new("Source", Sentence(variable.Source)),
        ]);

    public static Explanation Of(SignEntry sign) => new(
        ExplainedKind.Sign, sign.Text, sign.Name, "Signs", "sign-" + Slug.Of(sign.Name),
        [new("What the control makes of it", sign.Meaning), new("Source", Sentence(sign.Source))])
    {
        AlsoFoundBy = [.. sign.Text.Split(' '), sign.Text.Replace(" ", "", StringComparison.Ordinal), sign.Text.Replace("<", "", StringComparison.Ordinal).Replace(">", "", StringComparison.Ordinal)],
    };

    static string Sentence(string source) => source + ".";
}
