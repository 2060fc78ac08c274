using NcLanguage.Control.Moves;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Control.State;

/// <summary>A mirror of the programmed path (G51.1, common practice): what is scaled and turned is mirrored with it, so that arcs, rotations and the side of radius compensation come out the other way round.</summary>
/// <param name="About">Where each mirrored axis is turned round, mm; 0 for the other axes.</param>
/// <param name="Axes">The mirrored axes, as bits: 1 for X, 2 for Y, 4 for Z.</param>
public sealed record Mirror(Point3 About, int Axes)
{
    /// <summary>Where a place comes to lie, mm; of a place behind the mirror, where it was.</summary>
    public Point3 Across(Point3 place)
    {
        for (var axis = 0; axis < 3; axis++)
            if (IsOn(axis))
                place = place.With(axis, 2 * About[axis] - place[axis]);
        return place;
    }

    /// <summary>Whether what turns in this plane turns the other way round: exactly one of its axes is mirrored.</summary>
    public bool Reverses(WorkPlane plane)
    {
        var (first, second, _) = Arcs.Axes(plane);
        return IsOn(first) != IsOn(second);
    }

    public bool IsOn(int axis) => (Axes & (1 << axis)) != 0;

    /// <summary>The same with one axis more, or at another place.</summary>
    public Mirror With(int axis, double about) => new(About.With(axis, about), Axes | (1 << axis));

    /// <summary>The same without some axes; null where none is left.</summary>
    public Mirror? Without(int axes)
    {
        var about = About;
        for (var axis = 0; axis < 3; axis++)
            if ((axes & (1 << axis)) != 0)
                about = about.With(axis, 0);
        return (Axes & ~axes) == 0 ? null : new Mirror(about, Axes & ~axes);
    }
}
