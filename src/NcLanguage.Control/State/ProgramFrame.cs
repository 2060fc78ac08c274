using NcLanguage.Control.Moves;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Control.State;

/// <summary>What lies between the words of the program and the work coordinates: polar words, then scaling, then rotation, then the mirror (common practice).
/// An immutable value; parts that are off are null.</summary>
public sealed record ProgramFrame(PolarPlace? Polar, Scaling? Scaling, Rotation? Rotation, Mirror? Mirror)
{
    const int AllAxes = 7;

    /// <summary>All parts off; what is in force then is null.</summary>
    internal static ProgramFrame None { get; } = new(null, null, null, null);

    /// <summary>The frame itself; null where all parts are off.</summary>
    internal ProgramFrame? OrNull => this == None ? null : this;

    static readonly PolarPlace AnyPolar = new(WorkPlane.Unknown, Point3.Unknown, double.NaN, double.NaN);
    static readonly Scaling AnyScaling = new(Point3.Unknown, Point3.Unknown);
    static readonly Rotation AnyRotation = new(WorkPlane.Unknown, Point3.Unknown, double.NaN);
    static readonly Mirror AnyMirror = new(Point3.Unknown, AllAxes);

    /// <summary>The same parts on, and nothing known of them.</summary>
    public ProgramFrame Forgotten() => new(
        Polar is null ? null : AnyPolar, Scaling is null ? null : AnyScaling, Rotation is null ? null : AnyRotation,
        Mirror is null ? null : AnyMirror);

    /// <summary>What is known where either may be in force: a part in which they differ is on, and nothing known of it.</summary>
    public static ProgramFrame? Join(ProgramFrame? a, ProgramFrame? b) => Equals(a, b) ? a : new ProgramFrame(
        Equals(a?.Polar, b?.Polar) ? a?.Polar : AnyPolar,
        Equals(a?.Scaling, b?.Scaling) ? a?.Scaling : AnyScaling,
        Equals(a?.Rotation, b?.Rotation) ? a?.Rotation : AnyRotation,
        Equals(a?.Mirror, b?.Mirror) ? a?.Mirror : AnyMirror).OrNull;

    /// <summary>Where a programmed place comes to lie in work coordinates, mm.</summary>
    public Point3 ToWork(Point3 programmed)
    {
        var place = Scaling is null ? programmed : Scaling.ToWork(programmed);
        place = Rotation is null ? place : Rotation.ToWork(place);
        return Mirror is null ? place : Mirror.Across(place);
    }

    /// <summary>Which programmed place lies at a place in work coordinates, mm.</summary>
    public Point3 ToProgram(Point3 work)
    {
        var place = BeforeRotation(work);
        return Scaling is null ? place : Scaling.ToProgram(place);
    }

    /// <summary>Which place, rotated and mirrored, lies at a place in work coordinates, mm.</summary>
    internal Point3 BeforeRotation(Point3 work) => Rotation is null ? BeforeMirror(work) : Rotation.ToProgram(BeforeMirror(work));

    /// <summary>Which place, mirrored, lies at a place in work coordinates, mm.</summary>
    internal Point3 BeforeMirror(Point3 work) => Mirror is null ? work : Mirror.Across(work);

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
        var scales = Scaling is not null && Scaling.Factors[first] * Scaling.Factors[second] < 0;
        return scales != (Mirror?.Reverses(plane) ?? false);
    }
}
