namespace NcLanguage.Fuzz.Running;

/// <summary>A demand that a case does not meet.</summary>
/// <param name="what">Which demand: the same for all cases that fail in the same way.</param>
/// <param name="detail">The values of this case.</param>
sealed class FuzzFault(string what, string detail) : Exception($"{what}: {detail}")
{
    public string What { get; } = what;
}

static class Demand
{
    public static void That(bool holds, string what, Func<string>? detail = null)
    {
        if (!holds)
            throw new FuzzFault(what, detail?.Invoke() ?? "");
    }

    /// <summary>Two rows of values are the same.</summary>
    public static void Same<T>(IReadOnlyList<T> expected, IReadOnlyList<T> actual, string what)
    {
        var same = EqualityComparer<T>.Default;
        for (var i = 0; i < Math.Max(expected.Count, actual.Count); i++)
        {
            if (i < expected.Count && i < actual.Count && same.Equals(expected[i], actual[i]))
                continue;
            throw new FuzzFault(what, $"number {i} of {expected.Count} and {actual.Count}:\n  expected {Shown(expected, i)}\n  found    {Shown(actual, i)}");
        }
    }

    public static void Equal<T>(T expected, T actual, string what) => Same<T>([expected], [actual], what);

    static string Shown<T>(IReadOnlyList<T> items, int i) => i < items.Count ? $"{items[i]}" : "nothing";
}
