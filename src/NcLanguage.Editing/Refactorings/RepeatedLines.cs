using System.Text;
using NcLanguage.Checks;
using NcLanguage.Editing.Formatting;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing.Refactorings;

/// <summary>Lines that a program holds more than once alike, block numbers aside.</summary>
/// <param name="Starts">The first line (0-based) of each place, in order; they do not overlap.</param>
sealed record RepeatedLines(IReadOnlyList<int> Starts, int Length)
{
    /// <summary>Texts longer than this are not looked through.</summary>
    public const int MostLines = 20_000;

    const int Fewest = 3;

    const ulong Base = 1099511628211UL;

    /// <summary>The lines marked, if they stand elsewhere too; where none are marked the longest stretch that does. Null where there is none.</summary>
    public static RepeatedLines? Find(SourceText text, (int First, int End) region, Lines lines)
    {
        var ids = Identify(text, region);
        if (!lines.IsCursor)
        {
            var (start, length) = (lines.First - region.First, lines.Last - lines.First + 1);
            if (length < Fewest || start < 0 || start + length > ids.Length || HasBarrier(ids, start, length))
                return null;
            var places = PlacesOf(ids, start, length);
            return places.Count < 2 ? null : new([.. places.Select(place => place + region.First)], length);
        }
        // A stretch that stands twice holds shorter ones that do: the longest is found by halves.
        var (low, high) = (Fewest, ids.Length / 2);
        List<int>? best = null;
        var bestLength = 0;
        while (low <= high)
        {
            var middle = (low + high) / 2;
            if (FirstRepeated(ids, middle) is { } start)
                (best, bestLength, low) = (PlacesOf(ids, start, middle), middle, middle + 1);
            else
                high = middle - 1;
        }
        return best is null ? null : new([.. best.Select(place => place + region.First)], bestLength);
    }

    /// <summary>A block without its number and the blanks around it.</summary>
    public static string WithoutNumber(in Block block)
    {
        var number = block.NumberIndex;
        var line = Encoding.UTF8.GetString(block.Line);
        if (number < 0)
            return line.Trim();
        ref readonly var token = ref block.Tokens[number];
        return (Encoding.UTF8.GetString(block.Line[..token.Start]).TrimEnd() + " " + Encoding.UTF8.GetString(block.Line[token.End..]).TrimStart()).Trim();
    }

    /// <summary>One number for all lines alike; each line that has to stay where it is has one of its own, below zero.</summary>
    static int[] Identify(SourceText text, (int First, int End) region)
    {
        var targets = JumpTargets.NumbersIn(text);
        var known = new Dictionary<string, int>(StringComparer.Ordinal);
        var ids = new int[region.End - region.First];
        for (var i = 0; i < ids.Length; i++)
        {
            var block = text.BlockAt(region.First + i);
            if (Stays(block, targets))
            {
                ids[i] = -1 - i;
                continue;
            }
            var line = WithoutNumber(block);
            if (!known.TryGetValue(line, out var id))
                known[line] = id = known.Count;
            ids[i] = id;
        }
        return ids;
    }

    static bool Stays(in Block block, HashSet<double> targets)
    {
        if (block.Tokens.Length == 0 || !block.HasWords || block.HasStatement || block.ProgramNumberIndex >= 0 || !BlockFormat.CanBeRead(block)
            || Encoding.UTF8.GetString(block.Line).Contains('\uFFFD', StringComparison.Ordinal))
            return true;
        if (block.NumberIndex is >= 0 and var number && targets.Contains(block.Tokens[number].Value))
            return true;
        foreach (ref readonly var token in block.Tokens)
            if (token.Kind is TokenKind.Skip or TokenKind.Percent || (token.IsWord('M') && token.Value is 2 or 30 or 98 or 99) || (token.IsWord('G') && token.Value == 65))
                return true;
        return false;
    }

    static bool HasBarrier(int[] ids, int start, int length) => ids.AsSpan(start, length).ContainsAnyInRange(int.MinValue, -1);

    /// <summary>The first stretch of a length that comes again further on, without overlap.</summary>
    static int? FirstRepeated(int[] ids, int length)
    {
        var seen = new Dictionary<ulong, List<int>>();
        int? first = null;
        // A key that rolls along (Rabin and Karp, 1987): one step a line, however long the stretch.
        var (key, highest, clear) = (0UL, 1UL, 0);
        for (var i = 1; i < length; i++)
            highest *= Base;
        for (var end = 0; end < ids.Length; end++)
        {
            if (end >= length)
                key -= highest * (uint)ids[end - length];
            key = key * Base + (uint)ids[end];
            clear = ids[end] < 0 ? 0 : clear + 1;
            if (clear < length)
                continue;
            var start = end - length + 1;
            if (!seen.TryGetValue(key, out var places))
                seen[key] = places = [];
            foreach (var place in places)
                if (place + length <= start && (first is null || place < first) && ids.AsSpan(place, length).SequenceEqual(ids.AsSpan(start, length)))
                    first = place;
            // A stretch that comes a thousand times needs no more places to be found.
            if (places.Count < 16)
                places.Add(start);
        }
        return first;
    }

    static List<int> PlacesOf(int[] ids, int start, int length)
    {
        var places = new List<int>();
        var alike = ids.AsSpan(start, length);
        for (var at = 0; at + length <= ids.Length; at++)
        {
            // The stretch asked for is one of the places, whatever comes before it.
            if (at < start && at + length > start)
                at = start;
            if (!ids.AsSpan(at, length).SequenceEqual(alike))
                continue;
            places.Add(at);
            at += length - 1;
        }
        return places;
    }
}
