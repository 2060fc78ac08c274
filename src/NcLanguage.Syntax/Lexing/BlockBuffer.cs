using NcLanguage.Syntax.Text;

namespace NcLanguage.Syntax.Lexing;

/// <summary>Storage for the tokens of one chunk after the other: whoever goes through a whole text keeps one, so that the tokens of a large text never stand in
/// memory all at once. Not shared between threads.</summary>
public sealed class BlockBuffer
{
    Token[] _tokens = new Token[1024];
    int[] _ends = new int[256];
    int _count;

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

    /// <summary>The blocks of a chunk with storage of their own.</summary>
    internal static BlockList Keep(Chunk chunk)
    {
        var buffer = new BlockBuffer();
        BlockLexer.Lex(chunk, buffer);
        return new BlockList(chunk, buffer.Tokens.ToArray(), buffer._ends[..chunk.LineCount]);
    }

    internal void Begin(int lines)
    {
        _count = 0;
        if (_ends.Length < lines)
            _ends = new int[lines];
    }

    internal int Count => _count;

    internal void Add(in Token token)
    {
        if (_count == _tokens.Length)
            Array.Resize(ref _tokens, 2 * _count);
        _tokens[_count++] = token;
    }

    internal void EndLine(int line) => _ends[line] = _count;
}
