using System.Buffers;
using System.Diagnostics.CodeAnalysis;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Analysis;

/// <summary>The cuts of a part in their order, in a third of the room: of each is held what the cut before it, or its own beginning, does not tell already. They are read
/// from the first on.</summary>
public sealed class CutLog
{
    /// <summary>The most bytes that a cut takes.</summary>
    const int Most = sizeof(ushort) + 6 * sizeof(double) + 3 * sizeof(int) + sizeof(float);

    readonly byte[] _bytes;

    CutLog(byte[] bytes, int length) => (_bytes, Length) = (bytes, length);

    public static CutLog Empty { get; } = new([], 0);

    /// <summary>How many cuts.</summary>
    public int Length { get; }

    /// <summary>One of the cuts; those before it are read on the way.</summary>
    public StockCut this[int index]
    {
        get
        {
            ArgumentOutOfRangeException.ThrowIfNegative(index);
            ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(index, Length);
            var cuts = GetEnumerator();
            for (var i = 0; i <= index; i++)
                cuts.MoveNext();
            return cuts.Current;
        }
    }

    /// <summary>Takes the cuts up.</summary>
    /// <param name="cuts">The cuts; those that are arcs are numbered from 0.</param>
    public static CutLog Of(ReadOnlySpan<StockCut> cuts)
    {
        if (cuts.IsEmpty)
            return Empty;
        var room = ArrayPool<byte>.Shared.Rent(cuts.Length * Most);
        var writer = new Writer(room);
        var before = StockCut.Before;
        foreach (ref readonly var cut in cuts)
        {
            writer.Add(cut, before);
            before = cut;
        }
        var log = new CutLog(room.AsSpan(0, writer.Length).ToArray(), cuts.Length);
        ArrayPool<byte>.Shared.Return(room);
        return log;
    }

    public Enumerator GetEnumerator() => new(_bytes);

    /// <summary>What is held of a cut; what is not told otherwise is as it is in the cut before.</summary>
    [Flags]
    enum Held : ushort
    {
        FromX = 1,
        FromY = 1 << 1,

        /// <summary>Neither where the cut before it ended nor where that began.</summary>
        FromZ = 1 << 2,

        /// <summary>Where the cut before it began.</summary>
        FromZAsBefore = 1 << 3,

        /// <summary>Otherwise than it begins.</summary>
        ToX = 1 << 4,
        ToY = 1 << 5,

        /// <summary>Neither where the cut before it ended nor where it begins.</summary>
        ToZ = 1 << 6,

        /// <summary>Where it begins.</summary>
        ToZLevel = 1 << 7,
        Tool = 1 << 8,

        /// <summary>Not the next line.</summary>
        Line = 1 << 9,
        Move = 1 << 10,
        Seconds = 1 << 11,
        IsArc = 1 << 12,
        IsFromBelow = 1 << 13,
    }

    ref struct Writer(Span<byte> room)
    {
        readonly Span<byte> _room = room;

        public int Length { get; private set; }

        public void Add(in StockCut cut, in StockCut before)
        {
            var head = Length;
            Length += sizeof(ushort);
            var held = (cut.Arc >= 0 ? Held.IsArc : 0) | (cut.IsFromBelow ? Held.IsFromBelow : 0);
            if (!AreSame(cut.From.X, before.To.X))
                Write(cut.From.X, Held.FromX, ref held);
            if (!AreSame(cut.From.Y, before.To.Y))
                Write(cut.From.Y, Held.FromY, ref held);
            if (AreSame(cut.From.Z, before.From.Z))
                held |= Held.FromZAsBefore;
            else if (!AreSame(cut.From.Z, before.To.Z))
                Write(cut.From.Z, Held.FromZ, ref held);
            if (!AreSame(cut.To.X, cut.From.X))
                Write(cut.To.X, Held.ToX, ref held);
            if (!AreSame(cut.To.Y, cut.From.Y))
                Write(cut.To.Y, Held.ToY, ref held);
            if (AreSame(cut.To.Z, cut.From.Z))
                held |= Held.ToZLevel;
            else if (!AreSame(cut.To.Z, before.To.Z))
                Write(cut.To.Z, Held.ToZ, ref held);
            if (cut.Tool != before.Tool)
                Write(cut.Tool, Held.Tool, ref held);
            if (cut.Line != before.Line + 1)
                Write(cut.Line, Held.Line, ref held);
            if (cut.Move != before.Move)
                Write(cut.Move, Held.Move, ref held);
            if (BitConverter.SingleToInt32Bits(cut.Seconds) != BitConverter.SingleToInt32Bits(before.Seconds))
                Write(cut.Seconds, Held.Seconds, ref held);
            MemoryMarshal.Write(_room[head..], held);
        }

        // Not a number is one place like another, and so is nought with its sign.
        static bool AreSame(double a, double b) => BitConverter.DoubleToInt64Bits(a) == BitConverter.DoubleToInt64Bits(b);

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        void Write<T>(T value, Held what, ref Held held)
            where T : unmanaged
        {
            MemoryMarshal.Write(_room[Length..], value);
            Length += Unsafe.SizeOf<T>();
            held |= what;
        }
    }

    /// <summary>Goes through the cuts.</summary>
    public ref struct Enumerator
    {
        ReadOnlySpan<byte> _rest;
        StockCut _cut = StockCut.Before;
        int _arcs;

        internal Enumerator(ReadOnlySpan<byte> bytes) => _rest = bytes;

        [UnscopedRef]
        public readonly ref readonly StockCut Current => ref _cut;

        public bool MoveNext()
        {
            if (_rest.IsEmpty)
                return false;
            var held = Read<Held>();
            var fromX = (held & Held.FromX) != 0 ? Read<double>() : _cut.To.X;
            var fromY = (held & Held.FromY) != 0 ? Read<double>() : _cut.To.Y;
            var fromZ = (held & Held.FromZ) != 0 ? Read<double>() : (held & Held.FromZAsBefore) != 0 ? _cut.From.Z : _cut.To.Z;
            var toX = (held & Held.ToX) != 0 ? Read<double>() : fromX;
            var toY = (held & Held.ToY) != 0 ? Read<double>() : fromY;
            var toZ = (held & Held.ToZ) != 0 ? Read<double>() : (held & Held.ToZLevel) != 0 ? fromZ : _cut.To.Z;
            var tool = (held & Held.Tool) != 0 ? Read<int>() : _cut.Tool;
            var line = (held & Held.Line) != 0 ? Read<int>() : _cut.Line + 1;
            var move = (held & Held.Move) != 0 ? Read<int>() : _cut.Move;
            var seconds = (held & Held.Seconds) != 0 ? Read<float>() : _cut.Seconds;
            var arc = (held & Held.IsArc) != 0 ? _arcs++ : -1;
            _cut.Become(new Point3(fromX, fromY, fromZ), new Point3(toX, toY, toZ), tool, line, move, arc, seconds, (held & Held.IsFromBelow) != 0);
            return true;
        }

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        T Read<T>()
            where T : unmanaged
        {
            var value = MemoryMarshal.Read<T>(_rest);
            _rest = _rest[Unsafe.SizeOf<T>()..];
            return value;
        }
    }
}
