using NcLanguage.Control.State;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing;

/// <summary>Finds what the numbers of a block name.</summary>
static class SymbolReader
{
    /// <summary>Lines between two looks at whether the uses are still wanted.</summary>
    const int LinesBetweenLooks = 4096;

    /// <summary>The uses of the lines from one up to another, the end excluded, in the order of the text.</summary>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static IEnumerable<SymbolUse> In(SourceText text, int first, int end, CancellationToken cancel = default)
    {
        var uses = new List<SymbolUse>();
        for (var line = first; line < end; line++)
        {
            if (line % LinesBetweenLooks == 0)
                cancel.ThrowIfCancellationRequested();
            uses.Clear();
            Read(text.BlockAt(line), line, uses);
            foreach (var use in uses)
                yield return use;
        }
    }

    /// <summary>All uses of a text.</summary>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static IEnumerable<SymbolUse> In(SourceText text, CancellationToken cancel = default) => In(text, 0, text.LineCount, cancel);

    /// <summary>Adds all uses of a block, in the order written.</summary>
    public static void Read(in Block block, int line, List<SymbolUse> uses)
    {
        var leads = Leads(block);
        foreach (ref readonly var token in block.Tokens)
        {
            if (token.IsComment)
                continue;
            if (token.IsExpression || token.Kind == TokenKind.Assignment)
                ReadVariables(block, token, line, uses);
            else if (Whole(token) is >= 0 and var number && KindOf(block, token, leads) is var (kind, role))
                uses.Add(new SymbolUse(new ProgramSymbol(kind, number), line, token.ValueStart, token.End, role));
        }
    }

    /// <summary>Whether a block holds a variable whose number is worked out: #[…] or ##….</summary>
    public static bool HasComputedVariable(in Block block)
    {
        foreach (ref readonly var token in block.Tokens)
        {
            if (token.IsComment || !(token.IsExpression || token.Kind == TokenKind.Assignment))
                continue;
            var text = block.TextOf(token);
            for (var at = text.IndexOf((byte)'#'); at >= 0; at = Next(text, at))
                if (SkipBlanks(text, at + 1) is var behind && behind < text.Length && text[behind] is (byte)'[' or (byte)'#')
                    return true;
        }
        return false;
    }

    /// <summary>Whether a jump of the block has a number that is worked out.</summary>
    public static bool HasComputedJump(in Block block)
    {
        foreach (ref readonly var token in block.Tokens)
            if (token is { Kind: TokenKind.Statement, Statement: StatementKind.Goto, IsExpression: true })
                return true;
        return false;
    }

    /// <summary>What a P word of the block names: a program behind M98 or G65, a block number behind M99; null where neither stands.</summary>
    static NamedKind? Leads(in Block block)
    {
        foreach (ref readonly var token in block.Tokens)
        {
            if ((token.IsWord('M') && token.Value == 98) || (token.IsWord('G') && token.Value == 65))
                return NamedKind.Program;
            if (token.IsWord('M') && token.Value == 99)
                return NamedKind.BlockNumber;
        }
        return null;
    }

    static (NamedKind, UseRole)? KindOf(in Block block, in Token token, NamedKind? leads) => (token.Kind, (char)token.Letter, token.Statement) switch
    {
        (TokenKind.Word, 'N', _) => (NamedKind.BlockNumber, UseRole.Definition),
        (TokenKind.Word, 'O' or ':', _) => (NamedKind.Program, RoleOfO(block)),
        (TokenKind.Word, 'P', _) when leads is { } kind => (kind, kind == NamedKind.Program ? UseRole.Call : UseRole.Read),
        (TokenKind.Word, 'T', _) => (NamedKind.Tool, UseRole.Read),
        (TokenKind.Word, 'H', _) => (NamedKind.LengthOffset, UseRole.Read),
        (TokenKind.Word, 'D', _) => (NamedKind.RadiusOffset, UseRole.Read),
        (TokenKind.Statement, _, StatementKind.Goto) => (NamedKind.BlockNumber, UseRole.Read),
        (TokenKind.Statement, _, StatementKind.Do) => (NamedKind.Loop, UseRole.Definition),
        (TokenKind.Statement, _, StatementKind.End) => (NamedKind.Loop, UseRole.Read),
        _ => null,
    };

    static UseRole RoleOfO(in Block block)
    {
        foreach (ref readonly var token in block.Tokens)
            if (token.Kind == TokenKind.Statement)
                return token.Statement switch
                {
                    StatementKind.Sub or StatementKind.If or StatementKind.While or StatementKind.Do or StatementKind.Repeat => UseRole.Definition,
                    StatementKind.Call => UseRole.Call,
                    _ => UseRole.Read,
                };
        return UseRole.Definition;
    }

    static void ReadVariables(in Block block, in Token token, int line, List<SymbolUse> uses)
    {
        var text = block.TextOf(token);
        for (var at = text.IndexOf((byte)'#'); at >= 0; at = Next(text, at))
        {
            var start = SkipBlanks(text, at + 1);
            if (start >= text.Length)
                return;
            var role = at == 0 && token.Kind == TokenKind.Assignment ? UseRole.Write : UseRole.Read;
            if (text[start] == '<')
            {
                var length = text[start..].IndexOf((byte)'>');
                if (length < 0)
                    return;
                uses.Add(new SymbolUse(new ProgramSymbol(NamedKind.NamedVariable, -1, Variables.NameIn(text[(start + 1)..(start + length)])),
                    line, token.Start + start + 1, token.Start + start + length, role));
                continue;
            }
            var end = start;
            while (end < text.Length && text[end] is >= (byte)'0' and <= (byte)'9')
                end++;
            if (end > start && int.TryParse(text[start..end], out var number) && number > 0)
                uses.Add(new SymbolUse(new ProgramSymbol(NamedKind.Variable, number), line, token.Start + start, token.Start + end, role));
        }
    }

    static int Whole(in Token token) => !token.IsMalformed && token.Value is >= 0 and < 1e9 && token.Value == Math.Floor(token.Value) ? (int)token.Value : -1;

    static int Next(ReadOnlySpan<byte> text, int at) => text[(at + 1)..].IndexOf((byte)'#') is >= 0 and var next ? at + 1 + next : -1;

    static int SkipBlanks(ReadOnlySpan<byte> text, int at)
    {
        while (at < text.Length && text[at] is (byte)' ' or (byte)'\t')
            at++;
        return at;
    }
}
