using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Control.Flow;

/// <summary>A block number and where it stands (0-based line within its chunk); a number of −1 marks the beginning of a program.</summary>
public readonly record struct BlockNumber(int Number, int Line);

/// <summary>What a mark is for the order in which blocks run.</summary>
enum MarkKind : byte
{
    /// <summary>A program begins; the number is the program's.</summary>
    Program,

    /// <summary>%</summary>
    Percent,

    /// <summary>M2, M30 or M99; the number is the code's.</summary>
    End,

    /// <summary>GOTO, also behind IF.</summary>
    Jump,

    /// <summary>A statement that pairs with others by its number.</summary>
    Structure,

    /// <summary>M98 or G65, or a code that may be one: the program called may end the run, or lead on elsewhere.</summary>
    Call,
}

/// <summary>A place that matters for the order in which blocks run.</summary>
/// <param name="Line">0-based, within its chunk or text.</param>
/// <param name="Number">The program's number, or the one that pairs statements; −1 where there is none or it is not plain.</param>
readonly record struct Mark(MarkKind Kind, StatementKind Statement, bool BehindO, int Number, int Line)
{
    /// <summary>Whether a program begins or ends with it.</summary>
    public bool BoundsProgram => Kind is MarkKind.Program or MarkKind.Percent;
}

/// <summary>The places of a chunk that matter for the order in which blocks run, and its block numbers.</summary>
public sealed class ChunkMarks
{
    const int NoTool = int.MaxValue;

    ChunkMarks(BlockNumber[] numbers, Mark[] marks, bool steers, int firstTool)
    {
        FirstTool = firstTool;
        Numbers = numbers;
        Marks = marks;
        Steers = steers;
        foreach (var number in numbers)
            (LeastNumber, GreatestNumber) = (Math.Min(LeastNumber, number.Number), Math.Max(GreatestNumber, number.Number));
    }

    /// <summary>Block numbers and beginnings of programs, in the order of the text.</summary>
    public BlockNumber[] Numbers { get; }

    /// <summary>The least of <see cref="Numbers"/>; greater than the greatest where there are none.</summary>
    internal int LeastNumber { get; } = int.MaxValue;

    internal int GreatestNumber { get; } = int.MinValue;

    /// <summary>Whether anything in it may make the run leave the order of the text.</summary>
    public bool Steers { get; }

    /// <summary>The first line (0-based) that names a tool; behind all lines where none does.</summary>
    internal int FirstTool { get; }

    internal Mark[] Marks { get; }

    /// <summary>Whether a text is there to be called: its first program ends with M99 alone, and no tool is named in it.</summary>
    public static bool IsCalled(IEnumerable<ChunkMarks> chunks)
    {
        ArgumentNullException.ThrowIfNull(chunks);
        var returns = false;
        foreach (var chunk in chunks)
        {
            // Only what stands before the next program counts, wherever the text is cut into chunks.
            foreach (var mark in chunk.Marks)
            {
                if (chunk.FirstTool < mark.Line)
                    return false;
                if (mark.Kind == MarkKind.Program && returns)
                    return true;
                if (mark.Kind != MarkKind.End)
                    continue;
                if (mark.Number != 99)
                    return false;
                returns = true;
            }
            if (chunk.FirstTool != NoTool)
                return false;
        }
        return returns;
    }

    public static ChunkMarks Of(BlockList blocks)
    {
        ArgumentNullException.ThrowIfNull(blocks);
        var (numbers, count) = ((BlockNumber[])[], 0);
        List<Mark>? marks = null;
        var (steers, firstTool) = (false, NoTool);
        for (var line = 0; line < blocks.Count; line++)
        {
            var block = blocks[line];
            var isPlain = IsPlain(block, out var number);
            if (number >= 0 || (!isPlain && TryNumber(block, out number)))
            {
                if (count == 0)
                    numbers = new BlockNumber[blocks.Count - line];
                numbers[count++] = new BlockNumber(number, line);
            }
            if (isPlain)
                continue;
            NoteMarks(block, line, ref marks, ref steers);
            if (firstTool == NoTool && block.IndexOf('T') >= 0)
                firstTool = line;
        }
        return new ChunkMarks(count == numbers.Length ? numbers : numbers[..count], marks is null ? [] : [.. marks], steers, firstTool);
    }

    /// <summary>Whether a block holds nothing but words that mark nothing, as nearly all do.</summary>
    /// <param name="number">The number of such a block; −1 where it has none.</param>
    static bool IsPlain(in Block block, out int number)
    {
        number = -1;
        var found = -1;
        foreach (ref readonly var token in block.Tokens)
        {
            if (token.Kind != TokenKind.Word)
                return false;
            switch ((char)token.Letter)
            {
                case 'O' or ':' or 'T':
                case 'G' or 'M' when token.ReadsVariables || token.Value is 2 or 30 or 65 or 98 or 99:
                    return false;
                case 'N' when found < 0 && token.Value is >= 0 and < 1e9:
                    found = (int)token.Value;
                    break;
            }
        }
        number = found;
        return true;
    }

    /// <summary>The number of a block, or −1 where a program begins; false where it has none.</summary>
    static bool TryNumber(in Block block, out int number)
    {
        number = -1;
        foreach (ref readonly var token in block.Tokens)
        {
            if (token.IsWord('O') || token.IsWord(':'))
            {
                // With or without a block number before it, a program begins here.
                number = -1;
                return true;
            }
            if (number < 0 && token.IsWord('N') && token.Value is >= 0 and < 1e9)
                number = (int)token.Value;
            // Behind a statement an N is no number of this block: GOTO N10 was meant to lead to it.
            if (token.Kind == TokenKind.Statement)
                break;
        }
        return number >= 0;
    }

    static void NoteMarks(in Block block, int line, ref List<Mark>? marks, ref bool steers)
    {
        var (programNumber, hasProgram, hasStatement) = (-1, false, false);
        for (var i = 0; i < block.Tokens.Length; i++)
        {
            ref readonly var token = ref block.Tokens[i];
            switch (token.Kind)
            {
                case TokenKind.Percent:
                    Add(ref marks, new Mark(MarkKind.Percent, StatementKind.None, false, -1, line));
                    break;
                case TokenKind.Assignment:
                    steers |= block.TextOf(token).StartsWith("#3000"u8);
                    break;
                case TokenKind.Statement:
                    steers = true;
                    var isFirst = !hasStatement;
                    hasStatement = true;
                    if (token.Statement == StatementKind.Goto)
                        Add(ref marks, new Mark(MarkKind.Jump, token.Statement, false, Whole(token.Value), line));
                    else if (hasProgram && isFirst)
                        Add(ref marks, new Mark(MarkKind.Structure, token.Statement, true, programNumber, line));
                    else if (token.Statement is StatementKind.Do or StatementKind.End)
                        Add(ref marks, new Mark(MarkKind.Structure, token.Statement, false, Whole(token.Value), line));
                    break;
                case TokenKind.Word when token.Letter is (byte)'O' or (byte)':':
                    (hasProgram, programNumber) = (true, Whole(token.Value));
                    break;
                case TokenKind.Word when token.Letter == 'M':
                    var calls = token.Value == 98 || token.ReadsVariables;
                    steers |= calls || (token.Value == 99 && block.IndexOf('P') >= 0);
                    if (calls)
                        Add(ref marks, new Mark(MarkKind.Call, StatementKind.None, false, -1, line));
                    if (token.Value is 2 or 30 or 99)
                        Add(ref marks, new Mark(MarkKind.End, StatementKind.None, false, (int)token.Value, line));
                    break;
                case TokenKind.Word when token.Letter == 'G':
                    if (token.Value == 65 || token.ReadsVariables)
                    {
                        steers = true;
                        Add(ref marks, new Mark(MarkKind.Call, StatementKind.None, false, -1, line));
                    }
                    break;
            }
        }
        if (hasProgram && !hasStatement)
            Add(ref marks, new Mark(MarkKind.Program, StatementKind.None, false, programNumber, line));
    }

    static void Add(ref List<Mark>? marks, Mark mark) => (marks ??= []).Add(mark);

    static int Whole(double value) => value is >= 0 and < 1e9 && value == Math.Floor(value) ? (int)value : -1;
}
