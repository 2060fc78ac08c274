using System.Runtime.CompilerServices;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Control.Execution;

/// <summary>The words of a block that could be a plain move, in the order written, as a chunk keeps them.</summary>
/// <remarks>The block's number is one of them, but not which number it is: nothing that a plain move does hangs on that.</remarks>
public readonly ref struct PlainWords
{
    /// <summary>What is kept of a line without a block, and of one whose block has to be read.</summary>
    internal const ulong NoBlock = 0, AnyBlock = ulong.MaxValue;

    /// <summary>Each word is four bits, its place in this, from the lowest bits on: G0 to G3, the block's number, and what has a number beside it.</summary>
    internal const string Letters = "\0GGGGNXYZIJRF";

    internal const int BitsOfOne = 4, FirstCode = 1, Number = 5, FirstWithValue = 6;

    /// <summary>Above the words stands where their numbers begin. A block has each of the letters once at most.</summary>
    const int BitsOfAll = BitsOfOne * 9;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal PlainWords(ulong line, ReadOnlySpan<ulong> values, int longestLine)
    {
        LongestLine = longestLine;
        if (line is NoBlock or AnyBlock)
            return;
        Places = line & ((1ul << BitsOfAll) - 1);
        Values = values[(int)(line >> BitsOfAll)..];
    }

    /// <summary>False where the block has to be read, because it may be anything.</summary>
    public bool AreKnown => Places != 0;

    /// <summary>The words; the first in the lowest bits.</summary>
    internal ulong Places { get; }

    /// <summary>Begins with the numbers of those that have one, as bits.</summary>
    internal ReadOnlySpan<ulong> Values { get; }

    /// <summary>No known line of its chunk has more bytes.</summary>
    internal int LongestLine { get; }

    /// <summary>A block as one number.</summary>
    /// <param name="block">One that <see cref="BlockWords.TryReadPlain"/> has read.</param>
    /// <param name="values">Takes up the numbers of its words, as bits.</param>
    /// <param name="before">How much stands before those of the chunk.</param>
    internal static ulong Write(in Block block, List<ulong> values, int before)
    {
        var line = (ulong)(values.Count - before) << BitsOfAll;
        var tokens = block.Tokens;
        for (var i = 0; i < tokens.Length; i++)
        {
            ref readonly var token = ref tokens[i];
            var place = token.Letter == 'G' ? FirstCode + (int)token.Value : PlaceOf(token.Letter);
            line |= (ulong)place << BitsOfOne * i;
            if (place >= FirstWithValue)
                values.Add(BitConverter.DoubleToUInt64Bits(token.Value));
        }
        return line;
    }

    static int PlaceOf(byte letter) => letter switch
    {
        (byte)'N' => Number,
        (byte)'X' => 6,
        (byte)'Y' => 7,
        (byte)'Z' => 8,
        (byte)'I' => 9,
        (byte)'J' => 10,
        (byte)'R' => 11,
        _ => 12,
    };
}
