namespace NcLanguage.Checks.Analysis;

/// <summary>The least rectangle about some places of holes, in whole steps of <see cref="HolePlace.Step"/>.</summary>
readonly record struct HoleBox(long MinX, long MaxX, long MinY, long MaxY)
{
    /// <summary>About no place.</summary>
    public static HoleBox Empty { get; } = new(long.MaxValue, long.MinValue, long.MaxValue, long.MinValue);

    public bool Holds(long x, long y) => x >= MinX && x <= MaxX && y >= MinY && y <= MaxY;

    /// <summary>Whether a place may lie in both.</summary>
    public bool Meets(in HoleBox other) => MinX <= other.MaxX && other.MinX <= MaxX && MinY <= other.MaxY && other.MinY <= MaxY;

    public HoleBox With(long x, long y) => new(Math.Min(MinX, x), Math.Max(MaxX, x), Math.Min(MinY, y), Math.Max(MaxY, y));

    public HoleBox With(in HoleBox other) =>
        new(Math.Min(MinX, other.MinX), Math.Max(MaxX, other.MaxX), Math.Min(MinY, other.MinY), Math.Max(MaxY, other.MaxY));
}

/// <summary>How the holes of a part lie: told when they have just been drilled, so that whoever looks for holes that are drilled twice need not look at each in most parts.</summary>
/// <param name="FirstOfLast">The first hole of the last run that begins in the part; 0 where none begins behind the first hole.</param>
/// <param name="Head">About the holes up to where a run begins behind the first of them.</param>
/// <param name="Tail">About those of the last run.</param>
/// <param name="MayRepeat">Whether one run of them may come to a place twice; where not, it does not.</param>
readonly record struct HoleSpread(int FirstOfLast, HoleBox Head, HoleBox Tail, bool MayRepeat)
{
    /// <summary>Holes that are held against each other; of more it is not said that none repeats unless each lies outside all before it.</summary>
    const int MostHoles = 512;

    const int Seats = 4 * MostHoles;

    /// <param name="mixed">Takes up for each hole the number that its place is mixed to; 0 where it is not known.</param>
    public static HoleSpread Of(HoleLog holes, Span<uint> mixed)
    {
        var (first, head, box, mayRepeat) = (0, HoleBox.Empty, HoleBox.Empty, false);
        for (var i = 0; i < mixed.Length; i++)
        {
            if (i > 0 && !holes.GoesOn(i))
            {
                if (first == 0)
                    head = box;
                (first, box) = (i, HoleBox.Empty);
            }
            mixed[i] = 0;
            if (!holes.TryStepsOf(i, out var x, out var y))
                continue;
            mixed[i] = HolePlace.Mix(x, y);
            mayRepeat |= box.Holds(x, y);
            box = box.With(x, y);
        }
        return new(first, first == 0 ? box : head, box, mayRepeat && (mixed.Length > MostHoles || ComesBack(holes, mixed)));
    }

    /// <summary>Whether two holes of one run lie at one place, whatever their depths; two places whose numbers happen to mix alike count as one.</summary>
    static bool ComesBack(HoleLog holes, ReadOnlySpan<uint> mixed)
    {
        // Open addressing, at most a quarter full.
        Span<uint> seats = stackalloc uint[Seats];
        seats.Clear();
        for (var i = 0; i < mixed.Length; i++)
        {
            if (i > 0 && !holes.GoesOn(i))
                seats.Clear();
            if (mixed[i] == 0)
                continue;
            var at = (int)mixed[i] & (Seats - 1);
            while (seats[at] != 0 && seats[at] != mixed[i])
                at = (at + 1) & (Seats - 1);
            if (seats[at] == mixed[i])
                return true;
            seats[at] = mixed[i];
        }
        return false;
    }
}
