using NcLanguage.Checks;
using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing;

/// <summary>A call with its arguments and the variables that they become in the program called.</summary>
static class CallSignature
{
    /// <summary>G65: its own words, the arguments given, and one more letter where the cursor has begun one.</summary>
    public static SignatureLine OfMacro(in Block block, Step step, CodeEntry code, char letter)
    {
        var writer = new SignatureWriter(code.Text);
        var (active, index) = (-1, 0);
        foreach (var use in code.Words)
        {
            var isGiven = step.Words.Has(use.Letter);
            writer.Add(isGiven ? Written(block, step, use.Letter) : use.Need == WordNeed.Required ? use.Letter + "…" : $"[{use.Letter}]",
                use.Meaning + (isGiven || use.Need != WordNeed.Required ? "" : " · needed"));
            if (use.Letter == letter || (active < 0 && letter == 0 && !isGiven && use.Need == WordNeed.Required))
                active = index;
            index++;
        }
        foreach (var argument in CallArguments.Letters)
        {
            if (step.Words.Has(argument) || argument == letter)
                writer.Add(step.Words.Has(argument) ? Written(block, step, argument) : argument + "…", $"becomes #{CallArguments.NumberOf(argument)} in the program called");
            else
                writer.Add($"[{argument}]", $"would become #{CallArguments.NumberOf(argument)} in the program called");
            if (argument == letter || (active < 0 && letter == 0 && !step.Words.Has(argument)))
                active = index;
            index++;
        }
        var variables = string.Join(", ", CallArguments.Letters.Select(argument => $"{argument} #{CallArguments.NumberOf(argument)}"));
        return writer.Line($"{code.Name}. {code.Meaning}\n\nArguments become variables: {variables}.", Math.Max(0, active));
    }

    /// <summary>On CALL […] […]: the values become #1, #2, … in the subroutine.</summary>
    public static SignatureAnswer? OfSubroutine(in Block block, Step step, int column)
    {
        var row = StatementTable.Find("CALL", behindO: true)!;
        var writer = new SignatureWriter(double.IsNaN(step.Transfer.Number) ? "CALL" : $"O{Say.Number(step.Transfer.Number)} CALL");
        var (active, index) = (-1, 0);
        foreach (ref readonly var token in block.Tokens)
        {
            if (token.Kind != TokenKind.Argument)
                continue;
            writer.Add(Quote.Text(block.TextOf(token)), $"becomes #{index + 1} in the subroutine");
            if (token.Start < column && column <= token.End)
                active = index;
            index++;
        }
        writer.Add("[…]", $"would become #{index + 1} in the subroutine");
        return new SignatureAnswer([writer.Line($"{row.Name}. {row.Meaning}", active >= 0 ? active : index)], 0);
    }

    static string Written(in Block block, Step step, char letter) => Quote.Text(block.TextOf(block.Tokens[step.Words.TokenOf(letter)]));
}
