namespace NcLanguage.Checks.Operations;

/// <summary>What the return levels of a cycle's traverses cost: the time that the tool spends above and on the way to the levels as written, and the
/// time with each level cut down to the least that clears.</summary>
/// <param name="Hops">Traverses from hole to hole that are compared.</param>
/// <param name="Higher">How many of them run higher than they need to.</param>
/// <param name="Chosen">Seconds up, in pecks above R and down, at the levels as written.</param>
/// <param name="Least">The same at the least levels that clear; never more than <paramref name="Chosen"/>.</param>
/// <param name="NotJudged">Traverses whose least level is not known, or that run below it.</param>
public readonly record struct ReturnCost(int Hops, int Higher, double Chosen, double Least, int NotJudged)
{
    /// <summary>Seconds that the levels cost beyond the least.</summary>
    public double Difference => Chosen - Least;

    public ReturnCost With(ReturnCost other) =>
        new(Hops + other.Hops, Higher + other.Higher, Chosen + other.Chosen, Least + other.Least, NotJudged + other.NotJudged);
}
