using System.Buffers;

namespace NcLanguage.Syntax.Text;

/// <summary>Makes a text of what comes piece by piece, in room for a few of its chunks: what is written is cut up while the processor has it at hand.</summary>
public sealed class SourceTextBuilder : IBufferWriter<byte>
{
    const int FirstRoom = 1 << 16;

    readonly List<Chunk> _chunks = [];
    byte[] _room = new byte[FirstRoom];
    int _filled;

    /// <summary>Room for what comes next; what is told by <see cref="Advance"/> is taken.</summary>
    public Span<byte> GetSpan(int sizeHint = 0) => GetMemory(sizeHint).Span;

    public Memory<byte> GetMemory(int sizeHint = 0)
    {
        var wanted = Math.Max(1, sizeHint);
        if (_room.Length - _filled < wanted)
            MakeRoom(wanted);
        return _room.AsMemory(_filled);
    }

    public void Advance(int count)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(count);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(count, _room.Length - _filled);
        _filled += count;
    }

    /// <summary>The text of all that was written. The builder is done with it.</summary>
    public SourceText Build()
    {
        SourceText.Split(_room.AsSpan(0, _filled).ToArray(), endsText: true, _chunks);
        return new SourceText([.. _chunks]);
    }

    void MakeRoom(int wanted)
    {
        var from = SourceText.CutOff(_room.AsSpan(0, _filled), _chunks);
        var left = _room.AsSpan(from, _filled - from);
        // A line may be longer than any room.
        var room = _room.Length - left.Length < Math.Max(wanted, _room.Length / 2) ? new byte[checked(Math.Max(2 * _room.Length, left.Length + wanted))] : _room;
        left.CopyTo(room);
        (_room, _filled) = (room, left.Length);
    }
}
