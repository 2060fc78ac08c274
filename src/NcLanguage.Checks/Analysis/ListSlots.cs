using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace NcLanguage.Checks.Analysis;

/// <summary>Lists of values that are made where they are to stand, rather than copied there: of thousands in a row the copying takes longest.</summary>
static class ListSlots
{
    /// <summary>Makes room for one more, whose contents are whatever they were before.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ref T Next<T>(this List<T> list)
        where T : struct
    {
        var count = list.Count;
        CollectionsMarshal.SetCount(list, count + 1);
        return ref CollectionsMarshal.AsSpan(list)[count];
    }
}
