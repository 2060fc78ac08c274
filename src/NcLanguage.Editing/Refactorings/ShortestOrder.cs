namespace NcLanguage.Editing.Refactorings;

/// <summary>An order of places that takes little travel: from place to nearest place, then turned and shifted piece by piece as long as that is shorter
/// (2-opt, Croes, 1958; or-opt, Or, 1976). The end is free. It is never longer than the order given.</summary>
public static class ShortestOrder
{
    public const int MostPlaces = 300;

    const int MostRounds = 200;

    /// <summary>Less is no gain, s.</summary>
    const double LeastGain = 1e-6;

    /// <summary>The places 0 to <paramref name="count"/> − 1 in a short order; as they are where none shorter is found.</summary>
    /// <param name="fromStart">To each place from where the way begins, s.</param>
    /// <param name="between">From one place to another, s.</param>
    public static int[] Of(int count, double[] fromStart, Func<int, int, double> between, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(fromStart);
        ArgumentNullException.ThrowIfNull(between);
        var given = Enumerable.Range(0, count).ToArray();
        var best = given;
        foreach (var begun in (int[][])[[.. given], Nearest(count, fromStart, between)])
        {
            Improve(begun, fromStart, between, cancel);
            if (Length(begun, fromStart, between) < Length(best, fromStart, between) - LeastGain)
                best = begun;
        }
        return best;
    }

    static double Length(int[] order, double[] fromStart, Func<int, int, double> between)
    {
        var length = fromStart[order[0]];
        for (var i = 1; i < order.Length; i++)
            length += between(order[i - 1], order[i]);
        return length;
    }

    static int[] Nearest(int count, double[] fromStart, Func<int, int, double> between)
    {
        var left = Enumerable.Range(0, count).ToList();
        var order = new List<int>(count);
        while (left.Count > 0)
        {
            var next = left.MinBy(place => order.Count == 0 ? fromStart[place] : between(order[^1], place));
            left.Remove(next);
            order.Add(next);
        }
        return [.. order];
    }

    static void Improve(int[] order, double[] fromStart, Func<int, int, double> between, CancellationToken cancel)
    {
        for (var round = 0; round < MostRounds; round++)
        {
            cancel.ThrowIfCancellationRequested();
            if (!Turn(order, fromStart, between) && !Shift(order, fromStart, between))
                return;
        }
    }

    static double Into(int[] order, int at, int place, double[] fromStart, Func<int, int, double> between) => at == 0 ? fromStart[place] : between(order[at - 1], place);

    static double OutOf(int[] order, int at, int place, Func<int, int, double> between) => at + 1 < order.Length ? between(place, order[at + 1]) : 0;

    /// <summary>Turns pieces round where that is shorter. A traverse takes as long both ways.</summary>
    static bool Turn(int[] order, double[] fromStart, Func<int, int, double> between)
    {
        var isShorter = false;
        for (var first = 0; first < order.Length - 1; first++)
        {
            for (var last = first + 1; last < order.Length; last++)
            {
                var now = Into(order, first, order[first], fromStart, between) + OutOf(order, last, order[last], between);
                var turned = Into(order, first, order[last], fromStart, between) + OutOf(order, last, order[first], between);
                if (turned >= now - LeastGain)
                    continue;
                Array.Reverse(order, first, last - first + 1);
                isShorter = true;
            }
        }
        return isShorter;
    }

    /// <summary>Puts single places elsewhere where that is shorter.</summary>
    static bool Shift(int[] order, double[] fromStart, Func<int, int, double> between)
    {
        var now = Length(order, fromStart, between);
        for (var from = 0; from < order.Length; from++)
        {
            for (var to = 0; to < order.Length; to++)
            {
                if (from == to)
                    continue;
                Move(order, from, to);
                if (Length(order, fromStart, between) < now - LeastGain)
                    return true;
                Move(order, to, from);
            }
        }
        return false;
    }

    static void Move(int[] order, int from, int to)
    {
        var place = order[from];
        if (from < to)
            Array.Copy(order, from + 1, order, from, to - from);
        else
            Array.Copy(order, to, order, to + 1, from - to);
        order[to] = place;
    }
}
