using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>A milled thread of which one arc turns against the others.</summary>
public sealed class ThreadBothHands : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC5023",
        Name = "thread-both-hands",
        Severity = Severity.Warning,
        Title = "A milled thread turns both ways",
        Finds = "Arcs of a thread mill about one centre, in one pass or several, some of which cut a right-hand helix and some, turning the other way, a left-hand one. The first of those that are fewer is told.",
        AtTheMachine = "Two threads cross in one wall, and no screw goes in. One swapped G2 or G3 does it.",
        Setup = """
            { "tools": [ { "number": 11, "kind": "thread-mill", "diameter": 12, "pitch": 1.5, "length": 105 } ] }
            """,
        Example = """
            G21 G90 G17 G54
            T11 M6
            S2400 M3
            G0 X0 Y0
            G43 H11 Z20 M8
            G1 Z-9 F1000
            X9
            G3 I-9 Z-7.5 F240
            G2 I-9 Z-6
            ~^^^^^^^^^
            G3 I-9 Z-4.5
            G1 X0 Y0 F600
            G0 Z20 M9
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T11 M6
            S2400 M3
            G0 X0 Y0
            G43 H11 Z20 M8
            G1 Z-9 F1000
            X9
            G3 I-9 Z-7.5 F240
            I-9 Z-6
            I-9 Z-4.5
            G1 X0 Y0 F600
            G0 Z20 M9
            M5
            M30
            """,
        NotFound = "Arcs of less than 40°; an arc that turns as the others do and goes down where they climb, of which thread-mill-pitch speaks; ways in and out about another centre. A pass back through the same groove, which turns the other way and goes the other way up, cuts the same hand.",
        Source = "A right-hand helix rises counterclockwise, seen along its axis from above (geometry).",
    };

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        if (!file.Run.Job.Setup.Tools.Any(tool => tool.Kind == ToolKind.ThreadMill))
            return;
        foreach (var odd in ThreadHands.OddOnes(file.Run))
        {
            var place = file.SayAt(odd.Line, odd.Coordinates).Place(odd.Arc.CenterX - odd.Arc.ToFrame.X, odd.Arc.CenterY - odd.Arc.ToFrame.Y);
            var (hand, others) = odd.IsLeftHand ? ("left-hand", "right-hand") : ("right-hand", "left-hand");
            var (here, there) = odd.Arc.Clockwise ? ("clockwise", "counterclockwise") : ("counterclockwise", "clockwise");
            file.ReportBlock(this, odd.Line, $"This arc of T{odd.Arc.Tool.Number} about {place} turns {here} and the others of its thread turn {there}: it cuts a {hand} groove across the {others} one.");
        }
    }
}
