using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;

namespace NcLanguage.Checks.Rules;

/// <summary>A move on which the tool's holder or its thicker shank runs into stock that still stands.</summary>
public sealed class HolderMeetsStock : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC4015",
        Name = "holder-meets-stock",
        Severity = Severity.Error,
        Title = "The tool's holder or shank runs into the stock",
        Finds = "A cut or a low rapid on which the holder, or a shank thicker than the cutting part, meets what the cuts up to there have left standing of the stock, the tool's own cut taken away; and a level cut on which the neck of a slot mill meets what stands above its flutes, because the slot for the neck is missing, too narrow or not deep enough. "
            + "Each tool is told once, at the first block where it does.",
        AtTheMachine = "The tool fits, but what holds it does not: the holder rubs or rams into the top of the work, and the tool is pulled out or breaks.",
        Setup = """
            { "stock": { "min": [0, 0, -60], "max": [100, 60, 0] },
              "tools": [ { "number": 5, "kind": "end-mill", "diameter": 10, "length": 80, "holderDiameter": 40, "holderGauge": 40 } ] }
            """,
        Example = """
            G21 G90 G17 G54
            T5 M6
            S3000 M3
            G0 X-10 Y-4
            G43 H5 Z50 M8
            Z-42
            ~^^^
            G1 X110 F300
            G0 Z50 M9
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T5 M6
            S3000 M3
            G0 X-10 Y-4
            G43 H5 Z50 M8
            Z-38
            G1 X110 F300
            G0 Z50 M9
            M5
            M30
            """,
        NotFound = "Holders of tools for which the setup gives no holderDiameter, holderGauge or length, and shanks without shankDiameter and fluteLength; necks of slot mills on arcs that rise or fall and on slopes; a block that deeper-than-flutes tells; a shank of a centre drill. "
            + "Contacts shallower than 0.02 mm or narrower than one and a half cells of the height field; anything after a cut with a tool of unknown diameter or whose place is not known; "
            + "in a stretch of 128 lines what lies behind the first 2,000,000 cells that holders go over, and all behind the first 50,000 cuts. A holder counts as one cylinder from its end up. "
            + "What an earlier clamping has cut away is not known: give the stock as it lies there.",
        Source = "Common practice.",
    };

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        if (file.Run.Job.Setup.Stock is not { } stock)
            return;
        HashSet<int>? told = null;
        HashSet<int>? deep = null;
        var parts = file.Stock.Parts;
        for (var part = 0; part < parts.Length; part++)
        {
            foreach (ref readonly var met in parts[part].Bodies.AsSpan())
            {
                if (!(told ??= []).Add(met.Tool))
                    continue;
                var source = parts[part].Source;
                var line = file.Run.LineOf(part, met.Cut >= 0 ? source.Cuts[met.Cut].Line : source.LowRapids[met.Rapid].Line);
                if ((deep ??= DeeperThanFlutes.LinesOf(file.Run)).Contains(line))
                    continue;
                var say = file.SayAt(line, null);
                var what = met.Part == ToolPart.Holder ? "holder" : "shank";
                file.ReportBlock(this, line, $"The {what} of tool {met.Tool} meets stock that still stands{StockWords.Depth(met.Depth, say)} on this {(met.Cut >= 0 ? "cut" : "rapid")}: it begins "
                    + $"{say.Length(Begins(file.Run.Job, met))} above the tip, and the tip goes to {say.Length(Math.Round(stock.Max.Z - met.LowestTip, 4))} below the stock's top.");
            }
        }
    }

    static double Begins(Job job, in BodyMet met)
    {
        foreach (ref readonly var cylinder in job.ShapeOf(met.Tool).Cylinders)
            if (cylinder.Part == met.Part)
                return cylinder.Bottom;
        return double.NaN;
    }
}
