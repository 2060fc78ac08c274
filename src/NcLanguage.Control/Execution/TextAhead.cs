using NcLanguage.Control.Flow;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Control.Execution;

/// <summary>The blocks behind the one that runs, for steps that depend on what follows.</summary>
/// <param name="text">The text of the block that runs.</param>
/// <param name="flow">The same text with the places that a run can go to; null where the run keeps to the order of the text.</param>
public sealed class TextAhead(SourceText text, FlowText? flow = null) : IBlocksAhead
{
    int _at;

    /// <summary>The text of the block that runs, with the places that a run can go to.</summary>
    public FlowText? Flow { get; set; } = flow;

    /// <summary>The line (0-based) of the block that runs.</summary>
    public int Line { get; set; }

    /// <summary>The last line that was asked for since this was last set, whether or not the text has it.</summary>
    public int Farthest { get; set; }

    SourceText Text => Flow?.Text ?? text;

    public void Begin() => _at = Line;

    public bool TryNext(out Block block)
    {
        _at++;
        Farthest = Math.Max(Farthest, _at);
        var isThere = _at < Text.LineCount;
        block = isThere ? Text.BlockAmong(_at) : default;
        return isThere;
    }

    public bool TryFollow(in Transfer transfer)
    {
        if (Flow?.LineBehind(transfer, _at) is not { } line)
            return false;
        _at = line - 1;
        return true;
    }
}
