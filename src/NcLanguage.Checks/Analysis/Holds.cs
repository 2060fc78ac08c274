using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Analysis;

/// <summary>What is to be found in a chunk's text or in a part of a run, kept side by side for all of them: behind each key the few that hold something are looked for
/// among thousands, each of which would have to be fetched from memory to be asked.</summary>
[Flags]
enum Holds : byte
{
    Nothing = 0,
    Findings = 1,

    /// <summary>A comment that asks for silence.</summary>
    Allow = 2,

    /// <summary>A block that can be skipped.</summary>
    Skip = 4,

    Holes = 8,
}

static class HoldsOf
{
    public static bool Any(ReadOnlySpan<Holds> held, Holds what)
    {
        foreach (var one in held)
            if ((one & what) != 0)
                return true;
        return false;
    }

    /// <summary>Looks at each item, apart from those that the version before has at its beginning or its end.</summary>
    public static Holds[] Each<T>(T[] items, T[]? before, Holds[]? heldBefore, Func<T, Holds> look)
        where T : class
    {
        var holds = new Holds[items.Length];
        var (same, sameAtEnd) = before is null ? (0, 0) : SharedEnds.Of<T>(before, items);
        if (heldBefore is not null)
        {
            Array.Copy(heldBefore, holds, same);
            Array.Copy(heldBefore, heldBefore.Length - sameAtEnd, holds, holds.Length - sameAtEnd, sameAtEnd);
        }
        for (var i = same; i < holds.Length - sameAtEnd; i++)
            holds[i] = look(items[i]);
        return holds;
    }
}
