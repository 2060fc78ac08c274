using System.Numerics;
using System.Runtime.CompilerServices;

namespace NcLanguage.Checks.Clearance;

/// <summary>The end of a tool on a path, over some places at once, in single precision, as the heights are held.</summary>
interface IEndOver
{
    /// <summary>What it is nowhere lower than, mm.</summary>
    Vector<float> Lowest { get; }

    /// <summary>The lowest Z of the end over places, mm; another height where it does not come over one.</summary>
    /// <param name="x">The places along X, counted from the path's origin, mm.</param>
    /// <param name="y">The same along Y.</param>
    Vector<float> LevelOver(Vector<float> x, Vector<float> y, Vector<float> otherwise);
}

/// <summary>Lowers cells of a row, some at a time.</summary>
static class CellRow
{
    /// <summary>Cells of a row that there have to be: so many are looked at at once.</summary>
    public static int LeastCells => Vector<float>.Count;

    /// <summary>Lowers the cells of a row from one to another. Others beside them are lowered too where the end comes over them.</summary>
    /// <param name="end">Not written to: what is only read would be copied at each call.</param>
    /// <param name="row">The heights of the whole row; no fewer than <see cref="LeastCells"/>.</param>
    /// <param name="first">The first of the cells.</param>
    /// <param name="last">The last of them.</param>
    /// <param name="x">How far the middle of the row's first cell lies from the path's origin along X, mm.</param>
    /// <param name="width">From one to the next, mm.</param>
    /// <param name="y">How far the row lies from the origin along Y, mm.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Lower<TEnd>(ref TEnd end, Span<float> row, int first, int last, double x, double width, double y, ref CellsTaken sum)
        where TEnd : struct, IEndOver
    {
        var (across, step) = (new Vector<float>((float)y), Vector<float>.Indices * (float)width);
        // A local one stays in registers.
        var taken = sum;
        for (var column = first; column <= last; column += Vector<float>.Count)
        {
            // The last ones are looked at again rather than beyond the row.
            var at = Math.Min(column, row.Length - Vector<float>.Count);
            var before = new Vector<float>(row[at..]);
            // Most cuts go where others went.
            if (!Vector.GreaterThanAny(before, end.Lowest))
                continue;
            var after = Vector.MinNative(before, end.LevelOver(new Vector<float>((float)(x + at * width)) + step, across, before));
            after.CopyTo(row[at..]);
            taken.Add(before - after);
        }
        sum = taken;
    }
}

/// <summary>What is taken from some cells at once.</summary>
struct CellsTaken
{
    Vector<float> _heights, _deepest;

    public void Add(Vector<float> taken)
    {
        _heights += taken;
        _deepest = Vector.MaxNative(_deepest, taken);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly void AddTo(ref CutSum sum)
    {
        sum.Height += Vector.Sum(_heights);
        for (var i = 0; i < Vector<float>.Count; i++)
            sum.Deepest = Math.Max(sum.Deepest, _deepest[i]);
    }
}
