using NcLanguage.Control.Flow;

namespace NcLanguage.Checks.Analysis;

/// <summary>The block numbers of a chunk at a glance, so that numbers that rise through a file need not be looked at one by one.</summary>
/// <param name="Least">Least number; −1 where there is none.</param>
/// <param name="Greatest">Greatest number; −1 where there is none.</param>
/// <param name="BeginsProgram">A program begins in the chunk.</param>
/// <param name="Rises">Each number is greater than the one before, and no program begins behind a number.</param>
public readonly record struct NumberRange(int Least, int Greatest, bool Rises, bool BeginsProgram)
{
    public static NumberRange Of(ReadOnlySpan<BlockNumber> numbers)
    {
        var (least, greatest, rises, begins) = (-1, -1, true, false);
        foreach (var (number, _) in numbers)
        {
            if (number < 0)
            {
                begins = true;
                rises &= greatest < 0;
                continue;
            }
            rises &= number > greatest;
            least = least < 0 ? number : Math.Min(least, number);
            greatest = Math.Max(greatest, number);
        }
        return new NumberRange(least, greatest, rises, begins);
    }
}
