using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Control.Execution;

/// <summary>The blocks of a text behind the one that runs, for steps that depend on what follows.</summary>
public sealed class TextAhead(SourceText text) : IBlocksAhead
{
    /// <summary>The text of the block that runs.</summary>
    public SourceText Text { get; set; } = text;

    /// <summary>The line (0-based) of the block that runs.</summary>
    public int Line { get; set; }

    /// <summary>The last line that was asked for since this was last set, whether or not the text has it.</summary>
    public int Farthest { get; set; }

    public bool TryGet(int ahead, out Block block)
    {
        var line = Line + ahead;
        Farthest = Math.Max(Farthest, line);
        var isThere = line < Text.LineCount;
        block = isThere ? Text.BlockAt(line) : default;
        return isThere;
    }
}
