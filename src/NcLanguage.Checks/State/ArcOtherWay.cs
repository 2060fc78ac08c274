using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;

namespace NcLanguage.Checks.Rules;

/// <summary>An arc of a contour that turns the other way than both its neighbours want.</summary>
public sealed class ArcOtherWay : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2038",
        Name = "arc-other-way",
        Severity = Severity.Warning,
        Title = "An arc would join both its neighbours if it turned the other way",
        Finds = "An arc in the XY plane between two cuts that with the other of G2 and G3 would run smoothly into both. As it stands it goes back on both of them; or it meets both at corners, while two or more arcs of the same "
            + "radius in the same contour run smoothly into theirs. Likewise one that would run smoothly into both about the other centre of its radius, as with I and J swapped, or with the other sign of R. It is the programmed path that is looked at, without the tool's radius.",
        AtTheMachine = "Instead of a rounded corner the tool cuts a hollow into the part, or runs the long way round through it.",
        Example = """
            G21 G90 G17 G54
            T3 M6
            S2000 M3
            G0 X-20 Y0
            G43 H3 Z-5 M8
            G1 X50 F300
            G3 X60 Y10 R10
            G1 Y40
            G3 X50 Y50 R10
            G1 X10
            G2 X0 Y40 R10
            ~^^^^^^^^^^^^
            G1 Y-20
            G0 Z50 M9
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T3 M6
            S2000 M3
            G0 X-20 Y0
            G43 H3 Z-5 M8
            G1 X50 F300
            G3 X60 Y10 R10
            G1 Y40
            G3 X50 Y50 R10
            G1 X10
            G3 X0 Y40 R10
            G1 Y-20
            G0 Z50 M9
            M5
            M30
            """,
        NotFound = "Arcs at the beginning or end of a contour; more than one such corner in a contour: hollows may be meant. Arcs that go back over the arc before them, and rows of arcs that turn the same way and come back on each other.",
        Source = "A rounding is tangent to both its sides (plane geometry); that G2 and G3 are mixed up: common practice.",
    };

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        foreach (var (line, arc) in file.Run.TurnedArcs)
            if (arc.Tenfold == 0)
                file.ReportBlock(this, line, Message(arc));
    }

    static string Message(in TurnedArc arc)
    {
        if (arc is { IsAboutOtherCentre: true, IsByRadius: true })
            return "This arc meets the moves before and behind it at corners; about the other centre of its radius it would run smoothly into both: is the sign of R wrong?";
        if (arc.IsAboutOtherCentre)
            return "This arc meets the moves before and behind it at corners, the long way round; about the other centre of its radius it would run smoothly into both: are I and J mixed up?";
        var (here, other) = arc.IsG2 ? ("G2", "G3") : ("G3", "G2");
        var meets = arc.TurnsBack ? "goes back on the move before it and on the one behind it" : "meets the moves before and behind it at corners";
        var centre = arc.IsWholeTurn ? ", or with its centre on the other side," : "";
        return $"As {here} this arc {meets}; as {other}{centre} it would run smoothly into both.";
    }
}
