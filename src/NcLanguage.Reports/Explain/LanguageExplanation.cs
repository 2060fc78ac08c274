using NcLanguage.Control.Codes;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Reports.Explain;

/// <summary>Words of the language and ways of reading it.</summary>
static class LanguageExplanation
{
    public static Explanation Of(CodeEntry code)
    {
        List<ExplainedSection> sections =
        [
            new("What the control does", code.Meaning),
            new("How long it holds", code.IsModal ? "Modal: until another code of its group." : "In its own block only."),
        ];
        if (!code.Words.IsEmpty)
            sections.Add(new("Its words", string.Join('\n', code.Words.Select(Word)), IsVerbatim: true));
        if (code.TakesArguments)
            sections.Add(new("Arguments", "Every other letter of the block hands a value to the program that is called."));
        if (code.OnlyUnder is { } reading)
            sections.Add(new("Only where", $"the reading units is {ReadingTable.Find("units")!.Of(new Readings { Units = reading }).Name}"));
        sections.Add(new("Source", code.Source));
        return new Explanation(ExplainedKind.Code, code.Text, code.Name, $"{code.Letter} codes", [.. sections]);
    }

    static string Word(WordUse word)
    {
        var need = word.Need switch
        {
            WordNeed.Required => "needed",
            WordNeed.CarriedOver => "needed once",
            WordNeed.OneOf => "one needed",
            _ => "may be",
        };
        var only = word.OnlyUnder is { } reading ? $" (only where the reading repeats is {reading})" : "";
        return $"{word.Letter}  {need,-11}  {word.Meaning}{Unit(word.Unit)}{only}";
    }

    static string Unit(WordUnit unit) => unit switch
    {
        WordUnit.Length => ", in mm or inch",
        WordUnit.Degrees => ", in degrees",
        WordUnit.Feed => ", in the unit of the feed mode",
        WordUnit.Speed => ", in rev/min",
        WordUnit.Dwell => ", in seconds or milliseconds by the reading dwell",
        _ => "",
    };

    public static Explanation Of(AddressEntry address) => new(
        ExplainedKind.Address, address.Letter.ToString(), address.Name, "Addresses",
        [new("What it says", address.Meaning), new("Source", address.Source)]);

    public static Explanation Of(StatementEntry statement) => new(
        ExplainedKind.Statement, statement.Keyword, $"{statement.Name}: {statement.Form}", "Statements",
        [new("What the control does", statement.Meaning), new("Source", statement.Source)]);

    public static Explanation Of(FunctionEntry function) => new(
        ExplainedKind.Function, function.Text, function.Name, function.IsOperator ? "Operators" : "Functions",
        [
            new("Its value", function.Meaning),
            new("Example", $"{function.Example} is {JsonNumbers.Rounded(function.ExampleValue)}", IsVerbatim: true),
            new("Source", function.Source),
        ]);

    public static Explanation Of(Reading reading) => new(
        ExplainedKind.Reading, reading.Name, reading.Meaning.TrimEnd('.'), "Readings",
        [
            new("Choices", string.Join('\n', reading.Choices.Select(choice => $"{choice.Name}: {choice.Meaning}")), IsVerbatim: true),
            new("At the machine", reading.Consequence),
            new("How to choose", $"--reading {reading.Name}=CHOICE, or among the readings of a machine file."),
        ]);

    public static Explanation Of(ProgramMark mark) => new(
        ExplainedKind.Reading, $"{ProgramMarkTable.Name}.{mark.Name}", mark.Meaning.TrimEnd('.'), "Readings",
        [
            new("Choices", mark.IsTruth ? "true or false" : "a number of characters"),
            new("How to choose", $"--reading {ProgramMarkTable.Name}.{mark.Name}=VALUE, or in {ProgramMarkTable.Name} among the readings of a machine file."),
        ]);
}
