using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Checks.Drawing;

namespace NcLanguage.Checks.Rules;

/// <summary>A hole where the drawing has none.</summary>
public sealed class HoleExtra : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC7002",
        Name = "hole-extra",
        Severity = Severity.Warning,
        Title = "A hole where the drawing has none",
        Finds = "A hole drilled, reamed, tapped or spotted in a cycle, or by a drill fed straight down, at a place where the setup lists no hole.",
        AtTheMachine = "The part has a hole that nobody asked for, and most often is scrap; a digit of the place is wrong, or the hole is missing from the list.",
        Setup = """
            { "stock": { "min": [0, 0, -12], "max": [100, 60, 0] },
              "tools": [ { "number": 3, "kind": "drill", "diameter": 8, "pointAngle": 118, "fluteLength": 60, "length": 120 } ],
              "holes": [ { "x": 20, "y": 30, "diameter": 8, "depth": 12 }, { "x": 60, "y": 30, "diameter": 8, "depth": 12 } ] }
            """,
        Example = """
            G21 G90 G17 G54
            T3 M6
            S1500 M3
            G0 X20 Y30
            G43 H3 Z40 M8
            G99 G81 X20 Y30 R2 Z-15 F150
            X40
            ~^^
            X60
            G80
            G0 Z60 M9
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T3 M6
            S1500 M3
            G0 X20 Y30
            G43 H3 Z40 M8
            G99 G81 X20 Y30 R2 Z-15 F150
            X60
            G80
            G0 Z60 M9
            M5
            M30
            """,
        NotFound = "Milled circles: a drawing's list of holes leaves pockets out. A hole that a mill cuts into down to its bottom, or through the stock, is its way in and not reported; that is known only with a stock. "
            + "A hole outside the stock is hole-outside-stock, one drilled in the stead of another is hole-missing. Under another work offset than the list's only holes inside the stock count. Holes of "
            + "one tool in one run of a cycle are told at the first of them. A list that leaves holes out makes them extra: list all of them, or none.",
        Source = "The drawing, as the setup lists it.",
    };

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        var drawing = file.Drawing;
        var instead = drawing.Misplaced.Values.ToHashSet(ReferenceEqualityComparer.Instance);
        var extras = new List<DrawingMatch>();
        foreach (var match in drawing.Matches)
            if (match.Status == HoleStatus.Extra && !drawing.IsExplained(match) && !instead.Contains(match) && IsOfThisPart(match, file.Run.Job))
                extras.Add(match);
        foreach (var run in extras.GroupBy(match => (match.Work!.Value.ToolNumber, match.Work.Value.Cycle, match.Unfinished)))
        {
            List<DrawingMatch> group = [.. run];
            var work = group[0].Work!.Value;
            var say = file.SayAt(work.Line, work.Coordinates);
            var what = work.Threads ? "tapped" : group[0].Unfinished == HoleUnfinished.SpotOnly ? "only spotted" : "made";
            file.ReportBlock(this, work.Line, $"{DrawingFindings.Subject(group, say)} {what}{Size(group, say)}, and the drawing has none there.");
        }
    }

    static bool IsOfThisPart(DrawingMatch match, Job job) =>
        job.Setup.Stock is { } stock ? DrawingComparison.IsOver(stock, match) : !DrawingComparison.IsShifted(match);

    static string Size(List<DrawingMatch> group, LengthText say) =>
        double.IsNaN(group[0].Diameter) || group.Exists(match => match.Diameter != group[0].Diameter) ? "" : $" with {say.Length(group[0].Diameter)}";
}
