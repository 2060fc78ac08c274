using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Drawing;

namespace NcLanguage.Checks.Rules;

/// <summary>Back boring whose bar is not moved aside far enough to pass through the bore.</summary>
public sealed class BackBoreShift : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC3071",
        Name = "back-bore-shift",
        Severity = Severity.Error,
        Title = "The bar for back boring does not pass through the bore",
        Finds = "G87 whose shift, by Q or by I and J, is smaller than half of what the bar's diameter is larger than the bore that the program, or the setup's stock, has at that place down to where the bar cuts. Once for each shift and width of a bore.",
        AtTheMachine = "The edge of the standing bar comes down on the mouth of the bore at rapid: the bar, the insert and the part are spoilt.",
        Setup = """
            { "tools": [ { "number": 6, "kind": "boring-bar", "diameter": 46, "length": 150 } ],
              "stock": { "min": [0, 0, -30], "max": [80, 60, 0], "hollows": [ { "center": [40, 30], "diameter": 32 } ] } }
            """,
        Example = """
            G21 G90 G17 G54 G94
            T6 M6
            S300 M3
            G0 X40 Y30
            G43 H6 Z30 M8
            G98 G87 X40 Y30 Z-36 R5 K-28 Q3 F30
            ~                            ^^
            G80
            G0 Z50 M9
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54 G94
            T6 M6
            S300 M3
            G0 X40 Y30
            G43 H6 Z30 M8
            G98 G87 X40 Y30 Z-36 R5 K-28 Q7.5 F30
            G80
            G0 Z50 M9
            M5
            M30
            """,
        NotFound = "Bars of which the setup gives no diameter; bores that neither the program nor the stock has, or not down to where the bar cuts; whether the bar's other side has room (bore-shift tells of that in G76).",
        Source = "Shift ≥ (bar − bore) / 2 (plane geometry); how G87 enters: NISTIR 6556 §3.5.16.8; the shift by Q: common practice.",
    };

    /// <summary>Lengths that differ by less are one, mm.</summary>
    const double Rounding = 0.01;

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        var bores = new List<(WorkedPlace Place, int At)>();
        foreach (var place in PlaceGroups.PlacesOf(file, Machine.Setups.ToolKind.BoringBar))
            for (var i = 0; i < place.Works.Count; i++)
                if (place.Works[i] is { Cycle: 87, Tool.Diameter: not null })
                    bores.Add((place, i));
        // A block that goes on with the shift of the one before goes on with its slip.
        var told = new HashSet<(int Tool, double Shift, double Bore, int Line)>();
        foreach (var (place, at) in bores.OrderBy(bore => bore.Place.Works[bore.At].Line))
            Look(file, place, at, told);
    }

    void Look(in FileContext file, WorkedPlace place, int at, HashSet<(int Tool, double Shift, double Bore, int Line)> told)
    {
        var work = place.Works[at];
        var bar = work.Tool!.Diameter!.Value;
        var step = file.Run.StepAt(work.Line);
        var state = step.After;
        var top = state.BoreTop + work.ToFrame.Z;
        var (shift, letter) = CycleRuns.BoreShiftOf(state);
        var bore = double.NaN;
        foreach (var other in HollowWorks.At(file.Run.Job.Setup, place.X, place.Y).Concat(place.Works.Take(at)))
            if (other.Makes && other.Tip <= top + Rounding && !(other.Diameter <= bore))
                bore = other.Diameter;
        var needed = (bar - bore) / 2;
        if (!(shift < needed - Rounding))
            return;
        var goesOn = !told.Add((work.ToolNumber, shift, bore, -1));
        if (step.Words.Has(letter) ? !told.Add((work.ToolNumber, shift, bore, work.Line)) : goesOn)
            return;
        var say = file.SayAt(work.Line, work.Coordinates);
        var message = $"G87 moves the bar {say.Length(shift)} aside before it goes down, and its {say.Length(bar)} want {say.Length(needed)} to pass through the bore of {say.Length(bore)} at {say.Place(place.X - work.ToFrame.X, place.Y - work.ToFrame.Y)}.";
        if (!step.Words.Has(letter))
        {
            file.ReportBlock(this, work.Line, message);
            return;
        }
        var word = file.Run.BlockAt(work.Line).Tokens[step.Words.TokenOf(letter)];
        file.Report(this, work.Line, word.Start, word.End, message);
    }
}
