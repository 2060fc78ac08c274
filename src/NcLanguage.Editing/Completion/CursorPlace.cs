using System.Text;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing;

/// <summary>What may stand at the cursor.</summary>
enum PlaceKind
{
    /// <summary>Nothing that could be offered: in a comment, in a number, behind a bracket.</summary>
    Nothing,

    /// <summary>A new word.</summary>
    Blank,

    /// <summary>An address letter, perhaps with the beginning of its number.</summary>
    Word,

    /// <summary>Two letters or more: the beginning of a statement.</summary>
    Letters,

    /// <summary>#, perhaps with the beginning of its number or name.</summary>
    Variable,

    /// <summary>A value within an expression, perhaps the first letters of a function.</summary>
    Operand,

    /// <summary>An operator within an expression, perhaps its first letters.</summary>
    Operator,

    /// <summary>The name of a rule in a comment that silences it.</summary>
    RuleName,

    /// <summary>The block number that a jump leads to.</summary>
    BlockNumber,
}

/// <summary>What a statement before the cursor leaves to say.</summary>
enum Behind { Block, NumberO, Keyword, If, While }

/// <summary>Where in a block the cursor stands. Columns are bytes of the line.</summary>
/// <param name="Start">Where what was typed begins.</param>
/// <param name="End">Where it ends: the cursor, or the end of the letters and digits that go on behind it.</param>
/// <param name="Letter">The address letter of a word, upper case.</param>
/// <param name="Typed">What stands between <paramref name="Start"/> and the cursor, upper case; of a word without its letter.</param>
/// <param name="GoesOn">Whether letters or digits go on behind the cursor.</param>
readonly record struct CursorPlace(PlaceKind Kind, int Start, int End, char Letter, string Typed, bool GoesOn, Behind Behind)
{
    /// <summary>Whether the variable at the cursor is one that a value is put into.</summary>
    public bool IsSetting { get; init; }

    static CursorPlace None => default;

    /// <summary>The place at a byte column of a block.</summary>
    public static CursorPlace Of(in Block block, int column)
    {
        var line = block.Line;
        if (column < 0 || column > Math.Min(line.Length, BlockLexer.LongestRead) || (column < line.Length && (line[column] & 0xC0) == 0x80))
            return None;
        var from = line.StartsWith(BlockLexer.ByteOrderMark) ? BlockLexer.ByteOrderMark.Length : 0;
        foreach (ref readonly var token in block.Tokens)
        {
            if (!token.IsComment)
                continue;
            if (token.Start < column && (column < token.End || token.Kind != TokenKind.Comment))
                return AllowPlace.Of(line, token, column);
            if (token.End <= column)
                from = token.End;
        }
        return column < from ? None : ExpressionPlace.Of(line, from, column) ?? OfWords(block, from, column);
    }

    /// <summary>Whether a variable behind this is the number of a word: a letter or its sign stands before it, and not the THEN of a condition.</summary>
    static bool BelongsToWord(ReadOnlySpan<byte> before)
    {
        before = before.TrimEnd(" \t+-"u8);
        return before.Length > 0 && IsLetter(before[^1]) && !(before.Length >= 4 && Ascii.EqualsIgnoreCase(before[^4..], "THEN"u8));
    }

    static CursorPlace OfWords(in Block block, int from, int column)
    {
        var line = block.Line;
        var number = column;
        while (number > from && (IsDigit(line[number - 1]) || line[number - 1] == '.'))
            number--;
        if (number > from && line[number - 1] is (byte)'+' or (byte)'-')
            number--;
        if (number > from && line[number - 1] == '#')
            return Make(PlaceKind.Variable, block, number - 1, column) with { IsSetting = !BelongsToWord(line[from..(number - 1)]) };
        var letters = number;
        while (letters > from && IsLetter(line[letters - 1]))
            letters--;
        var hasNumber = number < column;
        if (letters == number)
            return BehindJump(line, from, number) ? Make(PlaceKind.BlockNumber, block, number, column)
                : !hasNumber && IsFree(line, from, column) ? Make(PlaceKind.Blank, block, column, column)
                : None;
        if (number - letters > 1 && !hasNumber)
            return Make(PlaceKind.Letters, block, letters, column);
        if (IsGoto(line[letters..number]))
            return Make(PlaceKind.BlockNumber, block, number, column);
        return Make(PlaceKind.Word, block, number - 1, column) with
        {
            Letter = char.ToUpperInvariant((char)line[number - 1]), Typed = Upper(line[number..column]),
        };
    }

    /// <summary>A place of this kind; what goes on behind the cursor belongs to it.</summary>
    public static CursorPlace Make(PlaceKind kind, ReadOnlySpan<byte> line, int start, int column)
    {
        var end = column;
        if (kind is not (PlaceKind.Blank or PlaceKind.RuleName))
            while (end < line.Length && (IsDigit(line[end]) || line[end] == '.' || (kind is PlaceKind.Letters or PlaceKind.Operand or PlaceKind.Operator && IsLetter(line[end]))))
                end++;
        return new CursorPlace(kind, start, end, '\0', Upper(line[start..column]), end > column, Behind.Block);
    }

    static CursorPlace Make(PlaceKind kind, in Block block, int start, int column) =>
        Make(kind, block.Line, start, column) with { Behind = BehindOf(block, start) };

    /// <summary>What the token just before a column leaves to say.</summary>
    static Behind BehindOf(in Block block, int column)
    {
        var (behind, hasO) = (Behind.Block, false);
        foreach (ref readonly var token in block.Tokens)
        {
            if (token.End > column)
                break;
            hasO |= token.IsWord('O');
            behind = token switch
            {
                { Kind: TokenKind.Word, Letter: (byte)'O' } => Behind.NumberO,
                { Kind: TokenKind.Statement, Statement: StatementKind.If, IsExpression: true, IsMalformed: false } when !hasO => Behind.If,
                { Kind: TokenKind.Statement, Statement: StatementKind.While, IsExpression: true, IsMalformed: false } when !hasO => Behind.While,
                { Kind: TokenKind.Statement, Statement: StatementKind.If or StatementKind.ElseIf or StatementKind.While or StatementKind.Repeat, IsExpression: false } => Behind.Keyword,
                _ => Behind.Block,
            };
        }
        return behind;
    }

    static bool BehindJump(ReadOnlySpan<byte> line, int from, int at)
    {
        var blank = at;
        while (blank > from && IsBlank(line[blank - 1]))
            blank--;
        var letters = blank;
        while (letters > from && IsLetter(line[letters - 1]))
            letters--;
        return IsGoto(line[letters..blank]);
    }

    static bool IsGoto(ReadOnlySpan<byte> letters) => Ascii.EqualsIgnoreCase(letters, "GOTO"u8);

    // At the line's beginning or behind a blank, and not right before a word.
    static bool IsFree(ReadOnlySpan<byte> line, int from, int column) =>
        (column == from ? from == 0 || line[0] == 0xEF : IsBlank(line[column - 1]) || (line[column - 1] == '/' && column - 1 == from))
        && (column == line.Length || IsBlank(line[column]) || line[column] is (byte)'(' or (byte)';');

    public static string Upper(ReadOnlySpan<byte> text) => Encoding.UTF8.GetString(text).ToUpperInvariant();

    public static bool IsDigit(byte c) => (uint)(c - '0') <= 9;

    public static bool IsLetter(byte c) => (uint)((c | 0x20) - 'a') < 26;

    public static bool IsBlank(byte c) => c is (byte)' ' or (byte)'\t';
}
