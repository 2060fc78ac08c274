using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Expressions;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing;

/// <summary>What a setting of a variable leaves.</summary>
static class AssignmentText
{
    public static string Of(ProgramAnalysis analysis, in Block block, in Token token, Step step)
    {
        var written = Quote.Text(block.TextOf(token));
        var target = Markdown.Word(written.Split('=')[0].Trim());
        if (NotRunText.Of(block, step) is { Length: > 0 } notRun)
            return $"{target} variable\n\n{notRun}\n\n{Source}";
        var reader = new VariableReader(step.Before, analysis.Setup, analysis.Machine);
        var number = Expression.Read(block.Line, token.Start + 1, ref reader).Value;
        var isNumbered = block.Line[token.Start + 1] != '<' && number is >= Expression.FirstVariable and <= Expression.LastVariable;
        var (before, after) = isNumbered ? (Value(step.Before, (int)number), Value(step.After, (int)number)) : (double.NaN, Named(written, step.After));
        // A name that is made of other variables also tells which one it is.
        var name = isNumbered && written.AsSpan(1).IndexOfAny('#', '[') >= 0 ? $" (#{(int)number})" : "";
        var row = isNumbered ? VariableTable.Find((int)number) : null;
        return $"{target}{name} {row?.NameOf((int)number) ?? "variable"}\n\n"
            + (double.IsNaN(after) ? $"Its value is {Lengths.NotKnown}." : $"Becomes {Say.Number(after, 6)}{(double.IsNaN(before) ? "" : $", was {Say.Number(before, 6)}")}.")
            + $" It is set when the other words of the block have been read.\n\n{Source}";
    }

    static string Source => "Source: " + SignTable.Find("=")!.Source;

    static double Value(in ControlState state, int number) => (state.Variables ?? Variables.None).Get(number);

    static double Named(string written, in ControlState state)
    {
        var (open, close) = (written.IndexOf('<', StringComparison.Ordinal), written.IndexOf('>', StringComparison.Ordinal));
        return open >= 0 && close > open
            ? (state.Variables ?? Variables.None).Get(written[(open + 1)..close].Replace(" ", "", StringComparison.Ordinal).ToLowerInvariant())
            : double.NaN;
    }
}
