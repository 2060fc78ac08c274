namespace NcLanguage.Checks.Rules;

/// <summary>A name in a setup or machine file that means nothing there.</summary>
public sealed class SetupUnknownKey : SetupRule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC8003",
        Name = "setup-unknown-key",
        Severity = Severity.Warning,
        Title = "A name in a setup or machine file means nothing there",
        Finds = "A member of an object whose name is not known at that place; most often a slip of the keys.",
        AtTheMachine = "The member is passed over, so what it was to say is not known: a clamp under a misspelt name is not checked.",
        Example = """
            { "clearence": 3,
            ~ ^^^^^^^^^^^
              "stock": { "min": [0, 0, -15], "max": [100, 60, 0] } }
            """,
        Instead = """
            { "clearance": 3,
              "stock": { "min": [0, 0, -15], "max": [100, 60, 0] } }
            """,
        FixSafety = FixSafety.Choice,
        Fix = "Puts in the nearest name that is known there.",
        NotFound = "A known name that is not the one meant.",
        Source = "Our own file format; its schema is printed by the command schema.",
    };
}
