using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Drawing;

namespace NcLanguage.Checks.Rules;

/// <summary>A hole that goes deeper than the drawing asks.</summary>
public sealed class HoleTooDeep : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC7006",
        Name = "hole-too-deep",
        Severity = Severity.Warning,
        Title = "A hole deeper than the drawing asks",
        Finds = "A hole of the right size that at its full diameter, the drill's point left out, goes deeper below the surface about its mouth than the drawing asks, by more than lengths without a tolerance of their own "
            + "may be off in any class: 1 mm at 6 to 30 mm; by less where the drill's tip comes out of the stock's bottom, but would not at the drawing's depth. An error where it comes out of the stock's bottom though the drawing's hole ends in the stock. Core holes of threads are drilled deeper on "
            + "purpose: of them only that is told, and as a warning.",
        AtTheMachine = "The wall behind the hole is thinner than drawn, or the drill comes out of a face, or in a bore, where there is to be no hole: the part leaks, or is scrap.",
        Setup = """
            { "stock": { "min": [0, 0, -30], "max": [100, 60, 0] },
              "tools": [ { "number": 3, "kind": "drill", "diameter": 8, "pointAngle": 118, "fluteLength": 60, "length": 120 } ],
              "holes": [ { "x": 20, "y": 30, "diameter": 8, "depth": 12 }, { "x": 60, "y": 30, "diameter": 8, "depth": 12 } ] }
            """,
        Example = """
            G21 G90 G17 G54
            T3 M6
            S1500 M3
            G0 X20 Y30
            G43 H3 Z40 M8
            G99 G81 X20 Y30 R2 Z-18 F150
            ~^^^^^^^^^^^^^^^^^^^^^^^^^^^
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
            G99 G81 X20 Y30 R2 Z-14.5 F150
            X60
            G80
            G0 Z60 M9
            M5
            M30
            """,
        NotFound = "Holes without a depth in the list; all of them without a stock, since it is not known then which go through. Depths count from the surface as in hole-shallow, but from Z0 where the stock goes on above and below it: "
            + "what stands above may be faced off elsewhere. A drill without a point angle in the tool list, and a reamer, whose lead is not known, count only where they go through. A hole goes through on purpose where its tool, at "
            + "the drawing's depth, comes out of the stock by its point (for a thread also by 3 threads, the lead of a tap), or nearly so, and where another hole of the list at that place does. Where the stock is thicker than the part will be, "
            + "holes that are drawn through may be told: silence them with the reason. Holes of one size that one tool drills to one depth are told once.",
        Source = "The drawing, as the setup lists it. ISO 2768-1, class v (very coarse), as a published table has it: ±0.5 mm to 6 mm, 1 to 30, 1.5 to 120, 2.5 to 400, 4 to 1000. "
            + "Length of the point (D/2)·cot(α/2), engineering reference. That core holes are drilled deeper than their threads is common practice.",
    };

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        var drawing = file.Drawing;
        foreach (var group in DrawingFindings.Groups(drawing.Matches.Where(match => match.IsTooDeep && !drawing.IsExplained(match))))
            ReportDeep(group, file);
        foreach (var group in DrawingFindings.Groups(drawing.Matches.Where(match => match.GoesThrough).Select(match => match with { Work = match.ThroughWork }).Where(match => !drawing.IsExplained(match))))
            ReportThrough(group, file);
    }

    void ReportDeep(List<DrawingMatch> group, in FileContext file)
    {
        var (match, work) = (group[0], group[0].Work!.Value);
        var say = file.SayAt(work.Line, work.Coordinates);
        var wanted = match.Wanted!.Depth!.Value;
        file.ReportBlock(this, work.Line, $"{DrawingFindings.Subject(group, say)} {(work.Full > work.Tip ? "at full diameter" : "made")} {say.Length(match.Depth)} deep, and the drawing asks for {say.Length(wanted)}: "
            + $"{work.ToolName} goes {say.Length(match.Depth - wanted)} too deep, {say.Level(work.Tip - work.ToFrame.Z + match.Depth - wanted)} is enough{(file.Run.Job.Setup.Stock is { } stock && work.Tip < stock.Min.Z ? ", and its tip comes out of the stock" : "")}.");
    }

    void ReportThrough(List<DrawingMatch> group, in FileContext file)
    {
        var (match, work) = (group[0], group[0].Work!.Value);
        var say = file.SayAt(work.Line, work.Coordinates);
        var wanted = match.Wanted!;
        var bottom = file.Run.Job.Setup.Stock!.Value.Min.Z;
        var isThread = wanted.Thread is not null;
        file.ReportBlock(this, work.Line, $"{DrawingFindings.Subject(group, say)} {(work.Kind is WorkKind.Mill or WorkKind.Plunge ? "milled" : "drilled")} through: {work.ToolName} goes to {say.Level(Math.Min(work.Tip, work.End) - work.ToFrame.Z)}, the stock ends at {say.Level(bottom - work.ToFrame.Z)}, and the drawing asks for "
            + (isThread ? $"{wanted.Thread} {say.Length(wanted.Depth!.Value)} deep. Unless its core hole is drawn through, {work.ToolName} has to stay in the stock."
                : $"a hole {say.Length(wanted.Depth!.Value)} deep: {work.ToolName} has to stay in the stock."),
            severity: isThread ? Severity.Warning : Severity.Error);
    }
}
