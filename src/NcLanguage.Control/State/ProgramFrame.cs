using NcLanguage.Control.Moves;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Control.State;

/// <summary>What lies between the words of the program and the work coordinates: polar words, then scaling, then rotation (common practice).
/// An immutable value; parts that are off are null.</summary>
public sealed record ProgramFrame(PolarPlace? Polar, Scaling? Scaling, Rotation? Rotation)
{
    const int AllAxes = 7;

    /// <summary>Null where all parts are off.</summary>
    public static ProgramFrame? Of(PolarPlace? polar, Scaling? scaling, Rotation? rotation) =>
        polar is null && scaling is null && rotation is null ? null : new(polar, scaling, rotation);

    static readonly PolarPlace AnyPolar = new(WorkPlane.Unknown, Point3.Unknown, double.NaN, double.NaN);
    static readonly Scaling AnyScaling = new(Point3.Unknown, Point3.Unknown);
    static readonly Rotation AnyRotation = new(WorkPlane.Unknown, Point3.Unknown, double.NaN);

    /// <summary>The same parts on, and nothing known of them.</summary>
    public ProgramFrame Forgotten() => new(
        Polar is null ? null : AnyPolar, Scaling is null ? null : AnyScaling, Rotation is null ? null : AnyRotation);

    /// <summary>What is known where either may be in force: a part in which they differ is on, and nothing known of it.</summary>
    public static ProgramFrame? Join(ProgramFrame? a, ProgramFrame? b) => Equals(a, b) ? a : Of(
        Equals(a?.Polar, b?.Polar) ? a?.Polar : AnyPolar,
        Equals(a?.Scaling, b?.Scaling) ? a?.Scaling : AnyScaling,
        Equals(a?.Rotation, b?.Rotation) ? a?.Rotation : AnyRotation);

    /// <summary>Where a programmed place comes to lie in work coordinates, mm.</summary>
    public Point3 ToWork(Point3 programmed)
    {
        var place = Scaling is null ? programmed : Scaling.ToWork(programmed);
        return Rotation is null ? place : Rotation.ToWork(place);
    }

    /// <summary>Which programmed place lies at a place in work coordinates, mm.</summary>
    public Point3 ToProgram(Point3 work)
    {
        var place = Rotation is null ? work : Rotation.ToProgram(work);
        return Scaling is null ? place : Scaling.ToProgram(place);
    }

    /// <summary>The programmed numbers of a place, mm, once one axis of the work has been led to where no words led it.</summary>
    /// <param name="programmed">What the words said, mm.</param>
    /// <param name="work">Where the tool stands now, in work coordinates, mm.</param>
    internal Point3 Led(Point3 programmed, int axis, Point3 work)
    {
        var there = ToProgram(work);
        // Turned into another axis, the one changes the numbers of both.
        return Rotation is { IsTurned: true } && Spread(1 << axis, Rotation.Plane) != 1 << axis ? there : programmed.With(axis, there[axis]);
    }

    /// <summary>The axes that move when the words of these axes are written, as bits.</summary>
    internal int Moved(int words)
    {
        var axes = Spread(words, Polar?.Plane);
        return Spread(axes, Rotation is { IsTurned: true } rotation ? rotation.Plane : null);
    }

    static int Spread(int axes, WorkPlane? plane)
    {
        if (plane is not { } turned || axes == 0)
            return axes;
        if (turned == WorkPlane.Unknown)
            return AllAxes;
        var inPlane = AllAxes & ~(1 << Arcs.Axes(turned).Third);
        return (axes & inPlane) == 0 ? axes : axes | inPlane;
    }

    /// <summary>False where an arc of this plane comes out as none: stretched unequally, or tilted.</summary>
    public bool KeepsArcs(WorkPlane plane)
    {
        if (Rotation is { IsTurned: true } rotation && rotation.Plane != plane)
            return false;
        var (first, second, _) = Arcs.Axes(plane);
        return Scaling is null || !(Math.Abs(Math.Abs(Scaling.Factors[first]) - Math.Abs(Scaling.Factors[second])) > 0);
    }

    /// <summary>True where an arc of this plane runs the other way round: exactly one of its axes is mirrored.</summary>
    public bool Mirrors(WorkPlane plane)
    {
        var (first, second, _) = Arcs.Axes(plane);
        return Scaling is not null && Scaling.Factors[first] * Scaling.Factors[second] < 0;
    }
}
