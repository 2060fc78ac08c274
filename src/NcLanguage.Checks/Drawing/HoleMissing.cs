using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Drawing;

namespace NcLanguage.Checks.Rules;

/// <summary>A hole of the drawing that the program does not make.</summary>
public sealed class HoleMissing : Rule
{
    /// <summary>Lines behind the last hole in which the program's end is looked for.</summary>
    const int FarEnough = 2_000;

    public override RuleInfo Info { get; } = new()
    {
        Id = "NC7001",
        Name = "hole-missing",
        Severity = Severity.Error,
        Title = "A hole of the drawing is not made",
        Finds = "A hole of the setup's list at whose place the program makes none: no drill, reamer or boring bar goes there, in a cycle or fed straight down, and no mill cuts a full circle about it; or nothing but a counterbore that is wider; or the tool that does stays above the surface. Places are one within 0.05 mm along X and along Y, the finest tolerance of ISO 2768-1 for lengths without one of their own. "
            + "It stands at the program's end; where a hole of its size is made, or tapped, at a place that the drawing does not have, at that block; that this place lies outside the stock or beyond the travel is named there, and not told by itself.",
        AtTheMachine = "The part comes off the machine without the hole, and has to be clamped and set again for it.",
        Setup = """
            { "stock": { "min": [0, 0, -12], "max": [100, 60, 0] },
              "tools": [ { "number": 3, "kind": "drill", "diameter": 8, "pointAngle": 118, "fluteLength": 60, "length": 120 } ],
              "holes": [ { "x": 20, "y": 30, "diameter": 8, "depth": 12 }, { "x": 60, "y": 30, "diameter": 8, "depth": 12 }, { "x": 80, "y": 30, "diameter": 8, "depth": 12 } ] }
            """,
        Example = """
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
            ~^^
            """,
        Instead = """
            G21 G90 G17 G54
            T3 M6
            S1500 M3
            G0 X20 Y30
            G43 H3 Z40 M8
            G99 G81 X20 Y30 R2 Z-15 F150
            X60
            X80
            G80
            G0 Z60 M9
            M5
            M30
            """,
        NotFound = "Holes that are milled other than by full circles or helices: those are reported though they are made, so leave them out of the list. In a program whose setup is nc.setup.json, "
            + "which other programs share, a missing hole is reported only where the program makes others of the same size, depth and thread. Nothing is reported where the program drills at places "
            + "that are not known, where its run does not come to an end, in a program that others call, and in one of more than 20,000 holes. A hole that is only spotted is hole-not-finished.",
        Source = "The drawing, as the setup lists it. General tolerances: ISO 2768-1, class f (fine), 0.05 mm for lengths from 0.5 to 6 mm (from memory).",
    };

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        var drawing = file.Drawing;
        var missing = drawing.Where(match => match is { Status: HoleStatus.Missing, Unfinished: HoleUnfinished.No or HoleUnfinished.NotDrilled } && (match.StaysAbove || !drawing.MayBeDoneElsewhere(match)));
        var end = -1;
        foreach (var group in DrawingFindings.Groups(missing))
        {
            var line = group[0].Work?.Line ?? (end >= 0 ? end : end = EndOf(file.Run));
            var say = file.SayAt(line, group[0].Work?.Coordinates ?? WorkCoordinates.OfFrame(file.Run.Job.Setup));
            file.ReportBlock(this, line, $"{DrawingFindings.Subject(group, say, "The drawing's")} {What(group[0], say)}: "
                + $"{DrawingFindings.Size(group[0].Wanted!, say, withDepth: true)}, {ListedIn(group, file.Run)}.{drawing.Sharing}");
        }
        foreach (var group in DrawingFindings.Groups(drawing.Misplaced.Keys.Where(match => !drawing.IsExplained(drawing.Misplaced[match]))))
            ReportMisplaced(group, drawing, file);
    }

    static string What(DrawingMatch match, LengthText say) => match switch
    {
        { StaysAbove: true, Work: { } work } => $"not made, because {work.ToolName} goes down to {say.Level(work.Tip - work.ToFrame.Z)} only, and its mouth is at {say.Level(match.Surface - work.ToFrame.Z)}",
        { Work: not null } => "tapped, but never drilled",
        _ => "not made",
    };

    void ReportMisplaced(List<DrawingMatch> group, DrawingFindings drawing, in FileContext file)
    {
        var instead = group.ConvertAll(match => drawing.Misplaced[match]);
        var line = instead[0].Work!.Value.Line;
        var say = file.SayAt(line, WorkCoordinates.OfFrame(file.Run.Job.Setup));
        var isPolar = ArePolar(group, instead) && file.Run.StateBefore(line).ProgramFrame?.Polar is null;
        var isThread = group[0].Unfinished == HoleUnfinished.NotTapped;
        file.ReportBlock(this, line, $"{DrawingFindings.Subject(group, say, "The drawing's")} not {(isThread ? "tapped" : "made")}: {DrawingFindings.Size(group[0].Wanted!, say)}, {ListedIn(group, file.Run)}. "
            + $"Instead {(instead.Count == 1 ? "one is" : "as many are")} {(isThread ? "tapped" : "made")} where the drawing has none, at {DrawingFindings.PlacesOf(instead, say)}{Aside(group[0], instead[0], say)}.{(isPolar ? " X and Y are the radius and the angle of the drawing's holes, and no G16 is in force." : "")}",
            text: isPolar ? MisplacedFindings.OfRun : MisplacedFindings.OfBlock);
    }

    /// <summary>Whether X and Y of all holes that are made are radius and angle of some that are missing.</summary>
    static bool ArePolar(List<DrawingMatch> group, List<DrawingMatch> instead) => group.Count > 1 && instead.TrueForAll(made =>
    {
        var shift = made.Work!.Value.ToFrame;
        var (y, x) = double.SinCosPi((made.Y - shift.Y) / 180);
        var radius = made.X - shift.X;
        return group.Exists(match =>
            Math.Abs(radius * x + shift.X - match.X) <= DrawingComparison.SamePlace && Math.Abs(radius * y + shift.Y - match.Y) <= DrawingComparison.SamePlace);
    });

    /// <summary>How far the hole is off, where it is so little that rounding may be the cause; a place's numbers seldom show it.</summary>
    static string Aside(DrawingMatch match, DrawingMatch instead, LengthText say)
    {
        const double Near = 1;
        var off = double.Hypot(match.X - instead.X, match.Y - instead.Y);
        return off <= Near ? $", {say.Length(off)} off" : "";
    }

    static string ListedIn(List<DrawingMatch> group, ProgramRun run) =>
        $"{(group.Count == 1 ? "in" : "the first in")} line {group[0].Wanted!.Line} of {Path.GetFileName(run.Job.Setup.Path) ?? "the setup"}";

    /// <summary>The block that ends the program behind its last hole; the last hole's own where there is none near, the last block of a program without holes.</summary>
    static int EndOf(ProgramRun run)
    {
        var from = 0;
        for (var part = run.Results.Length - 1; part >= 0; part--)
            if (run.Results[part].Holes is { Length: > 0 } holes)
            {
                from = run.LineOf(part, holes[^1].Line);
                break;
            }
        var last = Math.Min(from + FarEnough, run.Text.LineCount - 1);
        for (var line = from; line <= last; line++)
            foreach (ref readonly var token in run.BlockAt(line).Tokens)
                if (token.IsWord('M') && token.Value is 2 or 30)
                    return line;
        return from;
    }
}
