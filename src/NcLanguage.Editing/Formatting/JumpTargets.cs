using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing.Formatting;

/// <summary>Where blocks jump to.</summary>
static class JumpTargets
{
    /// <summary>The token with the number of the block that a block jumps to; −1 where it does not jump.</summary>
    public static int In(in Block block)
    {
        var returns = false;
        foreach (ref readonly var token in block.Tokens)
            returns |= token.IsWord('M') && token.Value == 99;
        for (var i = 0; i < block.Tokens.Length; i++)
            if (block.Tokens[i] is { Kind: TokenKind.Statement, Statement: StatementKind.Goto } || (returns && block.Tokens[i].IsWord('P')))
                return i;
        return -1;
    }

    /// <summary>The numbers that the blocks of a text jump to; a number that is worked out is none of them.</summary>
    public static HashSet<double> NumbersIn(SourceText text)
    {
        var numbers = new HashSet<double>();
        for (var line = 0; line < text.LineCount; line++)
        {
            var block = text.BlockAt(line);
            if (In(block) is >= 0 and var target && !double.IsNaN(block.Tokens[target].Value))
                numbers.Add(block.Tokens[target].Value);
        }
        return numbers;
    }
}
