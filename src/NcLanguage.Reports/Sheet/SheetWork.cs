using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Operations;
using NcLanguage.Control.State;
using NcLanguage.Machine.Setups;
using NcLanguage.Reports.Holes;
using NcLanguage.Reports.Trace;

namespace NcLanguage.Reports.Sheet;

/// <summary>What the program does: operations, closest approaches, stops, holes.</summary>
static class SheetWork
{
    /// <summary>Operations listed at most.</summary>
    const int MostOperations = 300;

    /// <summary>Work offsets named of one operation.</summary>
    const int MostNames = 4;

    /// <summary>Holes listed at most: some hundred sheets of paper.</summary>
    const int MostHoles = 5_000;

    /// <summary>Stops listed at most.</summary>
    const int MostStops = 300;

    /// <summary>Approaches listed at most.</summary>
    const int MostApproaches = 12;

    public static void WriteOperations(SheetHtml page, ProgramAnalysis analysis, SheetRun run)
    {
        var list = run.Operations;
        if (list.Operations.IsEmpty)
        {
            page.Paragraph("The program makes no move.");
            return;
        }
        var hasRemoved = analysis.Setup.Stock is not null;
        var names = analysis.Main.NamesCoordinates;
        var say = run.Say;
        page.Table("operations", "Operations in the order of the run",
            [
                new("no."), new("operation", IsText: true), new("tool", IsText: true), new("lines"), new("holes"), new("speed", "1/min"), new("feed", say.Lengths.FeedUnit), new("deepest Z", say.Lengths.Unit),
                .. names ? new Column[] { new("work offset", IsText: true) } : [],
                new("nearest", say.Lengths.Unit), .. hasRemoved ? new Column[] { new("removed", say.Lengths.VolumeUnit) } : [], new("rapid", say.Lengths.Unit), new("cutting", say.Lengths.Unit), new("time", "s"),
            ],
            list.Operations.Take(MostOperations).Select(operation => Row(operation, say, hasRemoved, names)));
        if (list.Operations.Length > MostOperations)
            page.Paragraph($"{list.Operations.Length - MostOperations} more are not listed here: nclanguage trace tells them all.");
        var seconds = $"{Say.Number(list.Totals.Seconds, 1)} s";
        page.Paragraph($"In all {(list.Totals.Seconds < 60 ? seconds : $"{Say.Seconds(list.Totals.Seconds)} ({seconds})")}: "
            + $"rapids {Say.Number(list.Totals.RapidSeconds, 1)} s, feeds {Say.Number(list.Totals.FeedSeconds, 1)} s, dwells {Say.Number(list.Totals.DwellSeconds, 1)} s, "
            + $"tool changes {Say.Number(list.Totals.ChangeSeconds, 1)} s."
            + (list.Totals.UnknownMoves > 0 ? $" {Say.Count(list.Totals.UnknownMoves, "move")} of unknown length or time not counted." : ""));
        if (list.Returns is { Higher: > 0 } cost)
            page.Paragraph($"{cost.Higher} of {cost.Hops} traverses between holes run higher than the setup file asks for, which costs {Say.Number(cost.Difference, 1)} s.");
        if (TraceJson.CutShort(run.Totals.End) is { } cutShort)
            page.Paragraph($"The run was followed only so far: {cutShort}. What comes behind is on no part of this sheet.", "loud");
    }

    static string[] Row(Operation operation, SheetSay say, bool hasRemoved, bool namesCoordinates) =>
    [
        Say.Number(operation.Number), operation.Title, SheetSay.Tool(operation.Tool), SheetSay.Lines(operation), operation.Holes > 0 ? Say.Number(operation.Holes) : SheetSay.None,
        SheetSay.Speeds(operation.Speed), say.Feeds(operation.Feed), operation.Kind == OperationKind.None ? SheetSay.None : say.Length(operation.Deepest),
        .. namesCoordinates ? new[] { operation.Kind == OperationKind.None ? SheetSay.None : Under(operation, say) } : [],
        operation.Nearest is { } nearest ? say.Length(nearest.Distance) : SheetSay.None,
        .. hasRemoved ? new[] { say.Volume(operation.Removed) } : [],
        say.Rapid(operation.Totals), say.Cut(operation.Totals), SheetSay.Seconds(operation.Totals),
    ];

    /// <summary>G54, G55: the coordinates an operation works in, that of its deepest place first.</summary>
    static string Under(Operation operation, SheetSay say)
    {
        if (operation.DeepestIn is not { } deepest)
            return SheetSay.None;
        var names = operation.Under.Remove(deepest).Insert(0, deepest).Select(say.Coordinates).Distinct().ToArray();
        return names.Length > MostNames ? $"{string.Join(", ", names.Take(MostNames - 1))} and {names.Length - MostNames + 1} more" : string.Join(", ", names);
    }

    public static void WriteApproaches(SheetHtml page, ProgramRun run, SheetRun sheet)
    {
        var (job, list, say) = (run.Job, sheet.Operations, sheet.Say);
        if (job.Obstacles.IsEmpty)
        {
            page.Paragraph(job.Setup.ObstaclesAreListed ? "The setup file says that nothing stands on the table." : "Not known: the setup file lists no clamps.");
            return;
        }
        if (list.Approaches.IsEmpty)
        {
            page.Paragraph("Not known: no move's place among the clamps is.");
            return;
        }
        page.Table("approaches", "The nearest place to each obstacle in each operation, nearest first",
            [
                new("distance", say.Lengths.Unit), new("obstacle", IsText: true), new("line"), new("operation"), new("tool", IsText: true), new("part", IsText: true), new("move", IsText: true),
                new("tip at X", say.Lengths.Unit), new("Y", say.Lengths.Unit), new("Z", say.Lengths.Unit), .. run.NamesCoordinates ? new Column[] { new("work offset", IsText: true) } : [],
            ],
            list.Approaches.Take(MostApproaches).Select(approach => Row(approach.Operation, approach.Pass, job, say, run.NamesCoordinates)));
        if (list.Approaches.Length > MostApproaches)
            page.Paragraph($"{list.Approaches.Length - MostApproaches} more are not listed, none of them nearer.");
    }

    static string[] Row(Operation operation, NearestPass pass, Job job, SheetSay say, bool namesCoordinates) =>
    [
        pass.IsContact ? SheetHtml.Alarm + (pass.IsAxisOnly ? "CONTACT" : $"CONTACT {say.Length(pass.Distance)}") : say.Length(pass.Distance),
        job.Obstacles[pass.Obstacle].Name, SheetSay.Line(pass.Line, pass.File), Say.Number(operation.Number), SheetSay.Tool(pass.Tool), OperationJson.Word(pass.Part),
        pass.IsRapid ? "rapid" : "feed", say.Length(pass.Tip.X), say.Length(pass.Tip.Y), say.Length(pass.Tip.Z),
        .. namesCoordinates ? new[] { say.Coordinates(pass.Coordinates) } : [],
    ];

    public static void WriteStops(SheetHtml page, SheetRun run)
    {
        if (run.Stops.Count == 0)
        {
            page.Paragraph("The program does not stop before its end.");
            return;
        }
        page.Table("stops", "Where the machine waits for somebody",
            [new("line"), new("block", IsText: true), new("comment", IsText: true), new("tool", IsText: true), new("what", IsText: true), new("times")],
            run.Stops.Take(MostStops).Select(stop => new[]
            {
                SheetSay.Line(stop.Line, stop.File), stop.Block, stop.Comment ?? SheetSay.None, SheetSay.Tool(stop.Tool),
                stop.Kind switch
                {
                    StopKind.ByHand => "take the tool out of the hole by hand, then start",
                    StopKind.Optional => "optional stop; acts only with the switch on",
                    _ => "stop; start again by hand",
                },
                Say.Number(stop.Times),
            }));
        if (run.Stops.Count > MostStops)
            page.Paragraph($"{Say.Number(run.Stops.Count - MostStops)} more are not listed here: nclanguage trace tells every block.");
    }

    public static void WriteHoles(SheetHtml page, HoleTable holes, SheetSay say)
    {
        if (holes.Count == 0)
        {
            page.Paragraph("No hole is drilled in a cycle.");
            return;
        }
        var names = holes.NamesCoordinates;
        page.Paragraph($"Work coordinates{(names ? ", of each hole those of its own work offset" : "")}. \"least\" is the lowest level at which the way to the next hole keeps the setup's clearance, as far as the setup file shows.");
        if (holes.MeetsLimits)
            page.Paragraph(HoleReport.Limits);
        if (holes.Any(row => row.Plane != WorkPlane.XY))
            page.Paragraph("Some holes are not drilled along Z: their places are those of the plane in force.");
        page.Table("holes", "Holes in the order drilled",
            [
                new("no."), new("line"), new("tool", IsText: true), new("cycle", IsText: true), .. names ? new Column[] { new("work offset", IsText: true) } : [], new("X", say.Lengths.Unit), new("Y", say.Lengths.Unit), new("R", say.Lengths.Unit), new("bottom", say.Lengths.Unit), new("leaves at", say.Lengths.Unit),
                new("least", say.Lengths.Unit), new("dwell", "s"), new("speed", "1/min"), new("feed", say.Lengths.FeedUnit),
            ],
            holes.Take(MostHoles).Select(row => (string[])
            [
                Say.Number(row.Number), SheetSay.Line(row.Line, row.File), SheetSay.Tool(row.Hole.Tool), $"G{row.Hole.Cycle}",
                .. names ? new[] { say.Coordinates(row.Coordinates) } : [],
                say.Length(row.Hole.X), say.Length(row.Hole.Y), say.Length(row.Hole.RLevel), say.Length(row.Hole.Bottom), say.Length(row.Hole.ReturnTo),
                double.IsNaN(row.LeastReturn) ? SheetSay.None : say.Length(row.LeastReturn), DwellOf(row.Hole.DwellSeconds),
                SheetSay.Speed(row.Speed), say.Feed(row.Feed),
            ]));
        if (holes.Count > MostHoles)
            page.Paragraph($"{Say.Number(holes.Count - MostHoles)} more are not listed here: nclanguage holes lists them all.");
    }

    // A cycle that could wait and has no time to wait for says nothing, as in the table of holes. Far too short ones keep their figures.
    static string DwellOf(double seconds) => double.IsNaN(seconds) || seconds == 0 ? SheetSay.None : Say.Number(seconds, seconds < 0.01 ? 6 : 3);
}
