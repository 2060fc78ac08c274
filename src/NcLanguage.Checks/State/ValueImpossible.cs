using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Syntax.Expressions;

namespace NcLanguage.Checks.Rules;

/// <summary>A value that no number comes of with what its variables hold.</summary>
public sealed class ValueImpossible : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2032",
        Name = "value-impossible",
        Severity = Severity.Error,
        Title = "No number comes of an expression with what its variables hold",
        Finds = "A word, a setting or a condition whose value does not exist with what its variables hold at this block: a division by 0, the root of a number below 0, "
            + "a variable whose number there is not.",
        AtTheMachine = "The control stops at the block with an alarm, in the midst of the part.",
        Example = """
            G21 G90 G17 G54
            #1=0
            G0 X[60/#1]
            ~  ^^^^^^^^
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            #1=4
            G0 X[60/#1]
            M30
            """,
        NotFound = "Values of variables that are not known here, words behind a THEN, and the number of a variable that is set (#[…]=…).",
        Source = "NISTIR 6556 §3.3.2.",
    };

    public override StepEvents Interest => StepEvents.Faults;

    public override void CheckStep(in StepContext step)
    {
        foreach (ref readonly var fault in step.Step.Faults.Items)
            if (fault.Kind == FaultKind.ValueImpossible)
                step.Report(this, fault.Token, Message((ExpressionError)(int)fault.A));
    }

    static string Message(ExpressionError error) => error switch
    {
        ExpressionError.DivisionByZero => "With what the variables hold here this divides by 0: the control stops with an alarm.",
        ExpressionError.OutsideDomain => "With what the variables hold here the function has no value: the control stops with an alarm.",
        ExpressionError.ResultTooLarge => "With what the variables hold here the result is larger than any number a control can hold.",
        ExpressionError.VariableNotWhole => "With what the variables hold here this asks for a variable whose number is not whole: the control stops with an alarm.",
        _ => $"With what the variables hold here this asks for a variable that there is not: their numbers go from {Expression.FirstVariable} to {Expression.LastVariable}.",
    };
}
