using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Expressions;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing;

/// <summary>The variable that a setting sets, and its values.</summary>
static class Assigned
{
    /// <summary>#3, #[#1+2] or #&lt;depth&gt;, as written.</summary>
    public static string Target(in Block block, in Token token) => Quote.Text(block.TextOf(token)).Split('=')[0].Trim();

    /// <summary>Its number; NaN for a named one and where not known.</summary>
    public static double Number(ProgramAnalysis analysis, in Block block, in Token token, Step step)
    {
        if (block.Line[token.Start + 1] == '<')
            return double.NaN;
        var reader = new VariableReader(step.Before, analysis.Setup, analysis.Machine);
        return Expression.Read(block.Line, token.Start + 1, ref reader).Value is var number and >= Expression.FirstVariable and <= Expression.LastVariable ? number : double.NaN;
    }

    /// <summary>What the block leaves in it; NaN where not known.</summary>
    public static double ValueAfter(ProgramAnalysis analysis, in Block block, in Token token, Step step) =>
        Number(analysis, block, token, step) is var number && !double.IsNaN(number) ? Value(analysis, step.After, (int)number) : Named(Quote.Text(block.TextOf(token)), step.After);

    /// <summary>The value of a numbered variable, where it holds a datum too.</summary>
    public static double Value(ProgramAnalysis analysis, in ControlState state, int number) =>
        new VariableReader(state, analysis.Setup, analysis.Machine).Get(number);

    static double Named(string written, in ControlState state)
    {
        var (open, close) = (written.IndexOf('<', StringComparison.Ordinal), written.IndexOf('>', StringComparison.Ordinal));
        return open >= 0 && close > open
            ? (state.Variables ?? Variables.None).Get(written[(open + 1)..close].Replace(" ", "", StringComparison.Ordinal).ToLowerInvariant())
            : double.NaN;
    }
}
