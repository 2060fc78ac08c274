namespace NcLanguage.Checks.Rules;

/// <summary>A comment that asks for silence without saying why.</summary>
public sealed class AllowWithoutReason : Rule
{
    internal static AllowWithoutReason Instance => (AllowWithoutReason)RuleList.Find("allow-without-reason")!;

    public override RuleInfo Info { get; } = new()
    {
        Id = "NC6021",
        Name = "allow-without-reason",
        Severity = Severity.Warning,
        Title = "A comment asks for silence without a reason",
        Finds = "A comment (nc-allow NAME) without a colon and a reason. It silences nothing.",
        AtTheMachine = "Nothing happens: the control skips comments. But whoever runs the program next cannot tell why a fault was let stand.",
        Example = """
            G21 G90 G54 G17
            (nc-allow spindle-off)
            ~^^^^^^^^^^^^^^^^^^^^^
            G0 X0 Y0
            M30
            """,
        Instead = """
            G21 G90 G54 G17
            G0 X0 Y0
            M30
            """,
        NotFound = "Reasons that explain nothing.",
        Source = "Our own convention.",
    };
}
