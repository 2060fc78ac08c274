using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Rules;

/// <summary>A run of feeds that comes nowhere near what stands of the stock.</summary>
public sealed class CutInAir : Rule
{
    /// <summary>A run of feeds in air is told from so many seconds on.</summary>
    const double MostSeconds = 10;

    /// <summary>The same where the tool cuts nothing else before it is changed.</summary>
    const double MostSecondsOfAll = 2;

    public override RuleInfo Info { get; } = new()
    {
        Id = "NC4014",
        Name = "cut-in-air",
        Severity = Severity.Note,
        Title = "Feeds that cut nothing but air",
        Finds = "Feeds and arcs in a row, rapids between them not counted, of one tool that never comes within 1 mm of what still stands of the stock, or of a pointed tool (chamfer mill, spot or centre drill, countersink) whose cone never comes within 0.25 mm of it, or whose tip never goes down to its top: from 10 s on, or from 2 s on where the tool "
            + "cuts nothing at all before it is changed. Feeds straight up and down are ways to and from the work and do not count, but for the strokes down of a tool that works standing, such as a broach, where they never come down to the top of the stock. One finding for each row, at its first block.",
        AtTheMachine = "The tool feeds along above or beside the part: at best the time is lost, at worst a depth, a datum or a length offset is wrong and the part stays uncut.",
        Setup = """
            { "stock": { "min": [0, 0, -15], "max": [100, 60, 0] },
              "tools": [ { "number": 5, "kind": "end-mill", "diameter": 10, "fluteLength": 30, "length": 90 } ] }
            """,
        Example = """
            G21 G90 G17 G54
            T5 M6
            S3000 M3
            G0 X-10 Y30
            G43 H5 Z50 M8
            Z5
            G1 X110 F300
            ~^^^^^^^^^^^
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
            Z-5
            G1 X110 F300
            G0 Z50 M9
            M5
            M30
            """,
        NotFound = "Rows that come near what stands anywhere, such as a finishing pass gone twice; feeds beside the stock under another work offset than the setup's, where another part may stand; anything without a stock or with a tool of unknown diameter, after a cut whose place or tool is not "
            + "known, and behind the first 50,000 cuts; a cone below the top of the stock under radius compensation, unless the program writes the offset itself. Where cuts are many the height field is coarsened and more counts as near. A stock that stands larger than the setup says is cut in truth.",
        Source = "Common practice.",
    };

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        if (file.Run.Job.Setup.Stock is null)
            return;
        var row = new Row();
        var (tool, toolCuts) = (int.MinValue, false);
        var parts = file.Stock.Parts;
        for (var part = 0; part < parts.Length; part++)
        {
            file.Cancel.ThrowIfCancellationRequested();
            var source = parts[part].Source;
            // Where every cut of a part meets something, it has one thing to tell: that a row in air ends here.
            if (parts[part].InAir.Length == 0)
            {
                foreach (var cutter in source.Questions.Cutters)
                {
                    Tell(file, row, isAll: cutter != tool && !toolCuts);
                    (row, tool, toolCuts) = (new Row(), cutter, true);
                }
                continue;
            }
            var at = 0;
            foreach (ref readonly var cut in source.Cuts)
            {
                if (cut.Tool != tool)
                {
                    Tell(file, row, isAll: !toolCuts);
                    (row, tool, toolCuts) = (new Row(), cut.Tool, false);
                }
                if (parts[part].IsInAir(at++) && !IsOfAnotherPart(file.Run.Job, source, cut))
                {
                    row.Add(source, cut, file.Run.LineOf(part, cut.Line), StockQuestions.WorksByStrokes(file.Run.Job, cut.Tool));
                    continue;
                }
                toolCuts = true;
                Tell(file, row, isAll: false);
                row = new Row();
            }
        }
        // Nobody knows what the tool meets behind the last cut that was followed.
        if (row.Line >= 0)
            Tell(file, row, isAll: !toolCuts && NextCutter(file.Run, parts.Length) != tool);
    }

    /// <summary>Whether a cut is beside the stock under another work offset than the setup's: nobody knows what stands there.</summary>
    static bool IsOfAnotherPart(Job job, PartResult part, in StockCut cut) =>
        job.IsOutsideFrame(part.CoordinatesAt(cut.Line).WorkOffset) && Footprint.Distance(job.Stock, cut.From.X, cut.From.Y) > 0 && Footprint.Distance(job.Stock, cut.To.X, cut.To.Y) > 0;

    /// <summary>The tool of the first cut from a part on; a number that no tool has where there is none.</summary>
    static int NextCutter(ProgramRun run, int from)
    {
        foreach (var part in run.Results[from..])
            if (part.Questions.Cutters is [var tool, ..])
                return tool;
        return int.MaxValue;
    }

    void Tell(in FileContext file, in Row row, bool isAll)
    {
        if (row.Line < 0 || !(row.Seconds >= (isAll ? MostSecondsOfAll : MostSeconds)) || HangsOnOffset(file, row))
            return;
        var say = file.SayAt(row.Line, null);
        var feeds = row.Count == 1 ? "This feed meets" : $"From here on {row.Count} feeds and arcs meet";
        var seconds = Say.Seconds(Math.Round(row.Seconds, 1));
        // Above the stock it is air at whatever place; how long the way is stays unknown where the place is.
        var way = double.IsNaN(row.Length) ? $"{seconds} through air" : $"{say.Length(Math.Round(row.Length, 1))} through air in {seconds}";
        file.ReportBlock(this, row.Line, $"{feeds} nothing of the stock: {way}"
            + (isAll ? $"; tool {row.Tool} cuts nothing at all." : "."));
    }

    /// <summary>Whether it hangs on a number in the control's table of offsets how near a cone comes: the radius at which it is to break the edge stands there, not that of the tool.</summary>
    static bool HangsOnOffset(in FileContext file, in Row row)
    {
        if (!(row.Lowest < file.Run.Job.Stock.Max.Z) || file.Run.Job.EndOf(row.Tool) is not { IsFlat: false, Steepness: > 0 })
            return false;
        // In a program that is called for several tools the first run may be another's.
        var met = file.Run.StepAt(row.Line).After;
        return met.IsCompensationOn && (met.Tool != row.Tool || met.OffsetData?.Radius(met.D) is null);
    }

    /// <summary>Feeds in air in a row.</summary>
    struct Row()
    {
        public int Line = -1, Count, Tool;
        public double Length, Seconds;
        public double Lowest = double.PositiveInfinity;

        public void Add(PartResult part, in StockCut cut, int line, bool worksByStrokes)
        {
            // Up and down the tool goes to its work and leaves it; a stroke down is the work of some.
            if (float.IsNaN(cut.Seconds) || (cut.Arc < 0 && Upright.Is(cut.From, cut.To) && !(worksByStrokes && cut.To.Z < cut.From.Z)))
                return;
            if (Line < 0)
                (Line, Tool) = (line, cut.Tool);
            Count++;
            Lowest = Math.Min(Lowest, Math.Min(cut.From.Z, cut.To.Z));
            Seconds += cut.Seconds;
            Length += cut.Arc < 0 ? Point3.Distance(cut.From, cut.To) : part.PathOf(cut).Length;
        }
    }
}
