using NcLanguage.Cli.Common;
using NcLanguage.Cli.Files;
using NcLanguage.Cli.Tests.Support;

namespace NcLanguage.Cli.Tests;

/// <summary>Files that somebody else writes to at the same time.</summary>
public sealed class TwoWriterTests : IDisposable
{
    readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public void What_was_saved_since_the_file_was_read_is_not_written_over()
    {
        var path = _scratch.Write("part.nc", "G0 X1\n");
        var (_, stamp) = FileBytes.Read(path);
        _scratch.Write("part.nc", "G0 X12\n");
        var refused = Assert.Throws<CannotRunException>(() => WrittenFile.Replace(path, "G0 X2\n"u8.ToArray(), stamp));
        Assert.Contains("changed by somebody else", refused.Message, StringComparison.Ordinal);
        Assert.Equal("G0 X12\n", File.ReadAllText(path));
        Assert.Single(Directory.GetFiles(_scratch.Folder));
    }

    [Fact]
    public void A_file_that_was_taken_away_does_not_come_back()
    {
        var path = _scratch.Write("part.nc", "G0 X1\n");
        var (_, stamp) = FileBytes.Read(path);
        File.Delete(path);
        Assert.Throws<CannotRunException>(() => WrittenFile.Replace(path, "G0 X2\n"u8.ToArray(), stamp));
        Assert.Empty(Directory.GetFiles(_scratch.Folder));
    }

    /// <summary>A reader never gets the beginning of one version with the end of another: each version is one letter all through.</summary>
    [Fact]
    public async Task What_is_read_stood_in_the_file_at_one_time()
    {
        var path = _scratch.Write("part.nc", new byte[] { (byte)'A' });
        using var stop = new CancellationTokenSource(TimeSpan.FromSeconds(2));
        var writer = Task.Run(() =>
        {
            for (var version = 0; !stop.IsCancellationRequested; version++)
            {
                var bytes = new byte[200_000 + version % 5 * 50_000];
                bytes.AsSpan().Fill((byte)('A' + version % 26));
                // In place, as editors do that do not rename.
                using (var file = new FileStream(path, FileMode.Create, FileAccess.Write, FileShare.ReadWrite, bufferSize: 0))
                {
                    // Emptied for so long that it looks as if nobody wrote to it.
                    Thread.Sleep(version % 4 == 1 ? 22 : 0);
                    for (var at = 0; at < bytes.Length; at += 50_000)
                        file.Write(bytes, at, 50_000);
                }
                // Now a pause in which the file can be read, now none to speak of.
                Thread.Sleep(version % 3 == 0 ? 60 : 5);
            }
        });
        var reads = 0;
        while (!stop.IsCancellationRequested)
        {
            try
            {
                var (bytes, _) = FileBytes.Read(path);
                Assert.False(bytes.AsSpan().ContainsAnyExcept(bytes.Length == 0 ? (byte)0 : bytes[0]));
                reads++;
            }
            catch (ProgramFailedException e)
            {
                Assert.Contains("is being written to", e.Message, StringComparison.Ordinal);
            }
        }
        await writer;
        Assert.NotEqual(0, reads);
    }
}
