using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;

namespace NcLanguage.Checks.Rules;

/// <summary>A slot mill lifted at rapid while stock stands above its flutes.</summary>
public sealed class LiftedUnderStock : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC4017",
        Name = "lifted-under-stock",
        Severity = Severity.Error,
        Title = "A slot mill lifted where stock stands above its flutes",
        Finds = "A rapid straight up of a slot mill with a neck (shankDiameter less than the diameter) from the end of a level cut, where stock stood above its flutes before that cut.",
        AtTheMachine = "The flutes are wider than the slot above them: they are pulled into what they left standing, and the mill breaks or lifts the work out of its clamps.",
        Setup = """
            { "stock": { "min": [0, 0, -30], "max": [100, 60, 0] },
              "tools": [ { "number": 1, "kind": "end-mill", "diameter": 12, "fluteLength": 26, "length": 90 },
                         { "number": 2, "kind": "slot-mill", "diameter": 21, "shankDiameter": 10, "fluteLength": 9, "length": 95 } ] }
            """,
        Example = """
            G21 G90 G17 G54
            T1 M6
            S800 M3
            G0 X-10 Y30
            G43 H1 Z40 M8
            Z-20
            G1 X110 F150
            G0 Z40 M9
            G0 G53 Z0 M5
            T2 M6
            S300 M3
            G0 X-15 Y30
            G43 H2 Z40 M8
            Z-20
            G1 X60 F60
            G0 Z40 M9
            ~^^^^^^^^
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T1 M6
            S800 M3
            G0 X-10 Y30
            G43 H1 Z40 M8
            Z-20
            G1 X110 F150
            G0 Z40 M9
            G0 G53 Z0 M5
            T2 M6
            S300 M3
            G0 X-15 Y30
            G43 H2 Z40 M8
            Z-20
            G1 X115 F60
            G0 Z40 M9
            M5
            M30
            """,
        NotFound = "Lifts that lead aside, lifts at feed, and those after a way back over what the mill has cut already; mills of any other kind, slot mills without shankDiameter or fluteLength; "
            + "anything without a stock, after a cut with a tool of unknown diameter or whose place is not known, in a part of the file that is called, and behind the first 50,000 cuts. "
            + "What an earlier program, another clamping or the casting has opened above the slot is not known: give the stock as it lies there.",
        Source = "Common practice, from memory.",
    };

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        if (file.Run.Job.Setup.Stock is null)
            return;
        HashSet<int>? told = null;
        var parts = file.Stock.Parts;
        for (var part = 0; part < parts.Length; part++)
        {
            foreach (ref readonly var met in parts[part].Lifts.AsSpan())
            {
                ref readonly var rapid = ref parts[part].Source.LowRapids[met.Rapid];
                var line = file.Run.LineOf(part, rapid.Line);
                if (!(told ??= []).Add(line))
                    continue;
                var say = file.SayAt(line, parts[part].Source.CoordinatesAt(rapid.Line));
                var at = rapid.From - rapid.ToFrame;
                file.ReportBlock(this, line, $"This rapid lifts tool {rapid.Tool}, a slot mill, at {say.Place(at.X, at.Y)} where stock stands above its flutes{StockWords.Thickness(met.Above, say)}: lead it out of its slot first.");
            }
        }
    }
}
