using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Drawing;

namespace NcLanguage.Checks.Rules;

/// <summary>A hole, or its thread, that is not as deep as the drawing asks.</summary>
public sealed class HoleShallow : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC7003",
        Name = "hole-shallow",
        Severity = Severity.Error,
        Title = "A hole less deep than the drawing asks",
        Finds = "A hole of the right size that at its full diameter, the drill's point left out, goes less deep below the surface about its mouth than the drawing asks; or a thread whose tap does; of a hole whose depth the drawing leaves open, one that only the drill's point goes into. "
            + "The surface is the stock's top, or what mills and its hollows leave of it all round the hole when all is done. A helix that ends without a full circle at its bottom is as deep as its last whole turn begins, a milled thread as deep as its helix goes.",
        AtTheMachine = "The screw or pin does not go in all the way, a through hole stays closed or narrow at the bottom; found after the part has left the clamps, it costs a second setup.",
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
            G99 G81 X20 Y30 R2 Z-12 F150
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
        NotFound = "Differences of up to 0.01 mm. Depths count from the stock's top where a part of the hole's rim still stands there, or where a mill clears only about the hole's own middle (a counterbore); without a stock from Z0. "
            + "Without a point angle in the tool list the tip counts as flat. A thread counts as deep as the tip of the tap goes: its lead, which leaves the last threads unfinished (2 to 3 of a plug tap), is not taken off. Holes of one size that one tool drills to one depth are told once.",
        Source = "The drawing, as the setup lists it; length of the point (D/2)·cot(α/2), engineering reference. The lead of a plug tap is common practice.",
    };

    /// <summary>Levels that differ by less are one, mm.</summary>
    const double Equal = 0.01;

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        var drawing = file.Drawing;
        // One that only its tap misses stands in the place of another is as shallow as any.
        var holes = drawing.Matches.Where(match => match.IsHoleShallow && !drawing.IsExplained(match));
        foreach (var group in DrawingFindings.Groups(holes).Concat(DrawingFindings.Groups(drawing.WhereThread(match => match.IsThreadShort))))
        {
            var work = group[0].Work!.Value;
            var say = file.SayAt(work.Line, work.Coordinates);
            if (group[0].Wanted!.Depth is not { } wanted)
            {
                file.ReportBlock(this, work.Line, $"{DrawingFindings.Subject(group, say)} nowhere as wide as the drawing asks: {work.ToolName} goes in by its point alone, and cuts its {say.Length(work.Diameter)} from "
                    + $"{say.Level(group[0].Surface - (work.Full - work.Tip) - work.ToFrame.Z)} down.");
                continue;
            }
            var depth = work.Threads ? group[0].ThreadDepth : group[0].Depth;
            var tip = work.Tip - work.ToFrame.Z - (wanted - depth);
            if (work.Kind == WorkKind.Mill && work.End <= work.Tip - (wanted - depth) + Equal)
            {
                file.ReportBlock(this, work.Line, $"{DrawingFindings.Subject(group, say)} as wide as the drawing asks to {say.Length(depth)} only, where the last whole turn of the helix begins, and not to {say.Length(wanted)}: "
                    + $"{work.ToolName} wants a full circle at {say.Level(tip)} behind it.");
                continue;
            }
            var how = work.Threads ? "threaded to" : work.Full > work.Tip ? "at full diameter" : "made";
            file.ReportBlock(this, work.Line, $"{DrawingFindings.Subject(group, say)} {how} {say.Length(Math.Max(0, depth))} deep, and the drawing asks for {say.Length(wanted)}: "
                + $"{work.ToolName} has to go {say.Length(wanted - depth)} deeper, to {say.Level(tip)}.");
        }
    }
}
