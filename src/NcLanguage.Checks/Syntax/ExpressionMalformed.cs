using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;
using NcLanguage.Syntax.Expressions;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Checks.Rules;

/// <summary>An expression that cannot be read or has no value.</summary>
public sealed class ExpressionMalformed : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC1012",
        Name = "expression-malformed",
        Severity = Severity.Error,
        Title = "An expression cannot be read",
        Finds = "An expression or variable whose form is wrong, and one whose value does not exist, such as a division by 0.",
        AtTheMachine = "The control stops at the block with an alarm.",
        Example = """
            G21 G90 G17 G54
            G0 X[10+2
            ~   ^^^^^
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            G0 X[10+2]
            M30
            """,
        NotFound = "Values that go wrong only with what a variable holds when the program runs: value-impossible.",
        Source = "NISTIR 6556 §3.3.2.",
    };

    public override StepEvents Interest => StepEvents.OddText;

    public override void CheckStep(in StepContext step)
    {
        if (!step.IsRun)
            return;
        foreach (ref readonly var token in step.Block.Tokens)
        {
            if (!token.IsMalformed || !token.IsExpression)
                continue;
            var nothingKnown = default(UnknownVariables);
            var read = token.Kind == TokenKind.Assignment ? Expression.ReadSetting(step.Block.Line, token.ValueStart, ref nothingKnown) : Expression.Read(step.Block.Line, token.ValueStart, ref nothingKnown);
            var at = read.ErrorAt;
            step.Report(this, at >= token.Start && at < token.End ? (at, token.End) : (token.Start, token.End), Message(token.Error, NameAt(step.Block.Line, at), IsEmptyVariable(step.Block.Line, at)));
        }
    }

    static string NameAt(ReadOnlySpan<byte> line, int at)
    {
        var end = Math.Clamp(at, 0, line.Length);
        var start = end;
        while (end < line.Length && char.IsAsciiLetter((char)line[end]))
            end++;
        return end == start ? "of this name" : Encoding.ASCII.GetString(line[start..end]).ToUpperInvariant();
    }

    /// <summary>True where #0 stands.</summary>
    static bool IsEmptyVariable(ReadOnlySpan<byte> line, int at)
    {
        if (at < 0 || at >= line.Length || line[at] != '#')
            return false;
        var number = line[(at + 1)..].TrimStart(" \t"u8);
        var end = number.IndexOfAnyExcept((byte)'0');
        return end != 0 && number.Length > 0 && (end < 0 || number[end] is not (>= (byte)'1' and <= (byte)'9' or (byte)'.'));
    }

    static string Message(ExpressionError error, string name, bool isEmptyVariable) => error switch
    {
        ExpressionError.MissingOperand => "A value is missing here: the control stops with an alarm.",
        ExpressionError.MissingOperator => "Between two values an operator is missing: the control stops with an alarm.",
        ExpressionError.UnclosedBracket => "This bracket is not closed: the control stops with an alarm.",
        ExpressionError.UnexpectedCharacter => "This character has no part in an expression: the control stops with an alarm.",
        ExpressionError.NumberMalformed => "This number cannot be read: two points, no digit, or too large.",
        ExpressionError.UnknownFunction => $"There is no function {name}: the control stops with an alarm.",
        // SINN begins as SIN does, and is none either.
        ExpressionError.FunctionWithoutBracket when FunctionTable.Find(name) is null => $"There is no function {name}: the control stops with an alarm.",
        ExpressionError.FunctionWithoutBracket => "What a function works on stands in square brackets, which are missing here.",
        ExpressionError.AtanWithoutSecond => "ATAN takes two values, as in ATAN[1]/[2]: the second is missing.",
        ExpressionError.DivisionByZero => "This divides by 0: the control stops with an alarm.",
        ExpressionError.OutsideDomain => "The function has no value for this number: the control stops with an alarm.",
        ExpressionError.ResultTooLarge => "The result is larger than any number a control can hold.",
        ExpressionError.VariableNotWhole => "The number of a variable is a whole number.",
        ExpressionError.VariableOutOfRange when isEmptyVariable => "#0 is always empty and gives no word a number: it stands in comparisons (#5 EQ #0) and settings (#5=#0) only.",
        ExpressionError.VariableOutOfRange => $"There is no variable of this number: they go from #{Expression.FirstVariable} to #{Expression.LastVariable}.",
        ExpressionError.VariableNameMalformed => "The name of a variable stands between < and >.",
        _ => $"More than {Expression.DeepestNesting} brackets within each other are not read.",
    };
}
