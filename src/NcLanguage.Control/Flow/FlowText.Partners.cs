using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Control.Flow;

/// <summary>A loop of DO and END.</summary>
/// <param name="Line">Its beginning, 0-based.</param>
/// <param name="Number">The number behind DO.</param>
/// <param name="OpenSince">The line of a loop around it that has the same number; −1 where there is none.</param>
public readonly record struct NumberedLoop(int Line, int Number, int OpenSince);

// What belongs together by its number, for those who ask without running anything.
public sealed partial class FlowText
{
    /// <summary>The line of the block that a jump to a number leads to from a line (both 0-based); −1 where there is none, or the number is not known.</summary>
    public int TargetOf(int line, double number) =>
        BlockNumberOf(number) is >= 0 and var whole ? FindNumber(whole, Programs.At(line), line) : -1;

    /// <summary>The jumps to a plain number that no block of their program has: the line (0-based) and the number.</summary>
    public IEnumerable<(int Line, int Number)> JumpsAstray()
    {
        foreach (var mark in PassOver())
            if (mark is { Kind: MarkKind.Jump, Number: >= 0 } && FindNumber(mark.Number, Programs.At(mark.Line), mark.Line) < 0)
                yield return (mark.Line, mark.Number);
    }

    /// <summary>The block numbers of the program that a line (0-based) belongs to, each with its line, in the order of the text.</summary>
    public IEnumerable<BlockNumber> NumbersAround(int line)
    {
        var region = Programs.At(line);
        for (var chunk = Text.ChunkOfLine(region.First); chunk < _chunks.Length && Text.FirstLineOf(chunk) < region.End; chunk++)
            foreach (var mark in _chunks[chunk].Numbers)
                if (mark.Number >= 0 && region.Holds(Text.FirstLineOf(chunk) + mark.Line))
                    yield return mark with { Line = Text.FirstLineOf(chunk) + mark.Line };
    }

    /// <summary>The lines of the program that a line (0-based) belongs to, the end excluded.</summary>
    public (int First, int End) LinesOfProgramAt(int line)
    {
        var region = Programs.At(line);
        return (region.First, region.End);
    }

    /// <summary>The lines of the program or subroutine with a number, the end excluded; null where the text has none.</summary>
    public (int First, int End)? LinesOfProgram(int number) =>
        (FindProgram(number) ?? FindSubroutine(number)) is { } region ? (region.First, region.End) : null;

    /// <summary>The line and keyword of the statement that the one on a line (0-based) belongs to by its number: the end of a beginning, the beginning of
    /// an end, the next branch of a condition, the end of the loop that is left. −1 where there is none.</summary>
    public (int Line, StatementKind Statement) PartnerOf(int line)
    {
        for (var i = FirstMarkBehind(line - 1); i < _marks.Length && _marks[i].Line == line; i++)
            if (_marks[i] is { Kind: MarkKind.Structure, Number: >= 0 } mark)
                return mark.BehindO ? PartnerBehindO(mark) : mark.Statement == StatementKind.Do
                    ? (PairOf(line, StatementKind.End, mark.Number, false), StatementKind.End)
                    : (PairBefore(line, StatementKind.Do, mark.Number, false), StatementKind.Do);
        return (-1, StatementKind.None);
    }

    /// <summary>The numbered programs of the text, each with the line (0-based) that it begins on.</summary>
    public IEnumerable<(int Number, int Line)> NumberedPrograms()
    {
        foreach (var mark in PassOver())
            if (mark is { Kind: MarkKind.Program, Number: >= 0 })
                yield return (mark.Number, mark.Line);
    }

    /// <summary>The lines (0-based) with an M99.</summary>
    public IEnumerable<int> Returns() => PassOver().Where(mark => mark is { Kind: MarkKind.End, Number: 99 }).Select(mark => mark.Line);

    /// <summary>The lines (0-based) with a call: M98, G65, or CALL behind an O word.</summary>
    public IEnumerable<int> Calls() =>
        PassOver().Where(mark => mark.Kind == MarkKind.Call || mark is { Kind: MarkKind.Structure, Statement: StatementKind.Call }).Select(mark => mark.Line).Distinct();

    /// <summary>The subroutines of the text, each with its number and its lines (0-based) from SUB to ENDSUB.</summary>
    public IReadOnlyList<(int Number, int First, int Last)> Subroutines() => Programs.Subroutines;

    List<(int Number, int First, int Last)> PairedSubroutines()
    {
        var subroutines = new List<(int, int, int)>();
        foreach (var mark in PassOver())
            if (mark is { Kind: MarkKind.Structure, Statement: StatementKind.Sub } && PairOf(mark.Line, StatementKind.EndSub, mark.Number, true) is var last and >= 0)
                subroutines.Add((mark.Number, mark.Line, last));
        return subroutines;
    }

    IEnumerable<int> BeginningsOfPrograms() => PassOver().Where(mark => mark.Kind == MarkKind.Program).Select(mark => mark.Line);

    /// <summary>The loops that DO opens by a number, in the order of the text.</summary>
    public IEnumerable<NumberedLoop> Loops() => Loops(Text.LineCount, []);

    /// <summary>The numbers of the loops of DO and END that are open at a line (0-based).</summary>
    public IReadOnlyList<int> LoopsOpenAt(int line)
    {
        var open = new List<NumberedLoop>();
        foreach (var _ in Loops(line, open)) { }
        return [.. open.Select(loop => loop.Number)];
    }

    /// <summary>The numbers of those of them that no END behind the line ends.</summary>
    public IReadOnlyList<int> LoopsWithoutEndAt(int line)
    {
        var open = new List<NumberedLoop>();
        foreach (var _ in Loops(Programs.NextProgram(line), open, without: line)) { }
        return [.. open.Where(loop => loop.Line < line).Select(loop => loop.Number)];
    }

    /// <param name="end">The first line (0-based) that is not looked at.</param>
    /// <param name="open">Those that are open at the present loop, and at the end.</param>
    /// <param name="without">A line that is passed over; −1 for none.</param>
    IEnumerable<NumberedLoop> Loops(int end, List<NumberedLoop> open, int without = -1)
    {
        foreach (var mark in PassOver())
        {
            if (mark.Line >= end)
                yield break;
            if (mark.Line == without)
                continue;
            if (mark.Kind == MarkKind.Program)
                open.Clear();
            if (mark is not { Kind: MarkKind.Structure, BehindO: false, Number: >= 0 })
                continue;
            var same = open.FindLastIndex(loop => loop.Number == mark.Number);
            if (mark.Statement == StatementKind.End && same >= 0)
                open.RemoveAt(same);
            else if (mark.Statement == StatementKind.Do)
            {
                var loop = new NumberedLoop(mark.Line, mark.Number, same < 0 ? -1 : open[same].Line);
                open.Add(loop);
                yield return loop;
            }
        }
    }

    (int Line, StatementKind Statement) PartnerBehindO(in Mark mark)
    {
        var (line, number) = (mark.Line, mark.Number);
        switch (mark.Statement)
        {
            case StatementKind.If or StatementKind.ElseIf or StatementKind.Else:
                return NextBranch(line, number);
            case StatementKind.While when DoClosedBy(line, number) is >= 0 and var open:
                return (open, StatementKind.Do);
            case StatementKind.Break or StatementKind.Continue:
                return EndOfLoopBehind(line, number);
        }
        var (partner, isAbove) = mark.Statement switch
        {
            StatementKind.While => (StatementKind.EndWhile, false),
            StatementKind.Do => (StatementKind.While, false),
            StatementKind.Repeat => (StatementKind.EndRepeat, false),
            StatementKind.Sub => (StatementKind.EndSub, false),
            StatementKind.EndWhile => (StatementKind.While, true),
            StatementKind.EndRepeat => (StatementKind.Repeat, true),
            StatementKind.EndSub => (StatementKind.Sub, true),
            StatementKind.EndIf => (StatementKind.If, true),
            _ => (StatementKind.None, false),
        };
        return partner == StatementKind.None ? (-1, partner) : (isAbove ? PairBefore(line, partner, number, true) : PairOf(line, partner, number, true), partner);
    }
}
