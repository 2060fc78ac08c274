using System.Numerics;
using System.Runtime.CompilerServices;

namespace NcLanguage.Checks.Clearance;

/// <summary>The end of a tool that stands or goes at one level over the cells of a field: as <see cref="EndForm"/> tells, but for some cells at once and in single precision, as the heights are held.</summary>
/// <param name="form">The end.</param>
/// <param name="level">Z of its tip, mm.</param>
/// <param name="floor">The height that a cell keeps at least.</param>
readonly struct EndProfile(EndForm form, double level, float floor)
{
    readonly Vector<float> _square = new((float)(form.Radius * form.Radius));
    readonly Vector<float> _flat = new((float)form.FlatRadius);
    readonly Vector<float> _corner = new((float)(form.CornerRadius * form.CornerRadius));
    readonly Vector<float> _steepness = new((float)form.Steepness);
    readonly Vector<float> _cornerLevel = new((float)(level + form.CornerRadius - form.Drop));
    readonly Vector<float> _tip = new((float)level);
    readonly Vector<float> _lowest = new(level <= floor ? floor : (float)level);
    readonly bool _isRound = form.CornerRadius > 0, _isFlat = form.IsFlat;

    /// <summary>Cells of a row that there have to be: so many are looked at at once.</summary>
    public static int LeastCells => Vector<float>.Count;

    /// <summary>Lowers the cells of a row from one to another that lie within the end's radius of a path. Others beside them are lowered too where the end comes over them.</summary>
    /// <param name="path">Where the tool goes; not written to: what is only read would be copied at each call.</param>
    /// <param name="row">The heights of the whole row; no fewer than <see cref="LeastCells"/>.</param>
    /// <param name="first">The first of the cells.</param>
    /// <param name="last">The last of them.</param>
    /// <param name="x">How far the middle of the row's first cell lies from the path's origin along X, mm.</param>
    /// <param name="width">From one to the next, mm.</param>
    /// <param name="y">How far the row lies from the origin along Y, mm.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Lower<TPath>(ref TPath path, Span<float> row, int first, int last, double x, double width, double y, ref CellsTaken sum)
        where TPath : struct, ILevelPath
    {
        var (across, step) = (new Vector<float>((float)y), Vector<float>.Indices * (float)width);
        // A local one stays in registers.
        var taken = sum;
        for (var column = first; column <= last; column += Vector<float>.Count)
        {
            // The last ones are looked at again rather than beyond the row.
            var at = Math.Min(column, row.Length - Vector<float>.Count);
            var before = new Vector<float>(row[at..]);
            // The end is nowhere lower than its tip, and most cuts go where others went.
            if (!Vector.GreaterThanAny(before, _lowest))
                continue;
            var square = path.SquaresTo(new Vector<float>((float)(x + at * width)) + step, across);
            var level = Vector.ConditionalSelect(Vector.LessThanOrEqual(square, _square), LevelAt(square), before);
            var after = Vector.MinNative(before, level);
            after.CopyTo(row[at..]);
            taken.Add(before - after);
        }
        sum = taken;
    }

    /// <summary>Z of the end at the square of a distance from the axis, mm, not below the tip nor the floor.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    Vector<float> LevelAt(Vector<float> square)
    {
        if (_isFlat)
            return _lowest;
        var beyond = Vector.MaxNative(Vector.SquareRoot(square) - _flat, Vector<float>.Zero);
        var level = _isRound
            ? _cornerLevel - Vector.SquareRoot(Vector.MaxNative(_corner - beyond * beyond, Vector<float>.Zero))
            : _tip + _steepness * beyond;
        return Vector.MaxNative(level, _lowest);
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
