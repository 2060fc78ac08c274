using System.Numerics;
using System.Runtime.CompilerServices;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Control.Execution;

/// <summary>The words of a block that could be a plain move, as a chunk keeps them.</summary>
/// <remarks>The block's number is one of them, but not which number it is: nothing that a plain move does hangs on that.</remarks>
public readonly ref struct PlainWords
{
    /// <summary>What is kept of a line without a block, and of one whose block has to be read.</summary>
    internal const ulong NoBlock = 0, AnyBlock = ulong.MaxValue;

    /// <summary>Each word is four bits, its place in this, from the lowest bits on in the order written: G0 to G3, the block's number, and what has a number beside it.</summary>
    internal const string Letters = "\0GGGGNXYZIJRF";

    internal const int BitsOfOne = 4, FirstCode = 1, Number = 5, FirstWithValue = 6;

    /// <summary>Above the words stands the motion, then the letters that have a number, and then where those begin. A block has each of the letters once at most.</summary>
    const int BitsOfAll = BitsOfOne * 9, BitsOfMotion = 3, BitsOfLetters = 7, LettersFrom = BitsOfAll + BitsOfMotion, ValuesFrom = LettersFrom + BitsOfLetters;

    readonly ulong _line;

    /// <summary>Begins with the numbers of those that have one, as bits, in the order of <see cref="PlainLetters"/>.</summary>
    readonly ReadOnlySpan<ulong> _values;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal PlainWords(ulong line, ReadOnlySpan<ulong> values)
    {
        if (line is NoBlock or AnyBlock)
            return;
        _line = line;
        _values = values[(int)(line >> ValuesFrom)..];
    }

    /// <summary>False where the block has to be read, because it may be anything.</summary>
    public bool AreKnown => _line != 0;

    /// <summary>The words; the first in the lowest bits.</summary>
    internal ulong Places => _line & ((1ul << BitsOfAll) - 1);

    PlainLetters WithValue => (PlainLetters)((_line >> LettersFrom) & ((1 << BitsOfLetters) - 1));

    /// <summary>The number of one that has one.</summary>
    internal double this[int place] => Of((PlainLetters)(1 << (place - FirstWithValue)));

    /// <summary>What the block says.</summary>
    /// <param name="mmPerUnit">Millimetres in one of its numbers.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal PlainBlock Say(double mmPerUnit)
    {
        var motion = (int)(_line >> BitsOfAll) & ((1 << BitsOfMotion) - 1);
        return new PlainBlock(
            WithValue, motion == 0 ? null : MotionOf(motion - FirstCode),
            Length(PlainLetters.X, mmPerUnit), Length(PlainLetters.Y, mmPerUnit), Length(PlainLetters.Z, mmPerUnit), Length(PlainLetters.F, mmPerUnit));
    }

    /// <summary>The motion of G0 to G3.</summary>
    internal static MotionMode MotionOf(int number) => number switch
    {
        0 => MotionMode.Rapid,
        1 => MotionMode.Linear,
        2 => MotionMode.ArcClockwise,
        _ => MotionMode.ArcCounterclockwise,
    };

    /// <summary>A block as one number.</summary>
    /// <param name="block">One that <see cref="BlockWords.TryReadPlain"/> has read.</param>
    /// <param name="values">Takes up the numbers of its words, as bits.</param>
    /// <param name="before">How much stands before those of the chunk.</param>
    internal static ulong Write(in Block block, List<ulong> values, int before)
    {
        var line = (ulong)(values.Count - before) << ValuesFrom;
        Span<double> numbers = stackalloc double[BitsOfLetters];
        var letters = PlainLetters.None;
        var tokens = block.Tokens;
        for (var i = 0; i < tokens.Length; i++)
        {
            ref readonly var token = ref tokens[i];
            var place = token.Letter == 'G' ? FirstCode + (int)token.Value : PlaceOf(token.Letter);
            line |= (ulong)place << BitsOfOne * i;
            if (place < Number)
                line |= (ulong)place << BitsOfAll;
            if (place < FirstWithValue)
                continue;
            numbers[place - FirstWithValue] = token.Value;
            letters |= (PlainLetters)(1 << (place - FirstWithValue));
        }
        for (var i = 0; i < BitsOfLetters; i++)
            if (((int)letters & 1 << i) != 0)
                values.Add(BitConverter.DoubleToUInt64Bits(numbers[i]));
        return line | (ulong)letters << LettersFrom;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    double Length(PlainLetters letter, double mmPerUnit) => (WithValue & letter) == 0 ? 0 : Of(letter) * mmPerUnit;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    double Of(PlainLetters letter) => BitConverter.UInt64BitsToDouble(_values[BitOperations.PopCount((uint)WithValue & ((uint)letter - 1))]);

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
