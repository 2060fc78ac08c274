using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>A helix that climbs between others that go down, or the other way round.</summary>
public sealed class HelixTurnsBack : Rule
{
    /// <summary>Levels are alike that differ by less, mm.</summary>
    const double SameLevel = 0.01;

    public override RuleInfo Info { get; } = new()
    {
        Id = "NC5016",
        Name = "helix-turns-back",
        Severity = Severity.Warning,
        Title = "A helix climbs between helices that go down",
        Finds = "Whole turns of a mill one after the other about one centre with one radius, of which one climbs between two that go down, or goes down between two that climb, and neither comes back to a level where it was before, unless all three would go one way by equal steps with one level changed.",
        AtTheMachine = "A level is wrong: one turn cuts air, or goes down at once by more than was meant.",
        Setup = """
            { "tools": [ { "number": 5, "kind": "end-mill", "diameter": 12, "fluteLength": 30, "length": 90 } ] }
            """,
        Example = """
            G21 G90 G17 G54
            T5 M6
            S3000 M3
            G0 X12 Y0
            G43 H5 Z2 M8
            G1 Z0 F300
            G3 I-12 Z-3 F600
            I-12 Z-6
            I-12 Z9
            ~^^^^^^
            I-12 Z-12
            I-12
            G1 X5
            G0 Z50 M9
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T5 M6
            S3000 M3
            G0 X12 Y0
            G43 H5 Z2 M8
            G1 Z0 F300
            G3 I-12 Z-3 F600
            I-12 Z-6
            I-12 Z-9
            I-12 Z-12
            I-12
            G1 X5
            G0 Z50 M9
            M5
            M30
            """,
        NotFound = "The first and the last helix of a row; thread mills, of which thread-mill-pitch speaks; arcs of less than a turn, and turns that a line stands between.",
        Source = "Common practice.",
    };

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        if (!file.HasFewHoles)
            return;
        var row = new List<(RoundCut Cut, int Line, WorkCoordinates Coordinates)>();
        for (var part = 0; part < file.Run.Results.Length; part++)
        {
            var result = file.Run.Results[part];
            foreach (ref readonly var cut in result.Rounds.AsSpan())
            {
                if (row.Count > 0 && (cut.BeginsAnew || !cut.Continues(row[^1].Cut)))
                    row.Clear();
                row.Add((cut, file.Run.LineOf(part, cut.Line), result.CoordinatesAt(cut.Line)));
                if (row.Count > 3)
                    row.RemoveAt(0);
                if (row.Count == 3 && TurnsBack(row[0].Cut, row[1].Cut, row[2].Cut))
                    Tell(file, row[1].Cut, row[1].Line, row[1].Coordinates, row[0].Line);
            }
        }
    }

    static bool TurnsBack(in RoundCut before, in RoundCut cut, in RoundCut behind) =>
        IsTurn(before) && IsTurn(cut) && IsTurn(behind) && Rise(before) * Rise(cut) < 0 && Rise(cut) * Rise(behind) < 0
            && ((Math.Abs(cut.To.Z - before.From.Z) > SameLevel && Math.Abs(behind.To.Z - before.To.Z) > SameLevel) || IsEvenBut(before, cut, behind));

    /// <summary>Whether the three would go one way by equal steps if the level between the first two were another.</summary>
    static bool IsEvenBut(in RoundCut before, in RoundCut cut, in RoundCut behind) => Math.Abs(cut.To.Z - before.From.Z - 2 * Rise(behind)) <= SameLevel;

    static bool IsTurn(in RoundCut cut) => cut.Tool.Kind != ToolKind.ThreadMill && cut.Sweep >= RoundCut.Turn - RoundCut.Rounding && Math.Abs(Rise(cut)) > SameLevel;

    static double Rise(in RoundCut cut) => cut.To.Z - cut.From.Z;

    void Tell(in FileContext file, in RoundCut cut, int line, WorkCoordinates coordinates, int earlier)
    {
        var say = file.SayAt(line, coordinates);
        var (from, to) = (say.Level(cut.From.Z - cut.ToFrame.Z), say.Level(cut.To.Z - cut.ToFrame.Z));
        var (start, end) = StepContext.WordsOf(file.Run.BlockAt(line));
        var (firstStart, firstEnd) = StepContext.WordsOf(file.Run.BlockAt(earlier));
        file.Report(this, line, start, end,
            Rise(cut) > 0 ? $"This helix climbs from {from} to {to}, between others that go down: one of the two levels is wrong." : $"This helix goes down from {from} to {to}, between others that climb: one of the two levels is wrong.",
            related: earlier == line ? null : new RelatedPlace(earlier, firstStart, firstEnd, "The helix before it."));
    }
}
