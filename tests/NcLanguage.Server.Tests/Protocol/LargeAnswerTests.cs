using System.Buffers;
using System.Runtime.CompilerServices;
using System.Text;
using System.Text.Json;
using NcLanguage.Server.Protocol;
using NcLanguage.Server.Rpc;

namespace NcLanguage.Server.Tests.Protocol;

/// <summary>An answer as long as a page is written so that nothing of its length stays. Outside reference: System.Text.Json reads back what was written (RFC 8259).</summary>
public sealed class LargeAnswerTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(8 * 1024)]
    [InlineData(8 * 1024 + 1)]
    [InlineData(100_003)]
    public void Long_texts_come_as_they_are(int length)
    {
        // A sign of two units falls on every place where two pieces meet.
        var text = new StringBuilder();
        while (text.Length < length)
            text.Append("😀<\"Ø深\u0001");
        var html = text.ToString();
        Assert.Equal(html, JsonDocument.Parse(Json(html).WrittenMemory).RootElement.GetProperty("html").GetString());
        Assert.Equal(html[..^(html.Length > 0 ? 1 : 0)] + "x", JsonDocument.Parse(Json(html[..^(html.Length > 0 ? 1 : 0)] + "x").WrittenMemory).RootElement.GetProperty("html").GetString());
    }

    [Fact]
    public void What_is_asked_for_at_once_does_not_grow_with_the_text()
    {
        Assert.Equal(Json(new string('<', 1 << 18)).MostAsked, Json(new string('<', 1 << 22)).MostAsked);
        Assert.InRange(Json(new string('<', 1 << 22)).MostAsked, 1, 1 << 18);
    }

    [Fact]
    public void Memory_of_a_long_message_is_collected_behind_it()
    {
        using var memory = new MessageMemory();
        var lent = Lend(memory, 1 << 24);
        GC.Collect();
        Assert.False(lent.IsAlive);
        using var next = memory.Rent(1 << 24);
        Assert.True(next.Memory.Length >= 1 << 24);
    }

    [Fact]
    public void Memory_of_a_short_message_is_at_least_as_long_as_asked()
    {
        using var memory = new MessageMemory();
        using var unsaid = memory.Rent();
        using var said = memory.Rent(5000);
        Assert.True(unsaid.Memory.Length > 0);
        Assert.True(said.Memory.Length >= 5000);
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    static WeakReference Lend(MessageMemory memory, int length)
    {
        using var lent = memory.Rent(length);
        Assert.True(System.Runtime.InteropServices.MemoryMarshal.TryGetArray<byte>(lent.Memory, out var array));
        return new WeakReference(array.Array);
    }

    static Target Json(string html)
    {
        var target = new Target();
        using var writer = new Utf8JsonWriter(target);
        JsonSerializer.Serialize(writer, new PageAnswer(html, "file:///part.nc"), ProtocolJson.Default.PageAnswer);
        writer.Flush();
        return target;
    }

    /// <summary>Takes what is written, and notes the most that was asked for at once.</summary>
    sealed class Target : IBufferWriter<byte>
    {
        readonly ArrayBufferWriter<byte> _held = new();

        public int MostAsked { get; private set; }

        public ReadOnlyMemory<byte> WrittenMemory => _held.WrittenMemory;

        public void Advance(int count) => _held.Advance(count);

        public Memory<byte> GetMemory(int sizeHint = 0)
        {
            MostAsked = Math.Max(MostAsked, sizeHint);
            // A writer that asks for nothing in particular gets little, so that it has to ask again.
            return _held.GetMemory(sizeHint == 0 ? 256 : sizeHint)[..Math.Max(sizeHint, 256)];
        }

        public Span<byte> GetSpan(int sizeHint = 0) => GetMemory(sizeHint).Span;
    }
}
