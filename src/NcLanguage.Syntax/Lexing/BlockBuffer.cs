using System.Buffers;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Syntax.Lexing;

/// <summary>Storage for the tokens of one chunk after the other: whoever goes through a whole text keeps one, so that the tokens of a large text never stand in
/// memory all at once. Not shared between threads.</summary>
public sealed class BlockBuffer
{
    Token[] _tokens;
    BlockEnd[] _ends;
    TokenPlace[] _places = [];
    int _count;

    public BlockBuffer()
        : this(new Token[1024], new BlockEnd[256])
    {
    }

    BlockBuffer(Token[] tokens, BlockEnd[] ends) => (_tokens, _ends) = (tokens, ends);

    internal ReadOnlySpan<Token> Tokens => _tokens.AsSpan(0, _count);

    /// <summary>The blocks of a chunk. They hold until the next call.</summary>
    public BlockList Read(Chunk chunk)
    {
        ArgumentNullException.ThrowIfNull(chunk);
        if (chunk.KnownBlocks is { } known)
            return known;
        BlockLexer.Lex(chunk, this);
        return new BlockList(chunk, _tokens, _ends);
    }

    /// <summary>The blocks of a chunk, of which each is read when its tokens are first asked for: for one of whose lines most need not be read. They hold until the next call.</summary>
    public BlockList ReadAsAsked(Chunk chunk)
    {
        ArgumentNullException.ThrowIfNull(chunk);
        if (chunk.KnownBlocks is { } known)
            return known;
        _count = 0;
        if (_places.Length < chunk.LineCount)
            _places = new TokenPlace[chunk.LineCount];
        _places.AsSpan(0, chunk.LineCount).Clear();
        return new BlockList(chunk, this);
    }

    /// <summary>The tokens of a line of the chunk that is read as asked.</summary>
    internal ReadOnlySpan<Token> TokensOf(ReadOnlySpan<byte> line, int number)
    {
        ref var place = ref _places[number];
        if (!place.IsRead)
        {
            var first = _count;
            BlockLexer.LexLine(line, this);
            place = new TokenPlace(first, _count - first, true);
        }
        return _tokens.AsSpan(place.First, place.Count);
    }

    readonly record struct TokenPlace(int First, int Count, bool IsRead);

    /// <summary>The blocks of a chunk with storage of their own.</summary>
    internal static BlockList Keep(Chunk chunk)
    {
        var buffer = new BlockBuffer(ArrayPool<Token>.Shared.Rent(1024), new BlockEnd[chunk.LineCount]);
        BlockLexer.Lex(chunk, buffer);
        var tokens = buffer.Tokens.ToArray();
        ArrayPool<Token>.Shared.Return(buffer._tokens);
        return new BlockList(chunk, tokens, buffer._ends);
    }

    /// <summary>The tokens of one line.</summary>
    internal static Token[] Keep(ReadOnlySpan<byte> line)
    {
        var buffer = new BlockBuffer(ArrayPool<Token>.Shared.Rent(64), []);
        BlockLexer.LexLine(line, buffer);
        var tokens = buffer.Tokens.ToArray();
        ArrayPool<Token>.Shared.Return(buffer._tokens);
        return tokens;
    }

    internal void Begin(int lines)
    {
        _count = 0;
        if (_ends.Length < lines)
            _ends = new BlockEnd[lines];
    }

    internal int Count => _count;

    /// <summary>Where the next token is to stand.</summary>
    internal ref Token Next
    {
        get
        {
            if (_count == _tokens.Length)
                Array.Resize(ref _tokens, 2 * _count);
            return ref _tokens[_count];
        }
    }

    /// <summary>Takes up what stands at <see cref="Next"/>.</summary>
    internal void TakeNext() => _count++;

    internal void Add(in Token token)
    {
        Next = token;
        TakeNext();
    }

    /// <summary>Notes that all tokens of a line have been added.</summary>
    /// <param name="bytes">Where in its chunk the line ends, without its terminator.</param>
    internal void EndLine(int line, int bytes) => _ends[line] = new BlockEnd(_count, bytes);
}
