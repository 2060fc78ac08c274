using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Clearance;

/// <summary>What is drawn of a height field beside its heights: silhouettes seen from the front and the side, and outlines seen from above. Lengths in mm.</summary>
public static class StockOutline
{
    /// <summary>The highest that stands in each column of cells, from the least X: the silhouette seen along Y. At the field's floor nothing stands.</summary>
    public static float[] Front(StockField field)
    {
        ArgumentNullException.ThrowIfNull(field);
        var highest = new float[field.Columns];
        Array.Fill(highest, field.Floor);
        for (var row = 0; row < field.Rows; row++)
        {
            var heights = field.Heights.Slice(row * field.Columns, field.Columns);
            for (var column = 0; column < heights.Length; column++)
                highest[column] = Math.Max(highest[column], heights[column]);
        }
        return highest;
    }

    /// <summary>The highest that stands in each row of cells, from the least Y: the silhouette seen along X.</summary>
    public static float[] Side(StockField field)
    {
        ArgumentNullException.ThrowIfNull(field);
        var highest = new float[field.Rows];
        for (var row = 0; row < highest.Length; row++)
            highest[row] = Strip.Highest(field.Heights.Slice(row * field.Columns, field.Columns));
        return highest;
    }

    /// <summary>The outlines, seen from above, of what stands higher than a level: closed rings along the borders of cells, what stands on their left, corners
    /// only (the first is not repeated). Holes in it are rings the other way round.</summary>
    /// <param name="level">Z, mm.</param>
    public static IReadOnlyList<(double X, double Y)[]> Above(StockField field, double level)
    {
        ArgumentNullException.ThrowIfNull(field);
        return new Rings(field, level).Trace();
    }

    /// <summary>Follows the borders between cells that stand and cells that do not.</summary>
    readonly ref struct Rings(StockField field, double level)
    {
        // Ways along the lattice of cell corners: 0 +X, 1 +Y, 2 −X, 3 −Y.
        static ReadOnlySpan<sbyte> StepX => [1, 0, -1, 0];

        static ReadOnlySpan<sbyte> StepY => [0, 1, 0, -1];

        readonly ReadOnlySpan<float> _heights = field.Heights;

        public IReadOnlyList<(double X, double Y)[]> Trace()
        {
            var rings = new List<(double X, double Y)[]>();
            var corners = new List<(double X, double Y)>();
            // A border along +X is begun at once: every ring has one, and each is passed once.
            var passed = new bool[(field.Rows + 1) * field.Columns];
            for (var row = 0; row <= field.Rows; row++)
            {
                for (var column = 0; column < field.Columns; column++)
                {
                    if (passed[row * field.Columns + column] || !Stands(column, row) || Stands(column, row - 1))
                        continue;
                    corners.Clear();
                    Follow(column, row, passed, corners);
                    rings.Add([.. corners]);
                }
            }
            return rings;
        }

        void Follow(int startX, int startY, bool[] passed, List<(double X, double Y)> corners)
        {
            var (x, y, way) = (startX, startY, 0);
            do
            {
                if (way == 0)
                    passed[y * field.Columns + x] = true;
                (x, y) = (x + StepX[way], y + StepY[way]);
                var next = Turn(x, y, way);
                if (next != way)
                    corners.Add((field.Stock.Min.X + x * field.CellWidth, field.Stock.Min.Y + y * field.CellDepth));
                way = next;
            }
            while (x != startX || y != startY || way != 0);
        }

        /// <summary>Where the border goes on at a corner, what stands kept on the left; where cells meet only at the corner they are kept apart.</summary>
        int Turn(int x, int y, int way)
        {
            var (left, right) = way switch
            {
                0 => (Stands(x, y), Stands(x, y - 1)),
                1 => (Stands(x - 1, y), Stands(x, y)),
                2 => (Stands(x - 1, y - 1), Stands(x - 1, y)),
                _ => (Stands(x, y - 1), Stands(x - 1, y - 1)),
            };
            return !left ? way + 1 & 3 : right ? way + 3 & 3 : way;
        }

        bool Stands(int column, int row) =>
            column >= 0 && row >= 0 && column < field.Columns && row < field.Rows
            && _heights[row * field.Columns + column] is var top && top > level && top > field.Floor;
    }
}
