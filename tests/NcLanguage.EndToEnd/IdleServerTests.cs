using System.Globalization;
using NcLanguage.EndToEnd.Lsp;
using NcLanguage.EndToEnd.Support;

namespace NcLanguage.EndToEnd;

/// <summary>A server that nothing is asked of does nothing: what is counted is the processor's time, not that of the clock.</summary>
public sealed class IdleServerTests
{
    /// <summary>It has tidied up by then.</summary>
    static readonly TimeSpan Rest = TimeSpan.FromSeconds(5);

    static readonly TimeSpan Watched = TimeSpan.FromSeconds(5);

    /// <summary>Less than a percent. The client of this test does not watch files, so that the server looks at those in use itself.</summary>
    static readonly TimeSpan Nothing = TimeSpan.FromMilliseconds(40);

    [NativeFact]
    public async Task It_takes_no_processor_time()
    {
        using var folder = new ScratchFolder();
        var file = Path.Combine(folder.Path, "O0012.nc");
        await File.WriteAllTextAsync(Path.Combine(folder.Path, "O0012.setup.json"), """{ "units": "mm", "stock": { "min": [0, 0, -20], "max": [120, 80, 0] } }""");
        await using var session = await LspSession.StartWithAsync([await NativeExecutable.FileAsync(), "serve"], folder.Path, "utf-8");
        await session.OpenAsync(file, "G21 G90 G17 G54\nT1 M6\nS1800 M3\nG0 G43 H1 Z50\nG99 G81 X10 Y10 Z-4.5 R2 F180\n"
            + string.Concat(Enumerable.Range(0, 20_000).Select(i => string.Create(CultureInfo.InvariantCulture, $"X{10 + i % 100} Y{10 + i / 100 % 60}\n"))) + "G80\nM30\n");
        await session.FindingsAsync(file, 1);
        await Task.Delay(Rest);
        var before = session.Client.Process.TotalProcessorTime;
        await Task.Delay(Watched);
        session.Client.Process.Refresh();
        Assert.InRange(session.Client.Process.TotalProcessorTime - before, TimeSpan.Zero, Nothing);
    }
}
