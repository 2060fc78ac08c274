using System.Collections.Immutable;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Codes;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing;

/// <summary>What an entry of the outline stands for.</summary>
public enum OutlineKind
{
    /// <summary>One of several programs in a file.</summary>
    Program,

    /// <summary>Called by its number, from SUB to ENDSUB.</summary>
    Subroutine,
    Tool,
    Operation,
}

/// <summary>An entry of the outline; lines count from 0, both included. Children lie within their parent, in the order of the text.</summary>
/// <param name="TellsCalls">Whether the detail begins with how often it is called.</param>
public sealed record OutlineItem(string Name, string Detail, OutlineKind Kind, int FirstLine, int LastLine, ImmutableArray<OutlineItem> Children, bool TellsCalls = false);

/// <summary>A program by tool and operation, with holes and time. Built from what the run noted for each block: nothing runs again.</summary>
public sealed class Outline
{
    readonly ProgramAnalysis _analysis;
    readonly ProgramFacts _blocks;
    readonly SortedList<int, int> _toolAt;
    readonly Dictionary<int, ToolWork> _tools;
    readonly IReadOnlyList<(int Number, int First, int Last)> _subroutines;
    readonly int _lastLine;
    int _subroutine;

    Outline(ProgramAnalysis analysis, CancellationToken cancel)
    {
        _analysis = analysis;
        _blocks = new ProgramFacts(analysis.Main, cancel);
        _toolAt = ToolChanges.Of(analysis.Main);
        _tools = ToolWork.Of(analysis.Main);
        _subroutines = analysis.Main.Flow?.Text.Subroutines() ?? [];
        _lastLine = analysis.Text.LineCount - 1;
    }

    /// <param name="analysis">The program.</param>
    /// <param name="file">What a text without a program number is called; null where the only program of a text needs no entry of its own.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static IReadOnlyList<OutlineItem> Of(ProgramAnalysis analysis, string? file = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        return new Outline(analysis, cancel).Programs(file);
    }

    List<OutlineItem> Programs(string? file)
    {
        var starts = ProgramStarts();
        if (starts.Count < 2 && file is null)
            return Tools(0, _lastLine);
        if (starts.Count == 0)
        {
            var all = Tools(0, _lastLine);
            return HasAnyWords() ? [new OutlineItem(file!, Detail(0, _lastLine), OutlineKind.Program, 0, _lastLine, [.. all])] : all;
        }
        var items = Tools(0, starts[0] - 1);
        for (var i = 0; i < starts.Count; i++)
        {
            var (first, last) = (starts[i], i + 1 < starts.Count ? starts[i + 1] - 1 : _lastLine);
            var tellsCalls = i > 0 && _analysis.Main.Flow is not null;
            items.Add(new OutlineItem(
                ProgramName(first), tellsCalls ? Called(first, first, last) : Detail(first, last), OutlineKind.Program, first, last, [.. Tools(first, last)], tellsCalls));
        }
        return items;
    }

    bool HasAnyWords()
    {
        for (var line = 0; line <= _lastLine; line++)
            if (_analysis.Main.BlockAt(line).HasWords)
                return true;
        return false;
    }

    /// <summary>Lines where programs begin; O words of subroutines and loops are none.</summary>
    List<int> ProgramStarts()
    {
        var starts = new List<int>();
        for (var chunk = 0; chunk < _analysis.Main.Texts.Length; chunk++)
            foreach (var number in _analysis.Main.Texts[chunk].Numbers)
            {
                var line = _analysis.Text.FirstLineOf(chunk) + number.Line;
                if (number.Number < 0 && !_analysis.Main.BlockAt(line).HasStatement)
                    starts.Add(line);
            }
        return starts;
    }

    string ProgramName(int line)
    {
        var block = _analysis.Main.BlockAt(line);
        var name = block.ProgramNumberIndex is >= 0 and var number ? Quote.Word(block, block.Tokens[number]) : "Program";
        return Titles.In(block) is { } title ? $"{name} {title}" : name;
    }

    /// <summary>How often a called program or subroutine runs, and what is done in it.</summary>
    /// <param name="begins">Its first block, by which its runs are counted.</param>
    string Called(int begins, int first, int last)
    {
        var runs = begins <= last ? _analysis.Main.Flow!.RunsOf(begins) : 0;
        return runs == 0 ? "not called" : $"runs {(runs == 1 ? "once" : RunsText.Number(runs) + " times")}, {Detail(first, last)}";
    }

    /// <summary>Tools and operations, and the subroutines between them.</summary>
    List<OutlineItem> Tools(int first, int last)
    {
        if (_analysis.Main.Flow is not { } flow)
            return Stretch(first, last);
        var items = new List<OutlineItem>();
        // Programs are asked for in the order of the text.
        for (; _subroutine < _subroutines.Count && _subroutines[_subroutine].First <= last; _subroutine++)
        {
            var (_, begin, end) = _subroutines[_subroutine];
            if (begin < first || end > last)
                continue;
            items.AddRange(Stretch(first, begin - 1));
            items.Add(new OutlineItem(ProgramName(begin), Called(flow.Text.NextBlock(begin + 1), begin, end), OutlineKind.Subroutine, begin, end, [.. Stretch(begin + 1, end - 1)], TellsCalls: true));
            first = end + 1;
        }
        items.AddRange(Stretch(first, last));
        return items;
    }

    List<OutlineItem> Stretch(int first, int last)
    {
        var items = new List<OutlineItem>();
        var start = first;
        for (var next = FirstToolAt(first); next < _toolAt.Count && _toolAt.Keys[next] <= last; next++)
        {
            Add(_toolAt.Keys[next] - 1);
            start = _toolAt.Keys[next];
        }
        Add(last);
        return items;

        void Add(int end)
        {
            if (start <= end && _toolAt.ContainsKey(start))
                items.Add(ToolItem(start, end));
            else
                items.AddRange(Operations(start, end));
        }
    }

    /// <summary>The index of the first tool change at or behind a line.</summary>
    int FirstToolAt(int line)
    {
        var (low, high) = (0, _toolAt.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (_toolAt.Keys[middle] < line)
                low = middle + 1;
            else
                high = middle;
        }
        return low;
    }

    OutlineItem ToolItem(int first, int last)
    {
        // Comments and blank lines above the next tool change are the next tool's.
        while (last > first && !HasWords(_analysis.Main.BlockAt(last)))
            last--;
        var detail = _tools.TryGetValue(first, out var work) ? Detail(work.Holes, work.Seconds, work.IsUntimed) : Detail(first, last);
        return new OutlineItem(ToolName(first), detail, OutlineKind.Tool, first, last, [.. Operations(first, last)]);
    }

    static bool HasWords(in Block block)
    {
        foreach (ref readonly var token in block.Tokens)
            if (!token.IsComment)
                return true;
        return false;
    }

    string ToolName(int line)
    {
        var number = _toolAt[line];
        var name = number < 0 ? "Tool change" : number == 0 ? "No tool" : $"T{number}";
        var title = Titles.Above(_analysis, line);
        if (_analysis.Setup.FindTool(number) is { Kind: not null } tool)
        {
            name += $" {ToolText.Kind(tool)}{(tool.Diameter is { } diameter ? " " + Say.Number(diameter) : "")}";
            return title is null ? name : $"{name} ({title})";
        }
        return title is null ? name : $"{name} {title}";
    }

    /// <summary>Uninterrupted runs of a cycle, and of cuts outside cycles.</summary>
    IEnumerable<OutlineItem> Operations(int first, int last)
    {
        for (var line = first; line <= last; line++)
        {
            if (_blocks[line] is { Holes: 0, Cuts: false })
                continue;
            var end = EndOfOperation(line, last);
            yield return new OutlineItem(OperationName(line), Detail(line, end), OutlineKind.Operation, line, end, []);
            line = end;
        }
    }

    int EndOfOperation(int line, int last)
    {
        var begin = _blocks[line];
        var drills = begin.Holes > 0;
        var end = line;
        for (var next = line + 1; next <= last; next++)
        {
            var block = _blocks[next];
            if (drills ? block.SetsCycle || (block.Holes > 0 && block.Cycle != begin.Cycle) || (block.Cuts && block.Holes == 0) : block.Holes > 0)
                break;
            if (drills ? block.Holes > 0 : block.Cuts)
                end = next;
        }
        return end;
    }

    string OperationName(int line)
    {
        var cycle = _blocks[line].Cycle;
        if (Titles.Above(_analysis, line) is { } title)
            return $"{title} ({(cycle > 0 ? "G" + cycle : "feed")})";
        return cycle > 0 ? CodeTable.Find('G', cycle * 10) is { } code ? $"{code.Text} {code.Name}" : $"G{cycle}" : "Cuts at feed";
    }

    /// <summary>5 holes, 23 s; at least so long where some moves' time is not known.</summary>
    string Detail(int first, int last)
    {
        var (holes, seconds, untimed) = (0, 0.0, false);
        for (var line = first; line <= last; line++)
        {
            var block = _blocks[line];
            holes += block.Holes;
            seconds += block.Seconds;
            untimed |= block.IsUntimed;
        }
        return Detail(holes, seconds, untimed);
    }

    static string Detail(int holes, double seconds, bool untimed) =>
        (holes > 0 ? Say.Count(holes, "hole") + ", " : "") + (untimed ? "at least " : "") + Times.Of(seconds);
}
