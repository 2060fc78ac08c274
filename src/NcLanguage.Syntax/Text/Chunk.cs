using System.Runtime.CompilerServices;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Syntax.Text;

/// <summary>A run of whole lines of a program: immutable, shared between the versions of a text that hold the same
/// lines. Its blocks are lexed on demand, and kept for as long as memory is not wanted for something else.</summary>
/// <remarks>Every chunk but a text's last ends with a line terminator. The last holds one line more than it has
/// terminators: the one after the last terminator, which may be empty.</remarks>
public sealed class Chunk
{
    readonly byte[] _bytes;
    readonly int[] _lineStarts;
    WeakReference<BlockList>? _blocks;

    /// <param name="bytes">The chunk's alone: a text that kept them all in one place would hold on to every line that edits have replaced.</param>
    /// <param name="lineStarts">Where in them the lines begin.</param>
    /// <param name="isLast">Whether it ends its text.</param>
    internal Chunk(byte[] bytes, int[] lineStarts, bool isLast)
    {
        _bytes = bytes;
        IsLast = isLast;
        _lineStarts = lineStarts;
    }

    /// <summary>Bytes, terminators included.</summary>
    public int Length => _bytes.Length;

    /// <summary>Whether this chunk ends its text.</summary>
    public bool IsLast { get; }

    public int LineCount => _lineStarts.Length;

    /// <summary>All bytes of the chunk.</summary>
    public ReadOnlySpan<byte> Bytes => _bytes;

    /// <summary>Offset in the chunk of the first byte of a line (0-based).</summary>
    public int LineStart(int line) => _lineStarts[line];

    /// <summary>The line (0-based) that the byte at <paramref name="offset"/> belongs to.</summary>
    public int LineAt(int offset)
    {
        var index = Array.BinarySearch(_lineStarts, offset);
        return index >= 0 ? index : ~index - 1;
    }

    /// <summary>The bytes of a line (0-based) without its terminator.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public ReadOnlySpan<byte> Line(int line)
    {
        var start = _lineStarts[line];
        var end = line + 1 < _lineStarts.Length ? _lineStarts[line + 1] : Length;
        return LineBreaks.WithoutTerminator(Bytes[start..end]);
    }

    /// <summary>The blocks of the chunk, one a line.</summary>
    public BlockList Blocks
    {
        get
        {
            if (KnownBlocks is { } known)
                return known;
            var blocks = BlockBuffer.Keep(this);
            _blocks = new WeakReference<BlockList>(blocks);
            return blocks;
        }
    }

    /// <summary>The blocks where they have been asked for and are still there; null otherwise.</summary>
    internal BlockList? KnownBlocks => _blocks is { } kept && kept.TryGetTarget(out var blocks) ? blocks : null;
}
