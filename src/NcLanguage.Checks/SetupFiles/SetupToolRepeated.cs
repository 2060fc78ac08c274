namespace NcLanguage.Checks.Rules;

/// <summary>A tool number that the setup lists twice.</summary>
public sealed class SetupToolRepeated : SetupRule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC8004",
        Name = "setup-tool-repeated",
        Severity = Severity.Error,
        Title = "The setup lists a tool number twice",
        Finds = "A row of the tool list whose number an earlier row has.",
        AtTheMachine = "Only the first row is used: if the other one is right, lengths and diameters are checked for the wrong tool.",
        Example = """
            { "tools": [
              { "number": 3, "kind": "drill", "diameter": 8 },
              { "number": 3, "kind": "tap", "diameter": 10 }
            ~             ^
            ] }
            """,
        Instead = """
            { "tools": [
              { "number": 3, "kind": "drill", "diameter": 8 },
              { "number": 4, "kind": "tap", "diameter": 10 }
            ] }
            """,
        NotFound = "Two tools that share a length offset.",
        Source = "Common practice.",
    };
}
