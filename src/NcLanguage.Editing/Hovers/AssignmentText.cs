using NcLanguage.Checks;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Expressions;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing;

/// <summary>What a setting of a variable leaves.</summary>
static class AssignmentText
{
    public static string Of(in Block block, in Token token, Step step)
    {
        var written = Quote.Text(block.TextOf(token));
        var target = Markdown.Word(written.Split('=')[0].Trim());
        if (NotRunText.Of(block, step) is { Length: > 0 } notRun)
            return $"{target} variable\n\n{notRun}";
        var reader = new Reader(step.Before.Variables);
        var number = Expression.Read(block.Line, token.Start + 1, ref reader).Value;
        var isNumbered = block.Line[token.Start + 1] != '<' && number is >= Expression.FirstVariable and <= Expression.LastVariable;
        var (before, after) = isNumbered
            ? (Value(step.Before.Variables, (int)number), Value(step.After.Variables, (int)number))
            : (double.NaN, double.NaN);
        // A name that is made of other variables also tells which one it is.
        var name = isNumbered && written.AsSpan(1).IndexOfAny('#', '[') >= 0 ? $" (#{(int)number})" : "";
        return $"{target}{name} variable\n\n"
            + (double.IsNaN(after) ? $"Its value is {Lengths.NotKnown}." : $"Becomes {Say.Number(after, 6)}{(double.IsNaN(before) ? "" : $", was {Say.Number(before, 6)}")}.")
            + " It is set when the other words of the block have been read.";
    }

    static double Value(Variables? variables, int number) => variables?.Get(number) ?? double.NaN;

    readonly struct Reader(Variables? variables) : IVariables
    {
        public double Get(int number) => Value(variables, number);

        public double Get(scoped ReadOnlySpan<byte> name) => double.NaN;
    }
}
