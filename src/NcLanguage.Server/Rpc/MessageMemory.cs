using System.Buffers;

namespace NcLanguage.Server.Rpc;

/// <summary>The memory that messages are written into, each as one piece. The shared pool keeps what it has lent, so that one page of tens of megabytes would stay with the process
/// several times over: here what is as long as a page is made for it and collected behind it.</summary>
sealed class MessageMemory : MemoryPool<byte>
{
    /// <summary>Up to this length memory is lent again and again, bytes.</summary>
    const int Usual = 1 << 20;

    public override int MaxBufferSize => Array.MaxLength;

    public override IMemoryOwner<byte> Rent(int minBufferSize = -1) => minBufferSize <= Usual ? Shared.Rent(minBufferSize) : new Own(new byte[minBufferSize]);

    protected override void Dispose(bool disposing)
    {
    }

    sealed class Own(byte[] memory) : IMemoryOwner<byte>
    {
        public Memory<byte> Memory => memory;

        public void Dispose()
        {
        }
    }
}
