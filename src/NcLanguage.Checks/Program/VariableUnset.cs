using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Expressions;

namespace NcLanguage.Checks.Rules;

/// <summary>A variable that is read before anything has set it.</summary>
public sealed class VariableUnset : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC6036",
        Name = "variable-unset",
        Severity = Severity.Warning,
        Title = "A variable is read that has no value",
        Finds = "A value that reads a variable which nothing has set before, neither the program nor the setup file (\"variables\"). Asking whether it was set (#5 EQ #0) is no such reading. Each variable is told once.",
        AtTheMachine = "Controls take it as 0, or leave the word out, or stop with an alarm; or it holds what another program has left.",
        Example = """
            G21 G90 G17 G54
            G0 X0 Y0 Z50
            G0 X#500
            ~  ^^^^^
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            G0 X0 Y0 Z50
            #500=20
            G0 X#500
            M30
            """,
        NotFound = "Variables that the control fills itself, and names that begin with _.",
        Source = "NISTIR 6556 §3.3.2 takes a variable never set as 0; the rest is common practice.",
    };

    public override StepEvents Interest => StepEvents.Faults;

    public override void CheckStep(in StepContext step)
    {
        foreach (ref readonly var fault in step.Step.Faults.Items)
            if (fault.Kind == FaultKind.VariableUnset)
                step.Report(this, fault.Token, $"{NameOf(fault, step)} has no value here: {Why(fault, step)}. Controls take it as 0, leave the word out or stop.");
    }

    static string Why(in Fault fault, in StepContext step) =>
        step.Step.LineOfArguments >= 0 && CallArguments.LetterOf(fault.A) is var letter and not '\0'
            ? $"the call in line {step.Step.LineOfArguments + 1} gives no {letter}, and nothing else sets it before"
            : "nothing sets it before, and the setup's variables do not give it";

    /// <summary>The variable of a fault as it is written; a fault without a number speaks of the first name in its word that was never set.</summary>
    static string NameOf(in Fault fault, in StepContext step)
    {
        if (!double.IsNaN(fault.A))
            return "#" + Say.Number(fault.A);
        var text = step.Block.TextOf(step.Block.Tokens[fault.Token]);
        while (text.IndexOf("#<"u8) is >= 0 and var open && text[open..].IndexOf((byte)'>') is > 2 and var length)
        {
            var name = Encoding.UTF8.GetString(text[(open + 2)..(open + length)]);
            var key = name.Replace(" ", "", StringComparison.Ordinal).Replace("\t", "", StringComparison.Ordinal).ToLowerInvariant();
            if (!key.StartsWith('_') && Expression.IsVacant((step.Step.Before.Variables ?? Variables.None).Get(key)))
                return $"#<{name.Trim()}>";
            text = text[(open + length)..];
        }
        return "A named variable";
    }
}
