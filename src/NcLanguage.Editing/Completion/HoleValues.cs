using NcLanguage.Control.Execution;

namespace NcLanguage.Editing;

/// <summary>Places of the drawing's holes that the tool has not drilled yet, as the words that lead there.</summary>
static class HoleValues
{
    const string Source = "A hole that the setup lists and this tool has not drilled yet, in the distance mode in force.";

    /// <summary>Both words of a place for the first letter; for the second those that lie on the place of the first.</summary>
    public static IReadOnlyList<WordValue> Of(Spot spot, char letter)
    {
        if (spot.HolesAreDistances is not { } areDistances || (areDistances && double.IsNaN(spot.Before.ProgrammedPosition.X + spot.Before.ProgrammedPosition.Y)))
            return [];
        IEnumerable<WantedHole> holes = spot.HolesLeft;
        var other = letter == 'X' ? 'Y' : 'X';
        var hasOther = spot.Step.Words.Has(other);
        if (hasOther)
        {
            var there = PlaceOf(spot.Step);
            holes = holes.Where(hole => Math.Abs(other == 'X' ? hole.X - there.X : hole.Y - there.Y) < 0.005);
        }
        return [.. holes.Select(hole => new WordValue(hasOther ? Word(spot, hole, letter, areDistances) : Words(spot, hole, areDistances, letter), hole.Describe(spot.Say), Source, Low: hole.Fit.Rank != HoleFitRank.Fits))];
    }

    /// <summary>Where the block drills, or else leaves the tool, in work coordinates of the XY plane.</summary>
    public static (double X, double Y) PlaceOf(Step step) =>
        step.Holes.Count > 0 ? (step.Holes[0].X, step.Holes[0].Y) : (step.After.ProgrammedPosition.X, step.After.ProgrammedPosition.Y);

    /// <summary>X15 Y20</summary>
    public static string Words(Spot spot, WantedHole hole, bool areDistances, char first = 'X')
    {
        var second = first == 'X' ? 'Y' : 'X';
        return $"{Word(spot, hole, first, areDistances)} {Word(spot, hole, second, areDistances)}";
    }

    static string Word(Spot spot, WantedHole hole, char letter, bool isDistance)
    {
        var at = spot.Before.ProgrammedPosition;
        var (to, from) = letter == 'X' ? (hole.X, at.X) : (hole.Y, at.Y);
        return spot.Style.Length(letter, isDistance ? to - from : to);
    }
}
