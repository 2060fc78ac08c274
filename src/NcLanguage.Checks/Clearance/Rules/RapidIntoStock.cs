using NcLanguage.Checks.Analysis;

namespace NcLanguage.Checks.Rules;

/// <summary>A rapid into stock that has not been cut away.</summary>
public sealed class RapidIntoStock : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC4005",
        Name = "rapid-into-stock",
        Severity = Severity.Error,
        Title = "A rapid into stock that still stands",
        Finds = "A rapid below the top of the stock that meets what the cuts before it have left standing. A rapid back into what has been cut is sound. "
            + "Of one that comes from where nobody knows, the first in Z after home or a tool change say, it is asked whether it ends in the stock. Feeds of a probe are held against the stock like rapids, as a warning, since a probe goes into what was cast or cut before; probe moves (G31, G38) are not.",
        AtTheMachine = "The tool runs into solid material at full rapid, perhaps with the spindle standing, and breaks; a probe breaks at a feed as well.",
        Setup = """
            { "stock": { "min": [0, 0, -15], "max": [100, 60, 0] },
              "tools": [ { "number": 5, "kind": "end-mill", "diameter": 10, "fluteLength": 30, "length": 90 } ] }
            """,
        Example = """
            G21 G90 G17 G54
            T5 M6
            S3000 M3
            G0 X20 Y30
            G43 H5 Z50 M8
            Z-2
            ~^^
            G1 X80 F300
            G0 Z50 M9
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T5 M6
            S3000 M3
            G0 X-10 Y30
            G43 H5 Z50 M8
            Z-2
            G1 X80 F300
            G0 Z50 M9
            M5
            M30
            """,
        NotFound = "Contacts shallower than 0.02 mm or narrower than one and a half cells of the height field, the depth told is a least one; shank and holder, which are holder-meets-stock; anything after a cut with a tool of unknown "
            + "diameter, a cut whose place is not known (under radius compensation by a radius that is not known, say) or a call. An R level inside the stock is r-inside-stock. Rapids behind the first "
            + "50,000 cuts are not looked at, and where cuts are many the height field is coarsened, so that narrow contacts pass. What is cast or an earlier clamping has cut away is not known: give the stock as it lies there, its bores, slots and pockets as its hollows.",
        Source = "Common practice.",
    };

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        if (file.Run.Job.Setup.Stock is not { } stock)
            return;
        var parts = file.Stock.Parts;
        var (lastLine, lastTool, lastLevel) = (-1, -1, double.NaN);
        for (var part = 0; part < parts.Length; part++)
        {
            foreach (ref readonly var met in parts[part].Met.AsSpan())
            {
                ref readonly var rapid = ref parts[part].Source.LowRapids[met.Rapid];
                var line = file.Run.LineOf(part, rapid.Line);
                // All traverses at one R level have one cause.
                var level = rapid.AtR ? rapid.From.Z : double.NaN;
                if (line == lastLine || (lastTool == rapid.Tool && lastLevel == level))
                    continue;
                (lastLine, lastTool, lastLevel) = (line, rapid.Tool, level);
                var say = file.SayAt(line, parts[part].Source.CoordinatesAt(rapid.Line));
                var tip = met.Tip - rapid.ToFrame;
                var move = rapid.IsFed ? $"T{rapid.Tool} is a probe, and this feed, which does not stop at contact, takes it into stock that still stands" : "This rapid goes into stock that still stands";
                file.ReportBlock(this, line, $"{move}{StockWords.Depth(met.Depth, say)}, at "
                    + $"{say.Place(StockWords.Nearest(tip.X, say), StockWords.Nearest(tip.Y, say), rapid.From.Z == rapid.To.Z ? tip.Z : StockWords.Nearest(tip.Z, say))} (the stock's top is at {say.Level(stock.Max.Z - rapid.ToFrame.Z)}){(rapid.IsFed ? ", unless the room there is cast or was cut elsewhere" : "")}.",
                    severity: rapid.IsFed ? Severity.Warning : Severity.Error);
            }
        }
    }
}
