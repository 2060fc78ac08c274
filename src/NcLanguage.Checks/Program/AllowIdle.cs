namespace NcLanguage.Checks.Rules;

/// <summary>A comment that asks for silence where there is nothing to silence.</summary>
public sealed class AllowIdle : Rule
{
    internal static AllowIdle Instance => (AllowIdle)RuleList.Find("allow-idle")!;

    public override RuleInfo Info { get; } = new()
    {
        Id = "NC6020",
        Name = "allow-idle",
        Severity = Severity.Warning,
        Title = "A comment silences a finding that is not there",
        Finds = "A comment (nc-allow NAME: reason) whose block and the next block have no finding of that name.",
        AtTheMachine = "Nothing happens: the control skips comments. But a comment left behind would silence the finding when it comes back.",
        Example = """
            G21 G90 G54 G17
            (nc-allow spindle-off: probe with the spindle standing)
            ~^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
            G0 X0 Y0
            M30
            """,
        Instead = """
            G21 G90 G54 G17
            G0 X0 Y0
            M30
            """,
        NotFound = "Comments that silence more than was meant.",
        Source = "Our own convention.",
    };
}
