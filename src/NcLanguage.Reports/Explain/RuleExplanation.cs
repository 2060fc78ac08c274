using NcLanguage.Checks;

namespace NcLanguage.Reports.Explain;

/// <summary>A rule under the headings of its page.</summary>
static class RuleExplanation
{
    public static Explanation Of(Rule rule)
    {
        var info = rule.Info;
        List<ExplainedSection> sections =
        [
            new("What it finds", info.Finds),
            new("How grave", SeverityText(info.Severity)),
            new("At the machine", info.AtTheMachine),
            new("Example", Shown(info.Example), IsVerbatim: true),
            new("Instead", Shown(info.Instead), IsVerbatim: true),
        ];
        if (info.Setup is { } setup)
            sections.Add(new("Both with the setup", setup.Trim(), IsVerbatim: true));
        if (info.InsteadSetup is { } insteadSetup)
            sections.Add(new("The second with the setup", insteadSetup.Trim(), IsVerbatim: true));
        if (info.Machine is { } machine)
            sections.Add(new("Both on the machine", machine.Trim(), IsVerbatim: true));
        if (info.Readings is { } readings)
            sections.Add(new("Both under the reading", readings));
        sections.Add(new("The fix", Fix(info)));
        sections.Add(new("Not found, and false alarms", info.NotFound));
        sections.Add(new("Source", info.Source));
        return new Explanation(ExplainedKind.Rule, info.Name, info.Title, $"Findings: {AreaOf(info.Id)}", info.Id, [.. sections]) { Alias = info.Id };
    }

    static string SeverityText(Severity severity) => severity switch
    {
        Severity.Error => "Error: it would harm or stop the machine, or cut the wrong part.",
        Severity.Warning => "Warning: probably not what was meant.",
        _ => "Note: worth knowing.",
    };

    static string Fix(RuleInfo info) => info.FixSafety switch
    {
        FixSafety.Safe => $"{info.Fix} Certain: unless said otherwise here, it writes what the finding shows was meant, and check --fix makes it.",
        FixSafety.Choice => $"{info.Fix} One of several things that may have been meant: look at it before you take it.",
        _ => "There is none: only whoever writes the program knows what was meant.",
    };

    /// <summary>An example's markers as they look under the program.</summary>
    static string Shown(string example) => string.Join('\n', example.TrimEnd().Split('\n').Select(line => line switch
    {
        // A place that begins in the first column is marked from the second, because the marker's own sign stands in the first.
        ['~', '^', ..] => "^" + line[1..],
        ['~', ..] => " " + line[1..],
        _ => line,
    }));

    static string AreaOf(string id) => id[2] switch
    {
        '1' => "syntax",
        '2' => "state",
        '3' => "cycles",
        '4' => "clearance",
        '5' => "cutting",
        '6' => "program",
        '7' => "drawing",
        _ => "setup files",
    };
}
