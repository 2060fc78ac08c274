using System.Numerics;
using System.Runtime.CompilerServices;

namespace NcLanguage.Checks.Clearance;

/// <summary>Any end of a tool that stands or goes at one level: as <see cref="EndForm"/> tells, by the distance from the path alone.</summary>
/// <param name="form">The end.</param>
/// <param name="level">Z of its tip, mm.</param>
/// <param name="floor">The height that a cell keeps at least.</param>
struct EndProfile<TPath>(TPath path, EndForm form, double level, float floor) : IEndOver
    where TPath : struct, ILevelPath
{
    readonly Vector<float> _square = new((float)(form.Radius * form.Radius));
    readonly Vector<float> _flat = new((float)form.FlatRadius);
    readonly Vector<float> _corner = new((float)(form.CornerRadius * form.CornerRadius));
    readonly Vector<float> _steepness = new((float)form.Steepness);
    readonly Vector<float> _cornerLevel = new((float)(level + form.CornerRadius - form.Drop));
    readonly Vector<float> _tip = new((float)level);
    readonly Vector<float> _lowest = new(level <= floor ? floor : (float)level);
    readonly bool _isRound = form.CornerRadius > 0, _isFlat = form.IsFlat;

    public readonly Vector<float> Lowest => _lowest;

    public Vector<float> LevelOver(Vector<float> x, Vector<float> y, Vector<float> otherwise)
    {
        var square = path.SquaresTo(x, y);
        return Vector.ConditionalSelect(Vector.LessThanOrEqual(square, _square), LevelAt(square), otherwise);
    }

    /// <summary>Z of the end at the square of a distance from the axis, mm, not below the tip nor the floor.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    readonly Vector<float> LevelAt(Vector<float> square)
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
