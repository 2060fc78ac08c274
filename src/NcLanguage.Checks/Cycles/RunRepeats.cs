using System.Buffers;
using System.Numerics;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Drawing;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Checks.Rules;

/// <summary>Holes of one run that another run before has drilled with the same cycle and tool, at least as deep.</summary>
/// <param name="Works">Those of the later run, in its order.</param>
/// <param name="Earlier">What the first of them repeats.</param>
sealed record RunRepeat(List<PlaceWork> Works, PlaceWork Earlier);

/// <summary>Looks for runs of holes that repeat another: a group of blocks that was copied for another tool or place.</summary>
static class RunRepeats
{
    /// <summary>Blocks between two runs that are looked through.</summary>
    const int MostBlocks = 5_000;

    const double Rounding = 1e-6;

    public static IEnumerable<RunRepeat> Of(ProgramRun run, WorkedPlaces places)
    {
        var table = HoleTable.Of(run);
        var starts = StartsOfRuns(run, table.Count);
        var found = new SortedDictionary<(int Later, int Earlier), RunRepeat>();
        foreach (var place in places.All)
            for (var i = 1; i < place.Works.Count; i++)
            {
                var (earlier, later) = (place.Works[i - 1], place.Works[i]);
                if (!Repeats(earlier, later) || starts[later.Number - 1] == starts[earlier.Number - 1])
                    continue;
                var pair = (starts[later.Number - 1], starts[earlier.Number - 1]);
                if (!found.TryGetValue(pair, out var repeat))
                    found.Add(pair, repeat = new RunRepeat([], earlier));
                repeat.Works.Add(later);
            }
        var left = MostBlocks;
        foreach (var repeat in found.Values)
        {
            repeat.Works.Sort((a, b) => a.Number.CompareTo(b.Number));
            if (IsGoneThrough(run, table, repeat.Earlier, repeat.Works[0], ref left))
                yield return repeat;
        }
    }

    /// <summary>Whether a tool may come to a place again in the same cycle. Most programs' do not, which is seen without a look at all that is done at each place.</summary>
    /// <remarks>Two places whose numbers happen to mix alike count as one: at most a look is taken in vain.</remarks>
    public static bool MayBeIn(ProgramRun run)
    {
        var holes = 0;
        foreach (var part in run.Results)
            holes += part.Holes.Length;
        if (holes < 2)
            return false;
        // Open addressing, at most half full; 0 is an empty seat.
        var bits = BitOperations.Log2((uint)holes) + 2;
        var seats = ArrayPool<ulong>.Shared.Rent(1 << bits);
        seats.AsSpan(0, 1 << bits).Clear();
        var comesAgain = false;
        foreach (var part in run.Results)
            for (var i = 0; i < part.Holes.Length && !comesAgain; i++)
                comesAgain = part.Holes.PlaceOf(i) is { IsPlaced: true } place && !TakeSeat(seats.AsSpan(0, 1 << bits), Mixed(place), bits);
        ArrayPool<ulong>.Shared.Return(seats);
        return comesAgain;
    }

    static ulong Mixed(in HolePlace place) => ((place.Mixed ^ ((ulong)(uint)place.Tool << 32) ^ (uint)place.Cycle) * HolePlace.Spread) | 1;

    /// <summary>False where what is mixed to this number has been there before.</summary>
    static bool TakeSeat(Span<ulong> seats, ulong mixed, int bits)
    {
        var at = (int)(mixed >> (64 - bits));
        while (seats[at] != 0 && seats[at] != mixed)
            at = (at + 1) & (seats.Length - 1);
        if (seats[at] == mixed)
            return false;
        seats[at] = mixed;
        return true;
    }

    /// <summary>For each hole the index of the first of its run.</summary>
    static int[] StartsOfRuns(ProgramRun run, int holes)
    {
        var starts = new int[holes];
        var (at, start) = (0, 0);
        foreach (var part in run.Results)
            for (var i = 0; i < part.Holes.Length; i++, at++)
                starts[at] = start = part.Holes.IsHop(i) ? start : at;
        return starts;
    }

    /// <summary>Whether a hole is drilled again, and no deeper. A bar that bores twice may have been set to another size, or takes the spring out of its first cut.</summary>
    static bool Repeats(in PlaceWork earlier, in PlaceWork later) =>
        earlier.Number > 0 && later is { Number: > 0, ToolNumber: > 0 } && earlier.Cycle == later.Cycle && earlier.ToolNumber == later.ToolNumber && later.Cycle is 73 or 74 or (>= 81 and <= 84)
            && later.Tip >= earlier.Tip - Rounding && earlier.RLevel > later.Tip;

    /// <summary>Whether nothing between two holes tells that the second is meant: no other tool, and no stop at which the part or the tool may be changed.</summary>
    static bool IsGoneThrough(ProgramRun run, HoleTable table, in PlaceWork earlier, in PlaceWork later, ref int left)
    {
        var (from, to) = (table.BlockOf(earlier.Number - 1), table.BlockOf(later.Number - 1));
        if (run.BlockAt(later.Line).IsSkippable)
            return false;
        for (var part = from.Part; part <= to.Part; part++)
        {
            var result = run.Results[part];
            var (first, end) = (part == from.Part ? from.At : 0, part == to.Part ? to.At : result.Sets.Length);
            if (result.IsElsewhere)
                return false;
            foreach (var taken in result.Tools)
                if (taken.Tool != later.ToolNumber && taken.Line >= first && taken.Line < end)
                    return false;
            for (var at = first; at < end; at++)
                if (--left < 0 || Stops(run.BlockAt(run.LineOf(part, at))))
                    return false;
        }
        return true;
    }

    /// <summary>M0, M1, and M60, which changes pallets (NISTIR 6556 §3.6.1).</summary>
    static bool Stops(in Block block) => WordEdits.IndexOfCode(block, 'M', 0) >= 0 || WordEdits.IndexOfCode(block, 'M', 1) >= 0 || WordEdits.IndexOfCode(block, 'M', 60) >= 0;
}
