using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>A drill, reamer or tap that is fed sideways through the stock.</summary>
public sealed class FedSideways : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC5013",
        Name = "fed-sideways",
        Severity = Severity.Error,
        Title = "A drill, reamer or tap fed sideways through the stock",
        Finds = "A straight feed, level or on a slope, of a drill, a reamer or a tap that meets what the cuts before it have left standing of the stock. Each tool is told once, at the first block where it does.",
        AtTheMachine = "The tool is not made to cut with its side: it is bent until it breaks. Most often it is the wrong tool, because a tool change is missing or names another pocket.",
        Setup = """
            { "stock": { "min": [0, 0, -15], "max": [100, 60, 0] },
              "tools": [ { "number": 3, "kind": "drill", "diameter": 8, "pointAngle": 118, "fluteLength": 60, "length": 120 },
                         { "number": 5, "kind": "end-mill", "diameter": 8, "fluteLength": 30, "length": 90 } ] }
            """,
        Example = """
            G21 G90 G17 G54
            G0 G53 Z0
            T3 M6
            S1500 M3
            G0 X-10 Y30
            G43 H3 Z40 M8
            G1 Z-4 F300
            X110
            ~^^^
            G0 Z40
            G0 G53 Z0 M9
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            G0 G53 Z0
            T5 M6
            S1500 M3
            G0 X-10 Y30
            G43 H5 Z40 M8
            G1 Z-4 F300
            X110
            G0 Z40
            G0 G53 Z0 M9
            M5
            M30
            """,
        NotFound = "Arcs. Spot drills, centre drills, countersinks and counterbores, which may chamfer an edge or engrave; tools whose kind or diameter the setup does not give. Contacts shallower than 0.02 mm or narrower than "
            + "one and a half cells of the height field; anything without a stock, after a cut with a tool of unknown diameter or whose place is not known, and behind the first 50,000 cuts. "
            + "A slot or pocket that an earlier program, another clamping or the casting has made is not known: give the stock as it lies there.",
        Source = "Common practice.",
    };

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        if (file.Run.Job.Setup.Stock is null)
            return;
        foreach (var (line, met) in ToolContacts.FirstOfEachTool(file, part => part.Sideways))
        {
            var kind = ToolKindName.Format(file.Run.Job.Setup.FindTool(met.Tool)!.Kind!.Value);
            file.ReportBlock(this, line, $"Tool {met.Tool}, a {kind}, is fed sideways into stock that still stands{StockWords.Depth(met.Depth, file.SayAt(line, null))}; it is not made to cut with its side. Is it the tool that is meant here?");
        }
    }
}
