using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Control.Flow;

// Loops, conditions and subroutines as stretches of the text, in one pass over the marks.
public sealed partial class FlowText
{
    /// <summary>The loops, conditions and subroutines of the text, each with its first and last line (0-based), in the order in which they end.</summary>
    public IEnumerable<(int First, int Last)> Structures()
    {
        var open = new Dictionary<(bool BehindO, int Number), Stack<Mark>>();
        foreach (var mark in PassOver())
        {
            if (mark is not { Kind: MarkKind.Structure, Number: >= 0 })
                continue;
            var key = (mark.BehindO, mark.Number);
            var begun = open.TryGetValue(key, out var stack) && stack.Count > 0 ? stack.Peek().Statement : StatementKind.None;
            if (Ends(mark.Statement, begun))
                yield return (stack!.Pop().Line, mark.Line);
            else if (mark.Statement is StatementKind.Do or StatementKind.Sub or StatementKind.If or StatementKind.While or StatementKind.Repeat)
                (open[key] = stack ?? new Stack<Mark>()).Push(mark);
        }
    }

    static bool Ends(StatementKind statement, StatementKind begun) => (statement, begun) is
        (StatementKind.End, StatementKind.Do) or (StatementKind.EndSub, StatementKind.Sub) or (StatementKind.EndIf, StatementKind.If)
        or (StatementKind.EndWhile, StatementKind.While) or (StatementKind.EndRepeat, StatementKind.Repeat) or (StatementKind.While, StatementKind.Do);
}
