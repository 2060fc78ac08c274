using System.Runtime.CompilerServices;
using System.Text;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Syntax.Lexing;

/// <summary>The blocks of a chunk, one a line, as flat arrays: nothing is allocated per block.</summary>
public sealed class BlockList
{
    readonly Chunk _chunk;
    readonly Token[] _tokens;
    readonly BlockEnd[] _ends;
    readonly BlockBuffer? _reader;

    internal BlockList(Chunk chunk, Token[] tokens, BlockEnd[] ends)
    {
        _chunk = chunk;
        _tokens = tokens;
        _ends = ends;
    }

    /// <summary>Those of a chunk whose lines are read when their tokens are asked for.</summary>
    internal BlockList(Chunk chunk, BlockBuffer reader)
        : this(chunk, [], []) => _reader = reader;

    public int Count => _chunk.LineCount;

    /// <summary>The block on a line of the chunk (0-based).</summary>
    public Block this[int line]
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get
        {
            if (_reader is not null)
                return new(this, line);
            var (tokens, bytes) = _ends[line];
            var first = line == 0 ? 0 : _ends[line - 1].Tokens;
            return new(_chunk.Bytes[_chunk.LineStart(line)..bytes], _tokens.AsSpan(first, tokens - first));
        }
    }

    internal ReadOnlySpan<byte> LineOf(int line) => _chunk.Line(line);

    internal ReadOnlySpan<Token> TokensOf(int line) => _reader!.TokensOf(_chunk.Line(line), line);
}

/// <summary>Where a block ends.</summary>
/// <param name="Tokens">How many tokens its chunk has up to there.</param>
/// <param name="Bytes">How many bytes, its line's terminator not counted.</param>
readonly record struct BlockEnd(int Tokens, int Bytes);

/// <summary>A block: the bytes of its line and its tokens in the order written. What lies between tokens is blank.</summary>
public readonly ref struct Block
{
    readonly ReadOnlySpan<byte> _line;
    readonly ReadOnlySpan<Token> _tokens;
    readonly BlockList? _list;
    readonly int _number;

    public Block(ReadOnlySpan<byte> line, ReadOnlySpan<Token> tokens)
    {
        _line = line;
        _tokens = tokens;
    }

    /// <param name="list">One whose lines are read when their tokens are asked for.</param>
    /// <param name="number">Of the line in its chunk (0-based).</param>
    internal Block(BlockList list, int number) => (_list, _number) = (list, number);

    /// <summary>The line without its terminator.</summary>
    public ReadOnlySpan<byte> Line => _list is null ? _line : _list.LineOf(_number);

    public ReadOnlySpan<Token> Tokens => _list is null ? _tokens : _list.TokensOf(_number);

    /// <summary>Whether it begins with /, so that a control passes over it when told to.</summary>
    public bool IsSkippable => Tokens.Length > 0 && Tokens[0].Kind == TokenKind.Skip;

    /// <summary>The bytes of a token.</summary>
    public ReadOnlySpan<byte> TextOf(in Token token) => Line[token.Start..token.End];

    /// <summary>A token as it is written; bytes that are no UTF-8 become U+FFFD.</summary>
    public string StringOf(in Token token) => Encoding.UTF8.GetString(TextOf(token));

    /// <summary>The index of the first word with this address letter (upper case), or −1.</summary>
    public int IndexOf(char letter)
    {
        for (var i = 0; i < Tokens.Length; i++)
            if (Tokens[i].IsWord(letter))
                return i;
        return -1;
    }

    /// <summary>The index of the block's own number, or −1. An N behind a statement is none: GOTO N10 was meant to lead there.</summary>
    public int NumberIndex
    {
        get
        {
            for (var i = 0; i < Tokens.Length && Tokens[i].Kind != TokenKind.Statement; i++)
                if (Tokens[i].IsWord('N'))
                    return i;
            return -1;
        }
    }

    /// <summary>The index of the first O word, or : in its place, or −1: the number of a program or, beside a statement, of a structure.</summary>
    public int ProgramNumberIndex
    {
        get
        {
            for (var i = 0; i < Tokens.Length; i++)
                if (Tokens[i].IsWord('O') || Tokens[i].IsWord(':'))
                    return i;
            return -1;
        }
    }

    /// <summary>Whether it bears the number of a program.</summary>
    public bool BeginsProgram => ProgramNumberIndex >= 0 && !HasStatement;

    /// <summary>Whether a statement stands in it: an O word beside it is then no program's number.</summary>
    public bool HasStatement
    {
        get
        {
            foreach (ref readonly var token in Tokens)
                if (token.Kind == TokenKind.Statement)
                    return true;
            return false;
        }
    }

    /// <summary>The index of the token with which text for people begins that lacks its brackets, or −1: three letters or more in a row without a number, in a block that
    /// reckons nothing. What is odd before them belongs to it, the words before that do not.</summary>
    public int TextIndex
    {
        get
        {
            const int LettersOfText = 3;
            var (first, letters, isText) = (-1, 0, false);
            for (var i = 0; i < Tokens.Length; i++)
            {
                ref readonly var token = ref Tokens[i];
                if (token.IsExpression || token.Kind == TokenKind.Assignment)
                    return -1;
                letters = token.Kind != TokenKind.BareLetter ? 0 : letters > 0 && Tokens[i - 1].End == token.Start ? letters + 1 : 1;
                isText |= letters == LettersOfText;
                if (first < 0 && token.Kind is TokenKind.BareLetter or TokenKind.Statement or TokenKind.Unknown)
                    first = i;
            }
            return isText ? first : -1;
        }
    }

    /// <summary>Whether it holds anything but comments, marks, and the numbers of a program and of the block itself.</summary>
    public bool HasWords
    {
        get
        {
            foreach (ref readonly var token in Tokens)
                if (!token.IsComment && token.Kind is not (TokenKind.Percent or TokenKind.Skip) && !token.IsWord('O') && !token.IsWord(':') && !token.IsWord('N'))
                    return true;
            return false;
        }
    }
}
