using System.Collections.Concurrent;
using System.Collections.Immutable;
using NcLanguage.Syntax.Expressions;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Control.Flow;

/// <summary>A stretch of lines: the first and the one after the last.</summary>
readonly record struct Region(int First, int End)
{
    public bool Holds(int line) => line >= First && line < End;
}

/// <summary>A text and the places in it that the run can go to.</summary>
public sealed partial class FlowText
{
    readonly ImmutableArray<ChunkMarks> _chunks;
    readonly Mark[] _marks;
    readonly ConcurrentDictionary<int, int[]> _linesOf = new();
    MarkIndex? _index;
    ProgramIndex? _programs;
    int _endOfFirst = -1;
    HashSet<int>? _named;

    /// <param name="name">What to call the text in a message; null for the program itself.</param>
    public FlowText(SourceText text, ImmutableArray<ChunkMarks> chunks, string? name = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        Text = text;
        Name = name;
        _chunks = chunks;
        LeaderLines = Leader.LinesOf(text);
        var marks = new List<Mark>();
        for (var chunk = 0; chunk < chunks.Length; chunk++)
            foreach (var mark in chunks[chunk].Marks)
                if (mark.Line + text.FirstLineOf(chunk) is var line && line >= LeaderLines)
                    marks.Add(mark with { Line = line });
        _marks = [.. marks];
    }

    public SourceText Text { get; }

    /// <summary>Lines before the % that begins the program; 0 where nothing stands there.</summary>
    public int LeaderLines { get; }

    // Made by whoever asks first; two who ask at once make the same.
    MarkIndex Index => _index ??= new MarkIndex(_marks, Text.LineCount);

    ProgramIndex Programs => _programs ??= new ProgramIndex(FirstProgram(), FurtherPrograms(), [.. BeginningsOfPrograms()], PairedSubroutines(), Text.LineCount);

    /// <summary>How often all marks have been gone over: what is asked of each of many places has an index, which tests hold this against.</summary>
    public int Passes { get; private set; }

    /// <summary>The name of another file; null for the program itself.</summary>
    public string? Name { get; }

    /// <summary>Whether anything in it may make the run leave the order of the text.</summary>
    public bool Steers
    {
        get
        {
            foreach (var chunk in _chunks)
                if (chunk.Steers)
                    return true;
            return false;
        }
    }

    /// <summary>Whether the text is there to be called.</summary>
    public bool IsCalled => ChunkMarks.IsCalled(_chunks);

    /// <summary>Whether a jump by block number stands in it.</summary>
    public bool HasJumps => NamedByJumps.Count > 0;

    // Likewise. −1 stands for a jump that works out where it goes as it runs.
    HashSet<int> NamedByJumps => _named ??= [.. _marks.Where(mark => mark.Kind == MarkKind.Jump).Select(mark => mark.Number)];

    /// <summary>Whether a jump may lead to a block: one names its number, or works out where it goes as it runs.</summary>
    public bool MayBeJumpedTo(in Block block) =>
        block.NumberIndex is >= 0 and var at && (NamedByJumps.Contains(-1) || NamedByJumps.Contains(BlockNumberOf(block.Tokens[at].Value)));

    /// <summary>A text read from a file beside the program.</summary>
    public static FlowText Of(SourceText text, string? name)
    {
        ArgumentNullException.ThrowIfNull(text);
        var chunks = ImmutableArray.CreateBuilder<ChunkMarks>(text.Chunks.Length);
        foreach (var chunk in text.Chunks)
            chunks.Add(ChunkMarks.Of(chunk.Blocks));
        return new FlowText(text, chunks.MoveToImmutable(), name);
    }

    /// <summary>The next line at or behind <paramref name="line"/> whose block holds anything; the number of lines where there is none.</summary>
    public int NextBlock(int line)
    {
        while (line < Text.LineCount)
        {
            var chunk = Text.ChunkOfLine(line);
            var blocks = Text.Chunks[chunk].Blocks;
            var first = Text.FirstLineOf(chunk);
            for (; line - first < blocks.Count; line++)
                if (blocks[line - first].Tokens.Length > 0)
                    return line;
        }
        return Text.LineCount;
    }

    /// <summary>The first program of the text: up to the beginning of the next one.</summary>
    internal Region FirstProgram() => new(0, _endOfFirst < 0 ? _endOfFirst = EndOfFirst() : _endOfFirst);

    int EndOfFirst()
    {
        var hasBegun = false;
        foreach (var mark in PassOver())
        {
            if (mark.Kind != MarkKind.Program)
                continue;
            if (hasBegun || HasWordsBefore(mark.Line))
                return mark.Line;
            hasBegun = true;
        }
        return Text.LineCount;
    }

    /// <summary>All marks, for one pass over them.</summary>
    Mark[] PassOver()
    {
        Passes++;
        return _marks;
    }

    /// <summary>The programs that stand behind the first: number, −1 where it is not plain, first line, and the line behind the last.</summary>
    public IReadOnlyList<(int Number, int First, int End)> FurtherPrograms()
    {
        var further = new List<(int, int, int)>();
        var behind = FirstProgram().End;
        var marks = PassOver();
        for (var i = 0; i < marks.Length; i++)
            if (marks[i].Kind == MarkKind.Program && marks[i].Line >= behind)
                further.Add((marks[i].Number, marks[i].Line, EndOfProgram(i)));
        return further;
    }

    /// <summary>The line behind a % that opens a file; the line itself where none stands there.</summary>
    internal int BehindOpeningMark(int line)
    {
        var first = NextBlock(line);
        return first < Text.LineCount && BlockAt(first).Tokens[0].Kind == TokenKind.Percent ? first + 1 : line;
    }

    /// <summary>The program with a number; null where the text has none.</summary>
    internal Region? FindProgram(int number) => Index.ProgramOf(number);

    /// <summary>The lines of the subroutine with a number: from its SUB to behind its ENDSUB.</summary>
    internal Region? FindSubroutine(int number) =>
        Index.FirstSubroutine(number) is >= 0 and var first
            ? new Region(first, PairOf(first, StatementKind.EndSub, number, true) is var end and >= 0 ? end + 1 : Text.LineCount)
            : null;

    int EndOfProgram(int index)
    {
        for (var i = index + 1; i < _marks.Length; i++)
            if (_marks[i].BoundsProgram)
                return _marks[i].Line;
        return Text.LineCount;
    }

    bool HasWordsBefore(int line)
    {
        for (var at = NextBlock(LeaderLines); at < line; at = NextBlock(at + 1))
            if (BlockAt(at).HasWords)
                return true;
        return false;
    }

    /// <summary>The line of a block number: the next one behind <paramref name="from"/>, else the first of the program (common practice). −1 where there is none.</summary>
    internal int FindNumber(int number, in Region within, int from)
    {
        var lines = _linesOf.GetOrAdd(number, LinesOf);
        var found = FirstAt(lines, from + 1);
        if (found < 0 || found >= within.End)
            found = FirstAt(lines, within.First);
        return within.First < within.End && found >= 0 && found < within.End ? found : -1;
    }

    /// <summary>The first of these lines at or behind one; −1 where there is none.</summary>
    static int FirstAt(int[] lines, int line)
    {
        var at = Array.BinarySearch(lines, line);
        at = at < 0 ? ~at : at;
        return at < lines.Length ? lines[at] : -1;
    }

    /// <summary>All lines with a block number. Looked up once for each number that is asked for.</summary>
    int[] LinesOf(int number)
    {
        var lines = new List<int>();
        for (var chunk = 0; chunk < _chunks.Length; chunk++)
        {
            if (number < _chunks[chunk].LeastNumber || number > _chunks[chunk].GreatestNumber)
                continue;
            foreach (var mark in _chunks[chunk].Numbers)
                if (mark.Number == number)
                    lines.Add(Text.FirstLineOf(chunk) + mark.Line);
        }
        return [.. lines];
    }

    /// <summary>The next line behind <paramref name="line"/> with a statement of this kind and number; −1 where there is none.</summary>
    internal int PairOf(int line, StatementKind statement, int number, bool behindO) => Index.Next(line, statement, number, behindO);

    /// <summary>The last line before <paramref name="line"/> with a statement of this kind and number; −1 where there is none.</summary>
    internal int PairBefore(int line, StatementKind statement, int number, bool behindO) => Index.Last(line, statement, number, behindO);

    /// <summary>The line of the DO that a WHILE behind the O word of this number on a line closes; −1 where that WHILE opens a loop itself.</summary>
    internal int DoClosedBy(int line, int number) =>
        PairBefore(line, StatementKind.Do, number, true) is var open and >= 0 && open > PairBefore(line, StatementKind.While, number, true) ? open : -1;

    /// <summary>The next statement behind a line that ends a loop of this number behind O, which BREAK and CONTINUE go to; a line of −1 where there is none.</summary>
    internal (int Line, StatementKind Statement) EndOfLoopBehind(int line, int number)
    {
        foreach (var end in (ReadOnlySpan<StatementKind>)[StatementKind.EndWhile, StatementKind.EndRepeat, StatementKind.While])
            if (PairOf(line, end, number, true) is var last and >= 0)
                return (last, end);
        return (-1, StatementKind.None);
    }

    /// <summary>The block number that a value stands for; −1 where it stands for none, or is not known.</summary>
    internal static int BlockNumberOf(double value)
    {
        var whole = Math.Round(value);
        return whole is >= 0 and < int.MaxValue && Math.Abs(value - whole) <= Expression.WholeTolerance ? (int)whole : -1;
    }

    /// <summary>The next statement behind a line that carries on a condition with this number: ELSEIF, ELSE or ENDIF.</summary>
    internal (int Line, StatementKind Statement) NextBranch(int line, int number) =>
        Index.NextBranch(line, number) is { } mark ? (mark.Line, mark.Statement) : (-1, StatementKind.None);

    /// <summary>The line where the run goes on behind a jump, loop or condition whose values are known; null where it is not that plain, as behind a call.</summary>
    internal int? LineBehind(in Transfer transfer, int line)
    {
        if (double.IsNaN(transfer.Value) || double.IsNaN(transfer.Number))
            return null;
        var number = (int)Math.Round(transfer.Number);
        var behindO = transfer.BehindO;
        return (transfer.Kind, transfer.Statement) switch
        {
            (TransferKind.Jump, _) => transfer.Value == 0 ? line + 1 : Found(FindNumber(number, Programs.ProgramAt(line), line), 0),
            (TransferKind.Structure, StatementKind.While) when behindO && DoClosedBy(line, number) >= 0 => null,
            (TransferKind.Structure, StatementKind.While) when transfer.Value == 0 =>
                Found(PairOf(line, behindO ? StatementKind.EndWhile : StatementKind.End, number, behindO), 1),
            (TransferKind.Structure, StatementKind.While or StatementKind.Do or StatementKind.EndIf) => line + 1,
            (TransferKind.Structure, StatementKind.End) => Found(PairBefore(line, StatementKind.Do, number, false), 0),
            (TransferKind.Structure, StatementKind.EndWhile) => Found(PairBefore(line, StatementKind.While, number, true), 0),
            (TransferKind.Structure, StatementKind.If) => transfer.Value != 0 ? line + 1 : null,
            _ => null,
        };
    }

    static int? Found(int line, int behind) => line < 0 ? null : line + behind;

    /// <summary>Whether a run that goes round from <paramref name="last"/> to <paramref name="first"/> can leave this way at all: a condition, another jump or an end.</summary>
    internal bool HasWayOut(int first, int last)
    {
        for (var i = FirstMarkBehind(first - 1); i < _marks.Length && _marks[i].Line <= last; i++)
        {
            var mark = _marks[i];
            var leaves = mark.Kind switch
            {
                MarkKind.End or MarkKind.Call => true,
                MarkKind.Jump => mark.Line != last,
                MarkKind.Structure => mark.Statement is StatementKind.If or StatementKind.Break or StatementKind.Return or StatementKind.Call,
                _ => false,
            };
            if (leaves)
                return true;
        }
        return false;
    }

    int FirstMarkBehind(int line)
    {
        var (low, high) = (0, _marks.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (_marks[middle].Line <= line)
                low = middle + 1;
            else
                high = middle;
        }
        return low;
    }

    /// <summary>The block on a line (0-based).</summary>
    public Block BlockAt(int line) => Text.BlockAmong(line);
}
