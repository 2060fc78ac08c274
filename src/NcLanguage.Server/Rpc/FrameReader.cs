using System.Buffers;
using System.IO.Pipelines;

namespace NcLanguage.Server.Rpc;

/// <summary>One message as it came: its content, or why that was passed over unread.</summary>
readonly record struct Frame(byte[] Content, string? Fault = null);

/// <summary>Cuts what comes from the client into messages (LSP 3.17, "Base Protocol").</summary>
sealed class FrameReader(PipeReader input, Backlog backlog)
{
    /// <summary>A longer message is passed over: 256 MB, ten times a program of a million blocks.</summary>
    public const int LongestMessage = 256 * 1024 * 1024;

    long _toSkip;

    /// <summary>Waits for the next message; null where the stream has ended. One that is passed over is told before it has come.</summary>
    /// <exception cref="InvalidDataException">A header is none, or the stream ended within a message: nobody can tell where the next one begins.</exception>
    public async ValueTask<Frame?> ReadAsync(CancellationToken cancellationToken)
    {
        await SkipAsync(cancellationToken).ConfigureAwait(false);
        if (await HeaderAsync(cancellationToken).ConfigureAwait(false) is not { } header)
            return null;
        await backlog.RoomToReadAsync(header.ContentLength, cancellationToken).ConfigureAwait(false);
        var fault = header switch
        {
            { ContentLength: 0 } => "The message is empty.",
            { ContentLength: > LongestMessage } => $"A message of {header.ContentLength / 1024 / 1024} MB was not read; the longest that is has {LongestMessage / 1024 / 1024} MB.",
            { IsUtf8: false } => "The message is not in utf-8.",
            _ => null,
        };
        if (fault is not null)
        {
            _toSkip = header.ContentLength;
            return new Frame([], fault);
        }
        var content = GC.AllocateUninitializedArray<byte>((int)header.ContentLength);
        for (var filled = 0; filled < content.Length;)
            filled += await TakeAsync(content.Length - filled, bytes => bytes.CopyTo(content.AsSpan(filled)), cancellationToken).ConfigureAwait(false);
        return new Frame(content);
    }

    async ValueTask<FrameHeader?> HeaderAsync(CancellationToken cancellationToken)
    {
        while (true)
        {
            var read = await input.ReadAsync(cancellationToken).ConfigureAwait(false);
            var bytes = read.Buffer;
            if (FrameHeader.Read(bytes) is { } header)
            {
                input.AdvanceTo(bytes.GetPosition(header.Size));
                return header;
            }
            var isEmpty = bytes.IsEmpty;
            input.AdvanceTo(bytes.Start, bytes.End);
            if (read.IsCompleted)
                return isEmpty ? null : throw new InvalidDataException("the stream ended within a header");
        }
    }

    async ValueTask SkipAsync(CancellationToken cancellationToken)
    {
        while (_toSkip > 0)
            _toSkip -= await TakeAsync(_toSkip, _ => { }, cancellationToken).ConfigureAwait(false);
    }

    /// <summary>Takes what has come of these bytes, and gives how many that were.</summary>
    async ValueTask<int> TakeAsync(long most, Action<ReadOnlySequence<byte>> take, CancellationToken cancellationToken)
    {
        var read = await input.ReadAsync(cancellationToken).ConfigureAwait(false);
        var bytes = read.Buffer.Slice(0, Math.Min(most, read.Buffer.Length));
        var count = (int)bytes.Length;
        take(bytes);
        input.AdvanceTo(bytes.End);
        return count > 0 || !read.IsCompleted ? count : throw new InvalidDataException("the stream ended within a message");
    }
}
