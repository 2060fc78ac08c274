using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Drawing;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>A helix that a mill leaves without a level turn at its bottom.</summary>
public sealed class HelixFloor : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC5022",
        Name = "helix-floor",
        Severity = Severity.Warning,
        Title = "A helix ends without a level turn at its bottom",
        Finds = "Whole turns of a mill that go down as a helix and end in the stock, where nothing after them, nor before, clears the ring that they go over down to their end: its floor climbs by as much as the last turn went down.",
        AtTheMachine = "The floor of the bore or groove is a ramp: its first part is less deep than the last by one turn of the helix.",
        Setup = """
            { "stock": { "min": [0, 0, -15], "max": [100, 60, 0] }, "tools": [ { "number": 5, "kind": "end-mill", "diameter": 6, "flutes": 2, "fluteLength": 20, "length": 90 } ] }
            """,
        Example = """
            G21 G90 G17 G54
            T5 M6
            S5000 M3
            G0 X60 Y30
            G43 H5 Z40 M8
            Z2
            G1 Z0 F300
            G3 I-10 Z-1 F400
            I-10 Z-2
            ~^^^^^^^
            G0 Z40 M9
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T5 M6
            S5000 M3
            G0 X60 Y30
            G43 H5 Z40 M8
            Z2
            G1 Z0 F300
            G3 I-10 Z-1 F400
            I-10 Z-2
            I-10
            G0 Z40 M9
            M5
            M30
            """,
        NotFound = "Helices whose last turn goes down by less than 0.05 mm; mills that are neither end mills nor bull-nose mills, whose helix may be a groove; places where the drawing's list has a hole: there hole-shallow tells how deep it is all round. Where cuts are very many no place is looked at.",
        Source = "Common practice: a helix is closed by a full circle at its depth.",
    };

    /// <summary>A floor that climbs by less is level, mm.</summary>
    const double Level = 0.05;

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        var run = file.Run;
        if (!file.HasFewHoles || run.Job.Setup.Stock is not { } stock || !HasRounds(run))
            return;
        MilledLevels? levels = null;
        var faults = new List<PlaceFault>();
        foreach (var place in file.Places.All)
        {
            if (run.Job.Setup.Holes.Any(hole => WorkedPlaces.IsAt(hole, place)))
                continue;
            foreach (var work in place.Works)
            {
                var floor = Math.Max(work.End, stock.Min.Z);
                if (work is not { Kind: WorkKind.Mill, Tool.Kind: ToolKind.EndMill or ToolKind.BullMill } || !(work.Tip - floor > Level) || !(floor < stock.Max.Z - Level))
                    continue;
                var radius = (work.Diameter - work.Tool!.Diameter!.Value) / 2;
                if ((levels ??= new MilledLevels(run)).HighestOn(place.X, place.Y, radius) is var highest && highest > floor + Level && highest < stock.Max.Z - Level)
                    faults.Add(new PlaceFault(place, work, work));
            }
        }
        foreach (var group in PlaceGroups.Of(faults))
        {
            var work = group[0].Work;
            var say = file.SayAt(work.Line, work.Coordinates);
            file.ReportBlock(
                this, work.Line, $"The helix of T{work.ToolNumber} {PlaceGroups.Places(group, say)} goes down to {say.Level(work.End - work.ToFrame.Z)} and has no level turn there: its floor climbs by up to {say.Length(Math.Round(work.Tip - work.End, 3))}.");
        }
    }

    static bool HasRounds(ProgramRun run)
    {
        foreach (var part in run.Results)
            if (part.Rounds.Length > 0)
                return true;
        return false;
    }
}
