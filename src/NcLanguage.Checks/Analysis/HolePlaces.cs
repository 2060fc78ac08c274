using NcLanguage.Control.State;

namespace NcLanguage.Checks.Analysis;

/// <summary>A hole's place in the setup's frame in whole steps of <see cref="HolePlaces.Step"/>, and what tells one operation from another.</summary>
/// <param name="IsPlaced">Whether the place is known and lies in the XY plane.</param>
readonly record struct HolePlace(long X, long Y, long Bottom, int Line, int Tool, short Cycle, bool IsHop, bool IsPlaced);

/// <summary>The places of a chunk's holes in a tenth of the room that the holes take.</summary>
sealed class HolePlaces
{
    /// <summary>Places nearer than this are one place, mm.</summary>
    public const double Step = 0.001;

    HolePlaces(HolePlace[] items, double lowestR, double highestBottom)
    {
        Items = items;
        LowestR = lowestR;
        HighestBottom = highestBottom;
    }

    public HolePlace[] Items { get; }

    /// <summary>The lowest known R level in the setup's frame, mm; infinite where none is known.</summary>
    public double LowestR { get; }

    /// <summary>The highest known bottom in the setup's frame, mm; −infinite where none is known.</summary>
    public double HighestBottom { get; }

    public static HolePlaces Of(HoleResult[] holes)
    {
        var items = new HolePlace[holes.Length];
        var (lowest, highest) = (double.PositiveInfinity, double.NegativeInfinity);
        for (var i = 0; i < holes.Length; i++)
        {
            ref readonly var hole = ref holes[i];
            var bottom = hole.PlaceAt(hole.Hole.Bottom);
            var isPlaced = hole.Plane == WorkPlane.XY && bottom.IsKnown;
            items[i] = new HolePlace(
                isPlaced ? Steps(bottom.X) : 0, isPlaced ? Steps(bottom.Y) : 0, isPlaced ? Steps(bottom.Z) : 0,
                hole.Line, hole.Hole.Tool, (short)hole.Hole.Cycle, hole.Hole.IsHop, isPlaced);
            if (hole.Hole.RLevel + hole.ToFrame.Z < lowest)
                lowest = hole.Hole.RLevel + hole.ToFrame.Z;
            if (bottom.Z > highest)
                highest = bottom.Z;
        }
        return new HolePlaces(items, lowest, highest);
    }

    static long Steps(double mm) => (long)Math.Round(mm / Step);
}
