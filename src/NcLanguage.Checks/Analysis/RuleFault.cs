namespace NcLanguage.Checks.Analysis;

/// <summary>A rule that throws takes no other finding away: in its place stands a finding that says what was not checked.</summary>
static class RuleFault
{
    /// <summary>True for what is the rule's own fault, not the wish to stop.</summary>
    public static bool IsFault(Exception exception) => exception is not OperationCanceledException;

    /// <summary>Stands at the block at which a rule on blocks threw.</summary>
    public static Finding AtBlock(Rule rule, int line, (int Start, int End) words, Exception fault) =>
        Of(rule, line, words, fault, "here and in the blocks that follow");

    /// <summary>Stands at the first line for a rule on whole programs.</summary>
    public static Finding InFile(Rule rule, Exception fault) => Of(rule, 0, (0, 0), fault, "in this program");

    static Finding Of(Rule rule, int line, (int Start, int End) bytes, Exception fault, string where) => new()
    {
        Rule = rule,
        Severity = Severity.Warning,
        Line = line,
        StartColumn = bytes.Start,
        EndColumn = bytes.End,
        Message = $"The check {rule.Info.Name} broke down by a fault of its own ({fault.GetType().Name}): whether it would find something {where} is not known.",
        Fault = fault,
    };
}
