using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;

namespace NcLanguage.Checks.Rules;

/// <summary>A full turn about another centre than those before and behind it.</summary>
public sealed class TurnBesideOthers : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC5018",
        Name = "turn-beside-others",
        Severity = Severity.Warning,
        Title = "A full turn goes about another centre than the others",
        Finds = "Three or more full circles or turns of a helix of one mill (setup), each from where the one before has ended and all the same way round, of which one alone has another centre.",
        AtTheMachine = "That turn cuts beside the bore, into what was to stand, or a whole circle out of the part beside it.",
        Setup = """
            { "tools": [ { "number": 4, "kind": "end-mill", "diameter": 8 } ] }
            """,
        Example = """
            G21 G90 G17 G54
            T4 M6
            S3000 M3
            G0 X46 Y30
            G43 H4 Z1 M8
            G3 I6 Z-1 F300
            ~^^^^^^^^^^^^^
            G3 I-6 Z-3
            G3 I-6 Z-5
            G3 I-6
            G1 X40
            G0 Z50 M9
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T4 M6
            S3000 M3
            G0 X46 Y30
            G43 H4 Z1 M8
            G3 I-6 Z-1 F300
            G3 I-6 Z-3
            G3 I-6 Z-5
            G3 I-6
            G1 X40
            G0 Z50 M9
            M5
            M30
            """,
        NotFound = "Turns in several arcs; two turns, of which neither can be told to be the wrong one; a turn between others that goes back on both (arc-other-way); chamfer mills, and tools whose kind or diameter the setup does not give.",
        Source = "That the turns of a bore or a thread have one centre: plane geometry; that I and J are mistyped: common practice.",
    };

    /// <summary>So many turns are held against each other at a time: longer rows are looked at piece by piece.</summary>
    const int MostTurns = 500;

    /// <summary>Fewer tell nothing.</summary>
    const int FewestTurns = 3;

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        var row = new List<(RoundCut Cut, int Line, WorkCoordinates Coordinates)>();
        var told = new HashSet<int>();
        for (var part = 0; part < file.Run.Results.Length; part++)
        {
            var result = file.Run.Results[part];
            foreach (ref readonly var cut in result.Rounds.AsSpan())
            {
                if (row.Count == MostTurns || (row.Count > 0 && !GoesOn(row[^1].Cut, cut)))
                {
                    Look(row, told, file);
                    row.Clear();
                }
                if (cut.Sweep >= RoundCut.Turn - RoundCut.Rounding)
                    row.Add((cut, file.Run.LineOf(part, cut.Line), result.CoordinatesAt(cut.Line)));
            }
        }
        Look(row, told, file);
    }

    static bool GoesOn(in RoundCut last, in RoundCut cut) =>
        ReferenceEquals(last.Tool, cut.Tool) && last.ToFrame == cut.ToFrame && last.Clockwise == cut.Clockwise && cut.Sweep >= RoundCut.Turn - RoundCut.Rounding
        && Math.Abs(last.To.X - cut.From.X) <= RoundCut.Same && Math.Abs(last.To.Y - cut.From.Y) <= RoundCut.Same && Math.Abs(last.To.Z - cut.From.Z) <= RoundCut.Same;

    void Look(List<(RoundCut Cut, int Line, WorkCoordinates Coordinates)> row, HashSet<int> told, in FileContext file)
    {
        if (row.Count < FewestTurns)
            return;
        // Of three turns two agree, or there is no centre that all but one have.
        var usual = AreOne(row[0].Cut, row[1].Cut) || AreOne(row[0].Cut, row[2].Cut) ? row[0].Cut : row[1].Cut;
        var odd = row.FindIndex(turn => !AreOne(turn.Cut, usual));
        if (odd < 0 || row.FindIndex(odd + 1, turn => !AreOne(turn.Cut, usual)) >= 0 || (odd > 0 && odd < row.Count - 1 && IsAcross(row[odd].Cut, usual)) || !told.Add(row[odd].Line))
            return;
        var (cut, line, coordinates) = row[odd];
        // Its end lies on no circle about that centre: arc-radius-mismatch.
        foreach (ref readonly var fault in file.Run.StepAt(line).Faults.Items)
            if (fault.Kind == FaultKind.ArcRadiusMismatch)
                return;
        var say = file.SayAt(line, coordinates);
        file.ReportBlock(this, line, $"This full turn goes about {PlaceOf(cut, say)}, and the {Say.Number(row.Count - 1)} others that begin at the same place go about {PlaceOf(usual, say)}: is its I or J wrong?");
    }

    static bool AreOne(in RoundCut a, in RoundCut b) => Math.Abs(a.CenterX - b.CenterX) <= RoundCut.Same && Math.Abs(a.CenterY - b.CenterY) <= RoundCut.Same;

    /// <summary>Whether one centre lies as far from the place where both turns begin as the other, on the other side.</summary>
    static bool IsAcross(in RoundCut a, in RoundCut b) =>
        Math.Abs(a.CenterX + b.CenterX - 2 * a.From.X) <= 2 * RoundCut.Same && Math.Abs(a.CenterY + b.CenterY - 2 * a.From.Y) <= 2 * RoundCut.Same;

    static string PlaceOf(in RoundCut cut, LengthText say) => say.Place(cut.CenterX - cut.ToFrame.X, cut.CenterY - cut.ToFrame.Y);
}
