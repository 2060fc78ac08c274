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

    /// <summary>Each word is four bits, from the lowest bits on in the order written: from 1 on the letters as <see cref="PlainLetters"/> has them, from 9 on G0 to G3.</summary>
    const int BitsOfOne = 4, FirstLetter = 1, FirstCode = 9;

    /// <summary>Above the words stands the motion, from 1 on, then the letters, and then where the numbers of those begin that have one, all but N. A block has each of the letters once at most.</summary>
    const int BitsOfAll = BitsOfOne * 9, BitsOfMotion = 3, BitsOfLetters = 8, LettersFrom = BitsOfAll + BitsOfMotion, ValuesFrom = LettersFrom + BitsOfLetters;

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

    /// <summary>The letters that it is written with.</summary>
    internal PlainLetters Letters => (PlainLetters)(_line >> LettersFrom);

    /// <summary>Whether it names a radius.</summary>
    public bool IsByRadius => (Letters & PlainLetters.R) != 0;

    /// <summary>The code that it is written with, 0 to 3; −1 where that is none.</summary>
    internal int Code => ((int)(_line >> BitsOfAll) & ((1 << BitsOfMotion) - 1)) - 1;

    /// <summary>The words in their order, for <see cref="TokenOf(ulong, PlainLetters)"/>.</summary>
    internal ulong Order => _line & ((1ul << BitsOfAll) - 1);

    /// <summary>The number of a letter that the block is written with, and not N.</summary>
    internal double this[PlainLetters letter]
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => BitConverter.UInt64BitsToDouble(_values[BitOperations.PopCount((uint)Letters & ((uint)letter - 1))]);
    }

    /// <summary>What the block says.</summary>
    /// <param name="mmPerUnit">Millimetres in one of its numbers.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal PlainBlock Say(double mmPerUnit) => new(
        Letters, Code < 0 ? null : MotionOf(Code), Length(PlainLetters.X, mmPerUnit), Length(PlainLetters.Y, mmPerUnit), Length(PlainLetters.Z, mmPerUnit), Length(PlainLetters.F, mmPerUnit));

    /// <summary>What the block says of the centre of an arc.</summary>
    internal PlainCentre SayCentre() => new(Letters, Length(PlainLetters.I, 1), Length(PlainLetters.J, 1), Length(PlainLetters.R, 1));

    /// <summary>The place of a letter among the words; one that the block is written with.</summary>
    internal static int TokenOf(ulong order, PlainLetters letter)
    {
        var word = FirstLetter + BitOperations.TrailingZeroCount((uint)letter);
        return TokenOf(order, word, word);
    }

    /// <summary>The place of the code among the words.</summary>
    internal static int TokenOfCode(ulong order) => TokenOf(order, FirstCode, FirstCode + 3);

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
            if (token.Letter == 'G')
            {
                line |= (ulong)(FirstCode + token.Value) << BitsOfOne * i | (ulong)(1 + token.Value) << BitsOfAll;
                continue;
            }
            var letter = BitOperations.TrailingZeroCount((uint)LetterOf((char)token.Letter));
            line |= (ulong)(FirstLetter + letter) << BitsOfOne * i;
            letters |= (PlainLetters)(1 << letter);
            numbers[letter] = token.Value;
        }
        for (var letter = 0; 1 << letter < (int)PlainLetters.N; letter++)
            if (((int)letters & 1 << letter) != 0)
                values.Add(BitConverter.DoubleToUInt64Bits(numbers[letter]));
        return line | (ulong)letters << LettersFrom;
    }

    /// <summary>One of the letters.</summary>
    internal static PlainLetters LetterOf(char letter) => letter switch
    {
        'N' => PlainLetters.N,
        'X' => PlainLetters.X,
        'Y' => PlainLetters.Y,
        'Z' => PlainLetters.Z,
        'I' => PlainLetters.I,
        'J' => PlainLetters.J,
        'R' => PlainLetters.R,
        _ => PlainLetters.F,
    };

    static int TokenOf(ulong order, int first, int last)
    {
        var token = 0;
        while (order != 0 && (int)(order & ((1 << BitsOfOne) - 1)) is var word && (word < first || word > last))
            (token, order) = (token + 1, order >> BitsOfOne);
        return token;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    double Length(PlainLetters letter, double mmPerUnit) => (Letters & letter) == 0 ? 0 : this[letter] * mmPerUnit;
}
