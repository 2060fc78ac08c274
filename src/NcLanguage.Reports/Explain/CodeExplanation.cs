using NcLanguage.Control.Codes;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Reports.Explain;

/// <summary>G and M codes.</summary>
static class CodeExplanation
{
    /// <summary>The longest way to say whether a word is needed.</summary>
    const int NeedWidth = 11;

    public static Explanation Of(CodeEntry code)
    {
        List<ExplainedSection> sections =
        [
            new("What the control does", code.Meaning),
            new("How long it holds", HowLong(code)),
        ];
        if (!code.Words.IsEmpty)
            sections.Add(new("Its words", string.Join('\n', code.Words.Select(Word)), IsVerbatim: true, Hang: 1 + 2 + NeedWidth + 2));
        if (code.TakesArguments)
            sections.Add(new("Arguments", "Every other letter of the block hands a value to the program that is called, which reads it there as: "
                + string.Join(", ", CallArguments.Letters.Select(letter => $"{letter} #{CallArguments.NumberOf(letter)}")) + "."));
        if (code.OnlyUnder is { } reading)
            sections.Add(new("Only where", $"The reading units is {ReadingTable.Find("units")!.Of(new Readings { Units = reading }).Name}."));
        sections.Add(new("Source", code.Source + "."));
        return new Explanation(ExplainedKind.Code, code.Text, code.Name, $"{code.Letter} codes", code.Text, [.. sections])
        {
            SeeAlso = code.IsModal ? [.. CodeTable.All.Where(other => other.Group == code.Group && other != code).Select(other => other.Text)] : [],
        };
    }

    static string HowLong(CodeEntry code) => code switch
    {
        { Until: { } until } => $"{char.ToUpperInvariant(until[0])}{until[1..]}.",
        { IsModal: true } => "Modal: until another code of its group.",
        _ => "In its own block only.",
    };

    static string Word(WordUse word)
    {
        var need = word.Need switch
        {
            WordNeed.Required => "needed",
            WordNeed.CarriedOver => "needed once",
            WordNeed.OneOf => "one needed",
            _ => "optional",
        };
        var only = word.OnlyUnder is { } reading ? $" (only where the reading repeats is {reading})" : "";
        return $"{word.Letter}  {need,-NeedWidth}  {word.Meaning}{(UnitText.Of(word.Unit, word.Letter) is { Length: > 0 } unit ? ", " + unit : "")}{only}";
    }
}
