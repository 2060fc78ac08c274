namespace NcLanguage.Fuzz.Running;

/// <summary>Chance that can be had again: all of a case comes from one number.</summary>
sealed class Dice(int seed)
{
    readonly Random _random = new(seed);

    /// <summary>From 0 up to, but not with, a number.</summary>
    public int Below(int end) => _random.Next(end);

    /// <summary>Both ends included.</summary>
    public int From(int least, int greatest) => _random.Next(least, greatest + 1);

    public bool OneIn(int cases) => _random.Next(cases) == 0;

    public T Of<T>(IReadOnlyList<T> items) => items[_random.Next(items.Count)];

    /// <summary>Small numbers often, great ones now and then.</summary>
    public int Few(int greatest) => From(0, _random.Next(4) == 0 ? greatest : Math.Max(1, greatest / 8));

    public byte[] Bytes(int length)
    {
        var bytes = new byte[length];
        _random.NextBytes(bytes);
        return bytes;
    }
}
