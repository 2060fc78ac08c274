namespace NcLanguage.Machine.Loading;

/// <summary>Finds the name that was probably meant ("did you mean").</summary>
public static class NearestName
{
    /// <summary>The nearest of <paramref name="names"/>, or null where none is near: a third of the letters may differ.</summary>
    public static string? Find(string written, IEnumerable<string> names)
    {
        const int longestGuess = 40;
        if (written.Length is 0 or > longestGuess)
            return null;
        string? best = null;
        var bestDistance = int.MaxValue;
        foreach (var name in names)
        {
            var distance = IsShortFor(written, name) ? 1 : Distance(written.ToLowerInvariant(), name.ToLowerInvariant());
            if (distance <= Math.Max(written.Length, name.Length) / 3 && distance < bestDistance)
                (best, bestDistance) = (name, distance);
        }
        return best;
    }

    /// <summary>What a message ends with that names something there is not: the name that was probably meant, or, where none is near,
    /// <paramref name="otherwise"/>.</summary>
    public static string DidYouMean(string written, IEnumerable<string> names, string otherwise) =>
        Find(written, names) is { } nearest ? $"did you mean {nearest}?" : otherwise;

    /// <summary>The same for a file of JSON, in brackets behind a message; empty where no name is near.</summary>
    /// <param name="nearest">What <see cref="Find"/> gave.</param>
    internal static string Hint(string? nearest) => nearest is null ? "" : $" (did you mean \"{nearest}\"?)";

    /// <summary>A name as JSON writes it, to take the place of the wrong one; null where none is near.</summary>
    /// <param name="nearest">What <see cref="Find"/> gave.</param>
    internal static string? Replacement(string? nearest) => nearest is null ? null : $"\"{nearest}\"";

    // "dia" for diameter, "twist-drill" for drill.
    static bool IsShortFor(string written, string name) =>
        Math.Min(written.Length, name.Length) >= 3
        && (name.StartsWith(written, StringComparison.OrdinalIgnoreCase) || written.EndsWith("-" + name, StringComparison.OrdinalIgnoreCase));

    /// <summary>Edits between two words, a swap of neighbours counting one (optimal string alignment).</summary>
    internal static int Distance(string a, string b)
    {
        var rows = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++)
            rows[i, 0] = i;
        for (var j = 0; j <= b.Length; j++)
            rows[0, j] = j;
        for (var i = 1; i <= a.Length; i++)
        {
            for (var j = 1; j <= b.Length; j++)
            {
                var change = a[i - 1] == b[j - 1] ? 0 : 1;
                var least = Math.Min(Math.Min(rows[i - 1, j], rows[i, j - 1]) + 1, rows[i - 1, j - 1] + change);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                    least = Math.Min(least, rows[i - 2, j - 2] + 1);
                rows[i, j] = least;
            }
        }
        return rows[a.Length, b.Length];
    }
}
