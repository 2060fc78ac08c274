using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Reports.Sheet;

/// <summary>What stands on the machine's table: the drawing, clamps and supports, work offsets, the stock that is needed.</summary>
static class SheetTable
{
    public static void Write(SheetHtml page, ProgramAnalysis analysis, SheetRun run, HoleTable holes)
    {
        var setup = analysis.Setup;
        var frame = WorkOffsetName.Format(setup.Frame);
        WriteStock(page, setup, run, frame);
        if (SheetDrawing.Of(setup, holes, run.Say) is { } drawing)
            page.Raw($"<figure>\n{drawing.Svg}<figcaption>Lengths in {run.Say.Lengths.UnitWord} from the datum {SheetHtml.Text(frame)}. {SheetHtml.Text(drawing.Holes)}</figcaption>\n</figure>\n");
        else
            page.Paragraph("The setup file gives no stock and no clamps: there is nothing to draw.");
        WriteHollows(page, setup, run.Say, frame);
        WriteSolids(page, setup, run.Say, frame);
        WriteOffsets(page, setup, run);
    }

    static void WriteStock(SheetHtml page, Setup setup, SheetRun run, string frame)
    {
        var say = run.Say;
        page.Paragraph(setup.Stock is { } stock
            ? $"Stock: {say.Size(stock)}; from {say.Place(stock.Min)} to {say.Place(stock.Max)} of {frame}, in {say.Lengths.UnitWord}."
            : "Stock: not given.");
        var reach = run.Reach;
        if (reach.IsKnown)
            page.Paragraph($"While it cuts, the tip of the tool goes from {say.Place(reach.Low)} to {say.Place(reach.High)} of {frame}, in {say.Lengths.UnitWord}.");
        if (reach.Unknown > 0)
            page.Paragraph($"{Say.Count(reach.Unknown, "cut")} at places that are not known in {frame}.");
    }

    static void WriteHollows(SheetHtml page, Setup setup, SheetSay say, string frame)
    {
        if (setup.Stock is not { } stock || setup.Hollows.IsEmpty)
            return;
        page.Table("hollows", $"What is hollow in the stock already, from the datum {frame}",
            [
                new("name", IsText: true), new("shape", IsText: true), new("X from", say.Lengths.Unit), new("X to", say.Lengths.Unit), new("Y from", say.Lengths.Unit), new("Y to", say.Lengths.Unit),
                new("down to", IsText: true),
            ],
            setup.Hollows.Select(hollow => new[]
            {
                hollow.Name,
                hollow.IsRound ? $"bore, {say.Lengths.Length(hollow.Width)} about {say.Lengths.Place(hollow.CenterX, hollow.CenterY)}"
                    : hollow.CornerRadius > 0 ? $"pocket, corners R{say.Lengths.Length(hollow.CornerRadius)}" : "pocket",
                say.Length(hollow.MinX), say.Length(hollow.MaxX), say.Length(hollow.MinY), say.Length(hollow.MaxY),
                hollow.Bottom > stock.Min.Z ? say.Lengths.Level(hollow.Bottom) : "through",
            }));
    }

    static void WriteSolids(SheetHtml page, Setup setup, SheetSay say, string frame)
    {
        var rows = setup.Obstacles.Select(obstacle => Row("clamp or obstacle", obstacle, say)).Concat(setup.Supports.Select(support => Row("support", support, say))).ToList();
        if (rows.Count == 0)
        {
            page.Paragraph(setup.ClampHeight is { } height
                ? $"Clamps are not listed; their height is given as Z{say.Lengths.Length(height)}."
                : setup.ObstaclesAreListed ? "The setup file says that nothing stands on the table." : "Clamps: not given.");
            return;
        }
        page.Table("solids", $"Clamps and supports, from the datum {frame}",
            [
                new("name", IsText: true), new("what", IsText: true), new("shape", IsText: true), new("X from", say.Lengths.Unit), new("X to", say.Lengths.Unit), new("Y from", say.Lengths.Unit), new("Y to", say.Lengths.Unit),
                new("Z from", say.Lengths.Unit), new("Z to", say.Lengths.Unit),
            ],
            rows);
    }

    static string[] Row(string what, Obstacle solid, SheetSay say)
    {
        var (min, max) = (solid.Bounds.Min, solid.Bounds.Max);
        var shape = solid is CylinderObstacle round ? $"round, {say.Lengths.Length(round.Diameter)} about {say.Lengths.Place(round.CenterX, round.CenterY)}" : "box";
        return [solid.Name, what, shape, say.Length(min.X), say.Length(max.X), say.Length(min.Y), say.Length(max.Y), say.Length(min.Z), say.Length(max.Z)];
    }

    static void WriteOffsets(SheetHtml page, Setup setup, SheetRun run)
    {
        var offsets = run.WorkOffsets.Union(setup.WorkOffsets.Keys).Order().ToList();
        if (offsets.Count == 0)
            return;
        var say = run.Say;
        page.Table("offsets", "Work offsets: machine coordinates of each datum",
            [new("offset", IsText: true), new("X", say.Lengths.Unit), new("Y", say.Lengths.Unit), new("Z", say.Lengths.Unit), new("used", IsText: true), new("measured X", say.Lengths.Unit), new("measured Y", say.Lengths.Unit), new("measured Z", say.Lengths.Unit)],
            offsets.Select(offset =>
            {
                var place = setup.WorkOffsets.TryGetValue(offset, out var known) ? known : (Point3?)null;
                return new[]
                {
                    WorkOffsetName.Format(offset) + (offset == setup.Frame ? " (datum of this sheet)" : ""), say.Given(place?.X), say.Given(place?.Y), say.Given(place?.Z),
                    run.WorkOffsets.Contains(offset) ? "yes" : "no", "", "", "",
                };
            }));
        if (run.WritesOffsets)
            page.Paragraph("The program writes or shifts offsets itself: at the machine they may differ from these while it runs.");
    }
}
