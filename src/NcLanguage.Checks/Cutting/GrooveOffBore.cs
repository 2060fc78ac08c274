using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Drawing;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>A groove or a thread that is milled in a bore about another centre than the bore's.</summary>
public sealed class GrooveOffBore : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC5024",
        Name = "groove-off-bore",
        Severity = Severity.Warning,
        Title = "A groove or thread in a bore has another centre than the bore",
        Finds = "Full circles of a slot mill, or the helix of a thread mill, whose centre lies beside that of a bore of the program, or of the setup's stock, by no more than the tool's radius, where the tool goes down into that bore, cuts wider than it, and no bore stands about its own centre.",
        AtTheMachine = "The groove is deeper on one side than on the other, or the thread is full on one side alone.",
        Setup = """
            { "stock": { "min": [0, 0, -30], "max": [80, 60, 0], "hollows": [ { "center": [40, 30], "diameter": 32 } ] },
              "tools": [ { "number": 8, "kind": "slot-mill", "diameter": 20, "shankDiameter": 8, "fluteLength": 3, "length": 100 } ] }
            """,
        Example = """
            G21 G90 G17 G54 G94
            T8 M6
            S900 M3
            G0 X40.5 Y30
            G43 H8 Z5 M8
            Z-10
            G1 X48 F90
            G3 I-7.5
            ~^^^^^^^
            G1 X40.5
            G0 Z50 M9
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54 G94
            T8 M6
            S900 M3
            G0 X40 Y30
            G43 H8 Z5 M8
            Z-10
            G1 X47.5 F90
            G3 I-7.5
            G1 X40
            G0 Z50 M9
            M5
            M30
            """,
        NotFound = "Centres that are farther off than the tool's radius: another hole may be meant. Circles of end mills, which cut pockets and steps beside a bore's axis on purpose.",
        Source = "That a groove and a thread stand about the axis of their bore: common practice.",
    };

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        if (!file.HasFewHoles || !HasRounds(file.Run))
            return;
        var places = file.Places.All;
        var told = new HashSet<int>();
        foreach (var place in places)
            foreach (var work in place.Works)
                if (IsInBore(work) && !told.Contains(work.Line) && !HasBore(file.Run.Job.Setup, place, work) && Nearest(file.Run.Job.Setup, places, place, work) is { } bore && told.Add(work.Line))
                    Tell(file, place, work, bore);
    }

    static bool HasRounds(ProgramRun run)
    {
        // Most jobs have no such tool, and a large contour very many arcs.
        if (!run.Job.Setup.Tools.Any(tool => MillsInBores(tool.Kind)))
            return false;
        foreach (var part in run.Results)
            foreach (ref readonly var round in part.Rounds.AsSpan())
                if (MillsInBores(round.Tool.Kind))
                    return true;
        return false;
    }

    static bool MillsInBores(ToolKind? kind) => kind is ToolKind.SlotMill or ToolKind.ThreadMill;

    static bool IsInBore(in PlaceWork work) => work is { Kind: WorkKind.MillThread } or { Kind: WorkKind.Mill, Tool.Kind: ToolKind.SlotMill };

    /// <summary>Whether the tool of a groove or thread goes down within a bore and cuts wider than it.</summary>
    static bool Holds(in PlaceWork bore, in PlaceWork work) =>
        bore.Makes && bore.Tool?.Kind != ToolKind.SlotMill && bore.Tip <= work.Tip && bore.Diameter > work.Tool!.Diameter && bore.Diameter < work.Diameter;

    static bool HasBore(Setup setup, WorkedPlace place, PlaceWork work) =>
        place.Works.Exists(other => other.Makes && other.Tool?.Kind != ToolKind.SlotMill && other.Tip <= work.Tip) || HollowWorks.At(setup, place.X, place.Y).Any(other => other.Tip <= work.Tip);

    static (double X, double Y, double Diameter)? Nearest(Setup setup, IReadOnlyList<WorkedPlace> places, WorkedPlace of, PlaceWork work)
    {
        var (nearest, least) = (((double X, double Y, double Diameter)?)null, work.Tool!.Diameter!.Value / 2);
        foreach (var place in places)
            foreach (var other in place.Works)
                Try(place.X, place.Y, other);
        foreach (var hollow in setup.Hollows)
            if (hollow.IsRound)
                foreach (var other in HollowWorks.At(setup, hollow.CenterX, hollow.CenterY))
                    Try(hollow.CenterX, hollow.CenterY, other);
        return nearest;

        void Try(double x, double y, in PlaceWork bore)
        {
            // Of a bore that was cored, roughed and finished the last is what the groove is cut into: the widest.
            if (double.Hypot(x - of.X, y - of.Y) is var off && off <= least && Holds(bore, work) && !(off == least && bore.Diameter < nearest?.Diameter))
                (nearest, least) = ((x, y, bore.Diameter), off);
        }
    }

    void Tell(in FileContext file, WorkedPlace place, in PlaceWork work, (double X, double Y, double Diameter) bore)
    {
        var say = file.SayAt(work.Line, work.Coordinates);
        var shift = work.ToFrame;
        file.ReportBlock(this, work.Line, $"The {(work.Kind == WorkKind.MillThread ? "thread" : "groove")} is milled about {say.Place(place.X - shift.X, place.Y - shift.Y)}, and the bore of {say.Length(bore.Diameter)} around it stands at "
            + $"{say.Place(bore.X - shift.X, bore.Y - shift.Y)}, {say.Length(double.Hypot(bore.X - place.X, bore.Y - place.Y))} beside it.");
    }
}
