using System.Collections.Immutable;
using System.Text;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.State;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing;

/// <summary>What an entry of the outline stands for.</summary>
public enum OutlineKind { Tool, Operation }

/// <summary>An entry of the outline; lines count from 0, both included.</summary>
public sealed record OutlineItem(string Name, string Detail, OutlineKind Kind, int FirstLine, int LastLine, ImmutableArray<OutlineItem> Children);

/// <summary>A program by tool and operation, with holes and time. Built from what the runs noted for each block: nothing runs again.</summary>
public static class Outline
{
    public static IReadOnlyList<OutlineItem> Of(ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        var blocks = BlockFacts.Of(analysis.Main);
        var items = new List<OutlineItem>();
        var start = 0;
        for (var line = 1; line <= blocks.Length; line++)
        {
            if (line < blocks.Length && !blocks[line].ChangesTool)
                continue;
            if (blocks[start].ChangesTool)
                items.Add(ToolItem(analysis, blocks, start, line - 1));
            else
                items.AddRange(Operations(analysis, blocks, start, line - 1));
            start = line;
        }
        return items;
    }

    static OutlineItem ToolItem(ProgramAnalysis analysis, BlockFacts[] blocks, int first, int last)
    {
        var number = analysis.Main.StepAt(first).After.Tool;
        var tool = analysis.Setup.FindTool(number);
        var name = number < 0 ? "Tool change" : $"T{number}";
        if (tool?.Kind is { } kind)
            name += $" {ToolKindName.Format(kind).Replace('-', ' ')}";
        if (tool?.Diameter is { } diameter)
            name += $" {Say.Number(diameter)}";
        return new OutlineItem(name, Detail(blocks, first, last), OutlineKind.Tool, first, last, [.. Operations(analysis, blocks, first, last)]);
    }

    /// <summary>Uninterrupted runs of a cycle, and of cuts outside cycles.</summary>
    static IEnumerable<OutlineItem> Operations(ProgramAnalysis analysis, BlockFacts[] blocks, int first, int last)
    {
        for (var line = first; line <= last; line++)
        {
            if (blocks[line].Holes == 0 && !blocks[line].Cuts)
                continue;
            var drills = blocks[line].Holes > 0;
            var end = line;
            for (var next = line + 1; next <= last && !(blocks[next].SetsCycle && drills); next++)
            {
                if (drills ? blocks[next].Holes > 0 : blocks[next].Cuts && blocks[next].Holes == 0)
                    end = next;
                else if (drills ? blocks[next].Cuts : blocks[next].Holes > 0)
                    break;
            }
            yield return OperationItem(analysis, blocks, line, end);
            line = end;
        }
    }

    static OutlineItem OperationItem(ProgramAnalysis analysis, BlockFacts[] blocks, int first, int last)
    {
        var cycle = blocks[first].Holes > 0 ? analysis.Main.StepAt(first).After.Cycle : 0;
        var name = cycle > 0 ? CycleName(cycle) : "Cuts at feed";
        if (CommentAbove(analysis, first) is { } title)
            name = $"{title} ({(cycle > 0 ? "G" + cycle : "feed")})";
        return new OutlineItem(name, Detail(blocks, first, last), OutlineKind.Operation, first, last, []);
    }

    static string CycleName(int cycle) =>
        Control.Codes.CodeTable.Find('G', cycle * 10) is { } code ? $"{code.Text} {code.Name}" : $"G{cycle}";

    static string Detail(BlockFacts[] blocks, int first, int last)
    {
        var (holes, seconds) = (0, 0.0);
        for (var line = first; line <= last; line++)
        {
            holes += blocks[line].Holes;
            seconds += blocks[line].Seconds;
        }
        return (holes > 0 ? Say.Count(holes, "hole") + ", " : "") + Say.Seconds(seconds);
    }

    /// <summary>The comment on the line above when nothing else stands there, or in the block itself.</summary>
    static string? CommentAbove(ProgramAnalysis analysis, int line)
    {
        for (var at = line; at >= Math.Max(0, line - 1); at--)
        {
            var block = analysis.Main.BlockAt(at);
            if (at != line && block.Tokens.Length != 1)
                return null;
            foreach (ref readonly var token in block.Tokens)
                if (token.Kind == TokenKind.Comment && Encoding.UTF8.GetString(block.TextOf(token)).Trim('(', ')', ' ') is { Length: > 0 } text)
                    return text;
        }
        return null;
    }
}
