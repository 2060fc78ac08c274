using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Drawing;

namespace NcLanguage.Checks.Rules;

/// <summary>A hole that is begun and not finished: spotted and never drilled, drilled and never tapped or reamed.</summary>
public sealed class HoleNotFinished : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC7005",
        Name = "hole-not-finished",
        Severity = Severity.Warning,
        Title = "A hole that is begun and not finished",
        Finds = "A hole of the drawing that is spotted and never drilled; one with a thread that is drilled and never tapped; one that is drilled a little smaller than the drawing asks, while the setup's "
            + "reamer or boring bar of the drawing's size never comes there.",
        AtTheMachine = "One tool goes to all holes, the next leaves one out; it is seen when the screw does not go in.",
        Setup = """
            { "stock": { "min": [0, 0, -30], "max": [100, 60, 0] },
              "tools": [ { "number": 3, "kind": "drill", "diameter": 6.8, "pointAngle": 118, "fluteLength": 60, "length": 120 },
                         { "number": 4, "kind": "tap", "diameter": 8, "pitch": 1.25, "fluteLength": 40, "length": 120 } ],
              "holes": [ { "x": 20, "y": 30, "diameter": 6.8, "depth": 12, "thread": "M8" }, { "x": 60, "y": 30, "diameter": 6.8, "depth": 12, "thread": "M8" } ] }
            """,
        Example = """
            G21 G90 G17 G54
            G0 G53 Z0
            T3 M6
            S1500 M3
            G0 X20 Y30
            G43 H3 Z40 M8
            G99 G81 X20 Y30 R2 Z-17 F150
            X60
            ~^^
            G80
            G0 G53 Z0 M9
            M5
            T4 M6
            S500 M3
            G0 X20 Y30
            G43 H4 Z40 M8
            G99 G84 X20 Y30 R5 Z-13 F625
            G80
            G0 G53 Z0 M9
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            G0 G53 Z0
            T3 M6
            S1500 M3
            G0 X20 Y30
            G43 H3 Z40 M8
            G99 G81 X20 Y30 R2 Z-17 F150
            X60
            G80
            G0 G53 Z0 M9
            M5
            T4 M6
            S500 M3
            G0 X20 Y30
            G43 H4 Z40 M8
            G99 G84 X20 Y30 R5 Z-13 F625
            X60
            G80
            G0 G53 Z0 M9
            M5
            M30
            """,
        NotFound = "Chamfers that are left out: the list of holes has none. In a program whose setup is nc.setup.json such a hole is reported only where the program finishes others of the same size, depth and thread: "
            + "another program may do the rest. The core hole of a thread that is cut on a bench is a hole without a thread in the list.",
        Source = "The drawing, as the setup lists it; the order of drilling, reaming and tapping is common practice.",
    };

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        var drawing = file.Drawing;
        var begun = drawing.Where(match => match is { Wanted: not null, Work: not null, Unfinished: HoleUnfinished.SpotOnly or HoleUnfinished.NotTapped or HoleUnfinished.NotReamed }
            && !drawing.MayBeDoneElsewhere(match));
        foreach (var group in DrawingFindings.Groups(begun))
        {
            var match = group[0];
            var work = match.Work!.Value;
            var say = file.SayAt(work.Line, work.Coordinates);
            var size = DrawingFindings.Size(match.Wanted!, say);
            var what = match.Unfinished switch
            {
                HoleUnfinished.SpotOnly => $"spotted, but never drilled: the drawing asks for {size}",
                HoleUnfinished.NotTapped => $"{(match.By == HoleMaking.Milled ? "milled" : "drilled")}, but never tapped: the drawing asks for {size}",
                _ => $"{(match.By == HoleMaking.Milled ? "milled" : "drilled")} with {say.Length(match.Diameter)}, but never reamed or bored to the drawing's {size}",
            };
            file.ReportBlock(this, work.Line, $"{DrawingFindings.Subject(group, say)} {what}.{drawing.Sharing}");
        }
    }
}
