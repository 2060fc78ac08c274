using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Clearance;

/// <summary>What the hollows of a setup's stock leave at a place before the first cut. Lengths in mm, in the setup's frame.</summary>
static class Openings
{
    /// <summary>Level of the floor under a disc that lies wholly in a hollow as seen from above; <paramref name="top"/> where none holds it.</summary>
    public static double FloorUnder(Setup setup, double x, double y, double radius, double top)
    {
        foreach (var hollow in setup.Hollows)
            if (hollow.Bottom < top && hollow.Holds(x, y, radius))
                top = hollow.Bottom;
        return top;
    }

    /// <summary>Level of the lowest hollow that a disc reaches into as seen from above; <paramref name="top"/> where it reaches none.</summary>
    public static double LowestTouched(Setup setup, double x, double y, double radius, double top)
    {
        foreach (var hollow in setup.Hollows)
            if (hollow.Bottom < top && hollow.DistanceTo(x, y) < radius)
                top = hollow.Bottom;
        return top;
    }
}
