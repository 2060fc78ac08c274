using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Clearance;

/// <summary>What is open in the stock before the first cut.</summary>
public sealed partial class StockField
{
    /// <summary>The stock of a setup, which has one, as it is before the first cut.</summary>
    internal static StockField Of(Setup setup, double cellSize, CellRule rule = CellRule.Touched)
    {
        var field = new StockField(setup.Stock!.Value, cellSize, rule);
        foreach (var hollow in setup.Hollows)
            field.Open(hollow);
        return field;
    }

    /// <summary>Lowers the cells of a hollow to its floor: under <see cref="CellRule.Touched"/> those that it touches even in part.</summary>
    public void Open(Hollow hollow)
    {
        ArgumentNullException.ThrowIfNull(hollow);
        var (floor, corner) = (Kept(hollow.Bottom), hollow.CornerRadius + _growth);
        var (halfX, halfY) = (hollow.Width / 2 - hollow.CornerRadius, (hollow.MaxY - hollow.MinY) / 2 - hollow.CornerRadius);
        var (firstRow, lastRow) = RowsBetween(hollow.MinY - _growth, hollow.MaxY + _growth);
        for (var row = firstRow; row <= lastRow; row++)
        {
            var beyond = Math.Max(0, Math.Abs(_stock.Min.Y + (row + 0.5) * _depth - hollow.CenterY) - halfY);
            if (beyond > corner)
                continue;
            var half = halfX + Math.Sqrt(corner * corner - beyond * beyond);
            var first = Math.Clamp(Math.Ceiling((hollow.CenterX - half - _stock.Min.X) / _width - 0.5), 0, _columns);
            var last = Math.Clamp(Math.Floor((hollow.CenterX + half - _stock.Min.X) / _width - 0.5), -1, _columns - 1);
            for (var column = (int)first; column <= (int)last; column++)
                _tops[row * _columns + column] = Math.Min(_tops[row * _columns + column], floor);
        }
    }
}
