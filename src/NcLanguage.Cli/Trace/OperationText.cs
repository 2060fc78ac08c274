using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Operations;
using NcLanguage.Cli.Common;
using NcLanguage.Reports.Trace;
using Spectre.Console;

namespace NcLanguage.Cli.Trace;

/// <summary>What stands under a trace: operations and tools with their times, what the return levels cost, and the closest approaches.</summary>
sealed class OperationText(Screen screen, Job job, OperationList list, bool namesCoordinates)
{
    /// <summary>Approaches shown; the JSON has more.</summary>
    const int MostApproaches = 10;

    static readonly Style Heading = new(decoration: Decoration.Bold);
    static readonly Style Contact = new(Color.Red, decoration: Decoration.Bold);

    public void WriteOperations()
    {
        if (list.Operations.IsEmpty)
            return;
        screen.WriteLine("   op tool      lines         time   rapid mm     cut mm  holes" + (HasStock ? "  removed cm³  depth of cut mm  cm³/min" : "") + "  what", Heading);
        foreach (var operation in list.Operations)
            screen.WriteLine(
                $"{operation.Number,5} {Tool(operation.Tool),4} {Lines(operation),10} {Row(operation.Totals)} {(operation.Holes > 0 ? Say.Number(operation.Holes) : ""),6}{Removed(operation)}  {operation.Title}"
                + (operation.File is { } file ? $"  in {file}" : ""));
        screen.WriteLine();
        if (list.Tools.Length == list.Operations.Length)
            return;
        screen.WriteLine(" tool operations         time   rapid mm     cut mm", Heading);
        foreach (var tool in list.Tools)
            screen.WriteLine($"{Tool(tool.Tool),5} {tool.Operations.Length,10} {Row(tool.Totals)}");
        screen.WriteLine();
    }

    public void WriteReturns()
    {
        if (list.Returns is not { Hops: > 0 } cost)
            return;
        if (cost.Higher == 0)
        {
            screen.WriteLine($"Return levels: no traverse between holes runs higher than the setup asks for, of {cost.Hops} that could be judged.");
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
        screen.WriteLine("Closest approaches, one for each obstacle in each operation:", Heading);
        foreach (var (operation, pass) in list.Approaches.Take(MostApproaches))
        {
            var distance = !pass.IsContact ? Say.Mm(pass.Distance) : pass.IsAxisOnly ? "MEETS with its axis" : $"MEETS, {Say.Mm(Math.Max(0, -pass.Distance))} deep";
            screen.WriteLine(
                $"{distance,24}  {job.Obstacles[pass.Obstacle].Name}, line {pass.Line + 1}{(pass.File is { } file ? $" of {file}" : "")}, {Tool(pass.Tool)} {OperationJson.Word(pass.Part)}, "
                + $"tip at {Say.Place(pass.Tip.X, pass.Tip.Y)} {Say.Level(pass.Tip.Z)}{(namesCoordinates ? $" ({pass.Coordinates.Name()})" : "")}, {(pass.IsRapid ? "rapid" : "feed")}, operation {operation.Number}",
                pass.IsContact ? (Style?)Contact : null);
        }
        if (list.Approaches.Length > MostApproaches)
            screen.WriteLine($"{Say.Count(list.Approaches.Length - MostApproaches, "other")} not shown, none of them nearer.");
        screen.WriteLine();
    }

    bool HasStock => job.Setup.Stock is not null;

    string Removed(Operation operation) => !HasStock ? ""
        : $"{Known(operation.Removed / 1000, 2),13}{Known(operation.DepthOfCut, 2),17}{(operation.Totals.FeedSeconds == 0 ? "" : Known(operation.RemovalRate / 1000, 2)),9}";

    static string Known(double? value, int digits) => value is { } known ? Say.Number(known, digits) : "?";

    static string Row(MoveTotals totals) =>
        $"{(totals.UnknownMoves > 0 ? "> " : "") + Say.Seconds(totals.Seconds),12} {Say.Number(totals.RapidDistance, 1),10} {Say.Number(totals.CutDistance, 1),10}";

    static string Tool(int tool) => tool < 0 ? "?" : $"T{tool}";

    static string Lines(Operation operation) => operation.FirstLine == operation.LastLine ? $"{operation.FirstLine + 1}" : $"{operation.FirstLine + 1}-{operation.LastLine + 1}";
}
