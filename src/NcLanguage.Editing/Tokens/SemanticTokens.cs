using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Codes;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing;

/// <summary>The colours of a program: what its text says, and what the run makes of it (rapids, cuts, blocks never come to).</summary>
public static class SemanticTokens
{
    /// <summary>The tokens of the lines from <paramref name="firstLine"/> to <paramref name="lastLine"/> (0-based, both included), in the order of the text. Nothing runs.</summary>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static List<ColouredToken> In(ProgramAnalysis analysis, int firstLine, int lastLine, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        var tokens = new List<ColouredToken>();
        firstLine = Math.Max(firstLine, 0);
        lastLine = Math.Min(lastLine, analysis.Text.LineCount - 1);
        for (var line = firstLine; line <= lastLine; line++)
        {
            if (line % 1024 == 0)
                cancel.ThrowIfCancellationRequested();
            var block = analysis.Main.BlockAt(line);
            if (block.Tokens.Length == 0)
                continue;
            var moves = Moves(analysis.Main, line, block);
            foreach (ref readonly var token in block.Tokens)
                Add(block, token, line, moves, tokens);
        }
        return tokens;
    }

    static TokenModifiers Moves(ProgramRun run, int line, in Block block)
    {
        if (!run.IsReached(line))
            return block.HasWords ? TokenModifiers.NotRun : TokenModifiers.None;
        var sets = run.SetsOf(line);
        return (sets & (Slot.Cut | Slot.Hole)) != 0 ? TokenModifiers.Cut
            : (sets & (Slot.X | Slot.Y | Slot.Z)) != 0 ? TokenModifiers.Rapid
            : TokenModifiers.None;
    }

    static void Add(in Block block, in Token token, int line, TokenModifiers moves, List<ColouredToken> tokens)
    {
        var unreached = moves & TokenModifiers.NotRun;
        switch (token.Kind)
        {
            case TokenKind.Comment or TokenKind.LineComment or TokenKind.UnclosedComment:
                Put(token.Start, token.End, TokenType.Comment, IsAllow(block, token) ? TokenModifiers.Documentation : 0);
                break;
            case TokenKind.Word or TokenKind.BareLetter:
                AddWord(block, token, line, moves, tokens);
                break;
            case TokenKind.Statement:
                var behind = token.Start + Letters(block.Line[token.Start..token.End]);
                Put(token.Start, behind, TokenType.Keyword, unreached);
                if (token.ValueStart >= behind && token.End > token.ValueStart)
                {
                    if (token.Statement == StatementKind.Goto && !token.IsExpression)
                        Put(token.ValueStart, token.End, TokenType.Label, unreached);
                    else
                        ExpressionTokens.Add(block, token.ValueStart, token.End, line, unreached, tokens);
                }
                break;
            case TokenKind.Assignment or TokenKind.Argument:
                ExpressionTokens.Add(block, token.Start, token.End, line, unreached, tokens, isSetting: token.Kind == TokenKind.Assignment);
                break;
            case TokenKind.Skip or TokenKind.Percent:
                Put(token.Start, token.End, TokenType.Operator, 0);
                break;
        }

        void Put(int start, int end, TokenType type, TokenModifiers modifiers) => tokens.Add(new ColouredToken(line, start, end, type, modifiers));
    }

    static void AddWord(in Block block, in Token token, int line, TokenModifiers moves, List<ColouredToken> tokens)
    {
        var unreached = moves & TokenModifiers.NotRun;
        var letter = (char)token.Letter;
        switch (letter)
        {
            case 'G' or 'M':
                tokens.Add(new(line, token.Start, token.End, TypeOfCode(letter, token.Value), moves));
                return;
            case 'N':
                tokens.Add(new(line, token.Start, token.End, TokenType.Label, TokenModifiers.Definition | unreached));
                return;
            case 'O' or ':':
                tokens.Add(new(line, token.Start, token.End, TokenType.Function, (block.HasStatement ? 0 : TokenModifiers.Definition) | unreached));
                return;
        }
        var own = letter is >= 'X' and <= 'Z' or >= 'I' and <= 'K' or 'R' ? moves : unreached;
        var type = AddressTable.Find(letter) is { } address && WordKinds.IsSwitch(WordKinds.Of(address)) ? TokenType.Property : TokenType.Parameter;
        tokens.Add(new(line, token.Start, token.Start + 1, type, own));
        if (token.Kind == TokenKind.BareLetter)
            return;
        if (token.IsExpression)
            ExpressionTokens.Add(block, token.ValueStart, token.End, line, unreached, tokens);
        else
            tokens.Add(new(line, token.ValueStart, token.End, TokenType.Number, own));
    }

    static TokenType TypeOfCode(char letter, double value) => letter == 'M' ? TokenType.Property
        : CodeTable.Find(letter, (int)Math.Round(value * 10)) is { Group: ModalGroup.Cycle } code && WordKinds.Of(code) == WordKind.Cycle ? TokenType.Function
        : TokenType.Keyword;

    static bool IsAllow(in Block block, in Token token) =>
        System.Text.Ascii.EqualsIgnoreCase(block.TextOf(token).TrimStart("(; \t"u8) is var text && text.Length >= 8 ? text[..8] : text, "nc-allow"u8);

    static int Letters(ReadOnlySpan<byte> text)
    {
        var end = 0;
        while (end < text.Length && (uint)((text[end] | 0x20) - 'a') < 26)
            end++;
        return end;
    }
}
