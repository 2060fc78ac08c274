using NcLanguage.Control.Flow;

namespace NcLanguage.Checks.Analysis;

/// <summary>The block numbers of a chunk at a glance, so that numbers that rise through each program need not be looked at one by one.</summary>
/// <param name="First">First number, of the program that goes on into the chunk; −1 where there is none.</param>
/// <param name="Last">Last number, of the program that goes on behind the chunk; −1 where there is none.</param>
/// <param name="Greatest">Greatest number; −1 where there is none.</param>
/// <param name="Rises">Each number is greater than the one before in the same program.</param>
/// <param name="BeginsProgram">A program begins in the chunk.</param>
public readonly record struct NumberRange(int First, int Last, int Greatest, bool Rises, bool BeginsProgram)
{
    public static NumberRange Of(ReadOnlySpan<BlockNumber> numbers)
    {
        var (first, last, greatest, rises, begins) = (-1, -1, -1, true, false);
        foreach (var (number, _) in numbers)
        {
            if (number < 0)
            {
                (begins, last) = (true, -1);
                continue;
            }
            if (!begins && first < 0)
                first = number;
            rises &= number > last;
            last = number;
            greatest = Math.Max(greatest, number);
        }
        return new NumberRange(first, last, greatest, rises, begins);
    }
}
