using NcLanguage.Syntax.Lexing;

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
}
