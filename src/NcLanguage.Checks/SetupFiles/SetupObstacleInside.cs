namespace NcLanguage.Checks.Rules;

/// <summary>An obstacle that lies wholly inside the stock.</summary>
public sealed class SetupObstacleInside : SetupRule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC8005",
        Name = "setup-obstacle-inside",
        Severity = Severity.Warning,
        Title = "An obstacle lies wholly inside the stock",
        Finds = "An obstacle no part of which stands out of the stock, where nothing can be clamped; most often a sign or a level is wrong.",
        AtTheMachine = "The clamp stands somewhere else than the setup says: nothing is known about the place where it really stands.",
        Example = """
            { "stock": { "min": [0, 0, -15], "max": [100, 60, 0] },
              "obstacles": [
                { "name": "clamp A", "min": [40, 0, -14], "max": [60, 12, 0] }
            ~   ^
              ] }
            """,
        Instead = """
            { "stock": { "min": [0, 0, -15], "max": [100, 60, 0] },
              "obstacles": [
                { "name": "clamp A", "min": [40, -20, 0], "max": [60, 12, 25] }
              ] }
            """,
        NotFound = "Obstacles that only overlap the stock.",
        Source = "Common practice.",
    };
}
