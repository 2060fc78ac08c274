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
        if (SheetDrawing.Of(setup, holes) is { } drawing)
            page.Raw($"<figure>\n{drawing.Svg}<figcaption>Lengths in mm from the datum {SheetHtml.Text(frame)}. {SheetHtml.Text(drawing.Holes)}</figcaption>\n</figure>\n");
        else
            page.Paragraph("The setup file gives no stock and no clamps: there is nothing to draw.");
        WriteSolids(page, setup, frame);
        WriteOffsets(page, setup, run);
    }

    static void WriteStock(SheetHtml page, Setup setup, SheetRun run, string frame)
    {
        page.Paragraph(setup.Stock is { } stock
            ? $"Stock: {Size(stock)}; from {Place(stock.Min)} to {Place(stock.Max)} of {frame}, in mm."
            : "Stock: not given.");
        var reach = run.Reach;
        if (reach.IsKnown)
            page.Paragraph($"While it cuts, the tip of the tool goes from {Place(reach.Low)} to {Place(reach.High)} of {frame}, in mm.");
        if (reach.Unknown > 0)
            page.Paragraph($"{Say.Count(reach.Unknown, "cut")} at places that are not known in {frame}.");
    }

    static void WriteSolids(SheetHtml page, Setup setup, string frame)
    {
        var rows = setup.Obstacles.Select(obstacle => Row("clamp or obstacle", obstacle)).Concat(setup.Supports.Select(support => Row("support", support))).ToList();
        if (rows.Count == 0)
        {
            page.Paragraph(setup.ClampHeight is { } height
                ? $"Clamps are not listed; their height is given as Z{Say.Number(height)} mm."
                : setup.ObstaclesAreListed ? "The setup file says that nothing stands on the table." : "Clamps: not given.");
            return;
        }
        page.Table("solids", $"Clamps and supports, from the datum {frame}",
            [
                new("name", IsText: true), new("what", IsText: true), new("shape", IsText: true), new("X from", "mm"), new("X to", "mm"), new("Y from", "mm"), new("Y to", "mm"),
                new("Z from", "mm"), new("Z to", "mm"),
            ],
            rows);
    }

    static string[] Row(string what, Obstacle solid)
    {
        var (min, max) = (solid.Bounds.Min, solid.Bounds.Max);
        var shape = solid is CylinderObstacle round ? $"round, {Say.Mm(round.Diameter)} about X{Say.Number(round.CenterX)} Y{Say.Number(round.CenterY)}" : "box";
        return [solid.Name, what, shape, Say.Number(min.X), Say.Number(max.X), Say.Number(min.Y), Say.Number(max.Y), Say.Number(min.Z), Say.Number(max.Z)];
    }

    static void WriteOffsets(SheetHtml page, Setup setup, SheetRun run)
    {
        var offsets = run.WorkOffsets.Union(setup.WorkOffsets.Keys).Order().ToList();
        if (offsets.Count == 0)
            return;
        page.Table("offsets", "Work offsets: machine coordinates of each datum",
            [new("offset", IsText: true), new("X", "mm"), new("Y", "mm"), new("Z", "mm"), new("used", IsText: true), new("measured X", "mm"), new("measured Y", "mm"), new("measured Z", "mm")],
            offsets.Select(offset =>
            {
                var place = setup.WorkOffsets.TryGetValue(offset, out var known) ? known : (Point3?)null;
                return new[]
                {
                    WorkOffsetName.Format(offset) + (offset == setup.Frame ? " (datum of this sheet)" : ""), SheetSay.Given(place?.X), SheetSay.Given(place?.Y), SheetSay.Given(place?.Z),
                    run.WorkOffsets.Contains(offset) ? "yes" : "no", "", "", "",
                };
            }));
        if (run.WritesOffsets)
            page.Paragraph("The program writes or shifts offsets itself: at the machine they may differ from these while it runs.");
    }

    static string Size(Box3 box)
    {
        var size = box.Max - box.Min;
        return $"{Say.Number(size.X)} × {Say.Number(size.Y)} × {Say.Number(size.Z)} mm";
    }

    static string Place(Point3 place) => $"X{Say.Number(place.X)} Y{Say.Number(place.Y)} Z{Say.Number(place.Z)}";
}
