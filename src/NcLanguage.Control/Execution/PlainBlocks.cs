using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Control.Execution;

/// <summary>The words of those blocks of a chunk that could be plain moves, kept so that a text which is run again need not be read again: what a change far above alters in a
/// large program is not its text. Immutable.</summary>
public sealed class PlainBlocks
{
    readonly ulong[] _lines;

    /// <param name="lines">For each line what it is, and behind all of them the numbers of the words: one array, for a large text has thousands of chunks.</param>
    /// <param name="count">Lines of the chunk.</param>
    /// <param name="longestLine">No line whose words are known has more bytes.</param>
    PlainBlocks(ulong[] lines, int count, int longestLine) => (_lines, Count, LongestLine) = (lines, count, longestLine);

    /// <summary>Lines of the chunk.</summary>
    internal int Count { get; }

    /// <summary>No line whose words are known has more bytes.</summary>
    internal int LongestLine { get; }

    /// <summary>Whether the words of the first block from a line of the chunk on are known.</summary>
    internal bool IsKnownFrom(int line)
    {
        while (line < Count && IsBlank(line))
            line++;
        return line < Count && this[line].AreKnown;
    }

    /// <summary>Whether a line of the chunk (0-based) holds no block.</summary>
    public bool IsBlank(int line) => _lines[line] == PlainWords.NoBlock;

    /// <summary>The words of the block on a line of the chunk (0-based).</summary>
    public PlainWords this[int line]
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => new(_lines[line], _lines.AsSpan(Count));
    }

    /// <summary>Reads one chunk after the other. Not shared between threads.</summary>
    public sealed class Reader
    {
        readonly BlockWords _words = new();
        readonly List<ulong> _lines = [];

        /// <summary>The words of some blocks; null where none of them could be a plain move.</summary>
        public PlainBlocks? Read(BlockList blocks)
        {
            ArgumentNullException.ThrowIfNull(blocks);
            CollectionsMarshal.SetCount(_lines, blocks.Count);
            var longest = 0;
            for (var line = 0; line < blocks.Count; line++)
            {
                var block = blocks[line];
                _words.Clear();
                if (block.Tokens.Length == 0)
                    _lines[line] = PlainWords.NoBlock;
                else if (!_words.TryReadPlain(block) || block.Line.StartsWith(BlockLexer.ByteOrderMark))
                    _lines[line] = PlainWords.AnyBlock;
                else
                {
                    _lines[line] = PlainWords.Write(block, _lines, blocks.Count);
                    longest = Math.Max(longest, block.Line.Length);
                }
            }
            return longest == 0 ? null : new PlainBlocks([.. _lines], blocks.Count, longest);
        }
    }
}
