namespace NcLanguage.Checks.Rules;

/// <summary>A value of a setup or machine file that cannot be used.</summary>
public sealed class SetupValue : SetupRule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC8002",
        Name = "setup-value",
        Severity = Severity.Error,
        Title = "A value in a setup or machine file cannot be used",
        Finds = "A value of the wrong type, out of its bounds, in contradiction to another, or missing where it is needed.",
        AtTheMachine = "The value is left out, never guessed: what depends on it is not checked.",
        Example = """
            { "tools": [
              { "number": 3, "kind": "twist-drill", "diameter": 8 }
            ~                        ^^^^^^^^^^^^^
            ] }
            """,
        Instead = """
            { "tools": [
              { "number": 3, "kind": "drill", "diameter": 8 }
            ] }
            """,
        FixSafety = FixSafety.Choice,
        Fix = "Puts in the nearest choice where the value is a name that was probably misspelt.",
        NotFound = "Values that are possible but not those of the tool or clamp in front of you.",
        Source = "Our own file format; its schema is printed by the command schema.",
    };
}
