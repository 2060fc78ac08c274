namespace NcLanguage.Checks.Rules;

/// <summary>A setup or machine file that is no JSON.</summary>
public sealed class SetupMalformed : SetupRule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC8001",
        Name = "setup-malformed",
        Severity = Severity.Error,
        Title = "A setup or machine file cannot be read",
        Finds = "A setup or machine file that is not JSON (comments and trailing commas are allowed), or whose outermost value is no object.",
        AtTheMachine = "Nothing of the file is used: no clamp, no tool and no offset is known, so nothing about them is checked.",
        Example = """
            { "clearance": 2,
              "stock": { "min": [0, 0, -15], "max": [100, 60, 0 }
            ~                                                   ^
            }
            """,
        Instead = """
            { "clearance": 2,
              "stock": { "min": [0, 0, -15], "max": [100, 60, 0] }
            }
            """,
        NotFound = "Further mistakes of the same file: reading ends at the first.",
        Source = "RFC 8259 (JSON).",
    };
}
