using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Operations;
using NcLanguage.Cli.Common;
using NcLanguage.Reports.Trace;
using Spectre.Console;

namespace NcLanguage.Cli.Trace;

/// <summary>What stands under a trace: operations and tools with their times, what the return levels cost, and the closest approaches.</summary>
sealed class OperationText(Screen screen, Job job, OperationList list, bool namesCoordinates, LengthText say)
{
    /// <summary>Approaches shown; the JSON has more.</summary>
    const int MostApproaches = 10;

    public void WriteOperations()
    {
        if (list.Operations.IsEmpty)
            return;
        // Each unit is as wide as its other, so that the columns stand under their heads.
        new ScreenTable(
            screen, [
                new("op", 5, Gap: 0), new("tool", 4), new("lines", 10), new("time", 12), new($"rapid {say.Unit}", 10), new($"cut {say.Unit}", 10), new("holes", 6),
                .. HasStock ? new ScreenColumn[] { new($"removed {say.VolumeUnit}", 11, Gap: 2), new($"depth of cut {say.Unit}", 15, Gap: 2), new($"{say.VolumeUnit}/min", 7, Gap: 2) } : [],
                new("what", Gap: 2, IsText: true),
            ]).Write(list.Operations.Select(operation => new ScreenTable.Row(
            [
                $"{operation.Number}", Tool(operation.Tool), Lines(operation), Time(operation.Totals), Distance(operation.Totals.RapidDistance), Distance(operation.Totals.CutDistance),
                operation.Holes > 0 ? Say.Number(operation.Holes) : "", .. HasStock ? Removed(operation) : [],
                operation.Title + (operation.File is { } file ? $"  in {file}" : ""),
            ])));
        screen.WriteLine();
        if (list.Tools.Length == list.Operations.Length)
            return;
        screen.WriteLine($" tool operations         time   rapid {say.Unit}     cut {say.Unit}", Styles.Heading);
        foreach (var tool in list.Tools)
            screen.WriteLine($"{Tool(tool.Tool),5} {tool.Operations.Length,10} {Row(tool.Totals)}");
        screen.WriteLine();
    }

    /// <summary>How far all moves of the run go together.</summary>
    public string Distances(TraceTotals totals) => $"{Distance(totals.RapidDistance)} {say.Unit} at rapid, {Distance(totals.CutDistance)} {say.Unit} cutting";

    public void WriteReturns()
    {
        if (list.Returns is not { Hops: > 0 } cost)
            return;
        if (cost.Higher == 0)
        {
            screen.WriteParagraph($"Return levels: no traverse between holes runs higher than the setup asks for, of {cost.Hops} that could be judged.", 0);
            return;
        }
        screen.WriteParagraph(
            $"Return levels: {cost.Higher} of {Say.Count(cost.Hops, "traverse")} between holes {(cost.Higher == 1 ? "runs" : "run")} higher than the setup asks for; "
            + $"above R {Say.Seconds(cost.Chosen)} as written, {Say.Seconds(cost.Least)} at the least levels that clear: {Say.Seconds(cost.Difference)} more.", 0);
    }

    public void WriteApproaches()
    {
        if (list.Approaches.IsEmpty)
            return;
        screen.WriteLine();
        screen.WriteLine("Closest approaches, one for each obstacle in each operation:", Styles.Heading);
        foreach (var (operation, pass) in list.Approaches.Take(MostApproaches))
        {
            var distance = !pass.IsContact ? say.Length(pass.Distance) : pass.IsAxisOnly ? "MEETS with its axis" : $"MEETS, {ContactText.Depth(pass.Distance, say)}";
            screen.WriteParagraph(
                $"{distance,24}  {job.Obstacles[pass.Obstacle].Name}, line {pass.Line + 1}{(pass.File is { } file ? $" of {file}" : "")}, {Tool(pass.Tool)} {OperationJson.Word(pass.Part)}, "
                + $"tip at {say.Place(pass.Tip.X, pass.Tip.Y, pass.Tip.Z)}{(namesCoordinates ? $" ({pass.Coordinates.Name(say.IsInch)})" : "")}, {(pass.IsRapid ? "rapid" : "feed")}, operation {operation.Number}",
                0,
                pass.IsContact ? (Style?)Styles.Wrong : null,
                hang: 26);
        }
        if (list.Approaches.Length > MostApproaches)
            screen.WriteLine($"{Say.Count(list.Approaches.Length - MostApproaches, "other")} not shown, none of them nearer.");
        screen.WriteLine();
    }

    bool HasStock => job.Setup.Stock is not null;

    string[] Removed(Operation operation) =>
    [
        Volume(operation.Removed), operation.DepthOfCut is { } depth ? Say.Number(say.Of(depth), say.IsInch ? 3 : 2) : "?",
        operation.Totals.FeedSeconds == 0 ? "" : Volume(operation.RemovalRate),
    ];

    string Volume(double? cubicMm) => cubicMm is { } volume ? Say.Number(say.OfVolume(volume), 2) : "?";

    string Row(MoveTotals totals) => $"{Time(totals),12} {Distance(totals.RapidDistance),10} {Distance(totals.CutDistance),10}";

    static string Time(MoveTotals totals) => (totals.UnknownMoves > 0 ? "> " : "") + Say.Seconds(totals.Seconds);

    /// <summary>A length of a way, which nobody wants to the last digit.</summary>
    string Distance(double mm) => Say.Number(say.Of(mm), 1);

    static string Tool(int tool) => tool < 0 ? "?" : $"T{tool}";

    static string Lines(Operation operation) => operation.FirstLine == operation.LastLine ? $"{operation.FirstLine + 1}" : $"{operation.FirstLine + 1}-{operation.LastLine + 1}";
}
