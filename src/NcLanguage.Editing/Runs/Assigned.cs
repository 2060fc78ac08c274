using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing;

/// <summary>The variable that a setting sets, and its values.</summary>
static class Assigned
{
    /// <summary>#3, #[#1+2] or #&lt;depth&gt;, as written.</summary>
    public static string Target(in Block block, in Token token) => Quote.Text(block.TextOf(token)).Split('=')[0].Trim();

    /// <summary>Its number; −1 for a named one and where not known.</summary>
    public static int Number(ProgramAnalysis analysis, in Block block, in Token token, Step step)
    {
        var reader = new VariableReader(step.Before, analysis.Setup, analysis.Machine);
        return AssignedVariable.NameOf(block, token) is null ? AssignedVariable.NumberOf(block, token, ref reader) : -1;
    }

    /// <summary>What the block leaves in it; NaN where not known.</summary>
    public static double ValueAfter(ProgramAnalysis analysis, in Block block, in Token token, Step step) =>
        AssignedVariable.NameOf(block, token) is { } name ? (step.After.Variables ?? Variables.None).Get(name)
        : Number(analysis, block, token, step) is >= 0 and var number ? Value(analysis, step.After, number)
        : double.NaN;

    /// <summary>The value of a numbered variable, where it holds a datum too.</summary>
    public static double Value(ProgramAnalysis analysis, in ControlState state, int number) =>
        new VariableReader(state, analysis.Setup, analysis.Machine).Get(number);
}
