using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Drawing;

/// <summary>The bores that the stock has already, as if they were the first works at their places.</summary>
static class HollowWorks
{
    /// <summary>The bores about a place, in the setup's order; none where it has none.</summary>
    public static IEnumerable<PlaceWork> At(Setup setup, double x, double y)
    {
        foreach (var hollow in setup.Hollows)
            if (hollow.IsRound && Math.Abs(hollow.CenterX - x) <= WorkedPlaces.SamePlace && Math.Abs(hollow.CenterY - y) <= WorkedPlaces.SamePlace)
                yield return new PlaceWork(WorkKind.Hollow, null, 0, hollow.Width, hollow.Bottom, hollow.Bottom, default, -1, 0, 0, double.NaN, double.NaN)
                {
                    Coordinates = new WorkCoordinates(setup.Frame, default, default, default),
                };
    }
}
