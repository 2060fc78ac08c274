using System.Diagnostics;
using System.Text.Json.Nodes;

namespace NcLanguage.Benchmarks;

/// <summary>How long an editor waits: for the first answer, for the findings of a file just opened, for those after a key.</summary>
static class ServerLatency
{
    const int Starts = 20;
    const int Keys = 200;

    public static async Task RunAsync(string executable)
    {
        var starts = new List<double>();
        for (var i = 0; i < Starts; i++)
        {
            var clock = Stopwatch.StartNew();
            await using var server = new PipedServer(executable);
            await server.InitializeAsync();
            starts.Add(clock.Elapsed.TotalMilliseconds);
            await server.ExitAsync();
        }
        Print("spawn to initialize answer", starts);
        foreach (var blocks in new[] { 1_000, 10_000, 100_000 })
            await MeasureAsync(executable, blocks);
    }

    static async Task MeasureAsync(string executable, int blocks)
    {
        var folder = Directory.CreateTempSubdirectory("nc-bench");
        try
        {
            var path = SampleProgram.Write(blocks, folder.FullName, "part");
            var text = await File.ReadAllTextAsync(path);
            await using var server = new PipedServer(executable);
            await server.InitializeAsync();
            var uri = new Uri(path).AbsoluteUri;
            var clock = Stopwatch.StartNew();
            await server.NotifyAsync("textDocument/didOpen", new JsonObject
            {
                ["textDocument"] = new JsonObject { ["uri"] = uri, ["languageId"] = "nc", ["version"] = 1, ["text"] = text },
            });
            await server.DiagnosticsAsync(uri, 1);
            Console.WriteLine($"{blocks,7} blocks: open to diagnostics {clock.Elapsed.TotalMilliseconds:0.0} ms");
            var version = 1;
            foreach (var place in new[] { 0.01, 0.5, 0.99 })
            {
                var line = (int)(place * (blocks - 10));
                var times = new List<double>();
                for (var key = 0; key < Keys; key++)
                {
                    // A key struck and taken back in turn: a letter without a number, so that the findings differ.
                    var insert = key % 2 == 0;
                    clock.Restart();
                    await server.NotifyAsync("textDocument/didChange", Change(uri, ++version, line, insert));
                    await server.DiagnosticsAsync(uri, version);
                    times.Add(clock.Elapsed.TotalMilliseconds);
                }
                Print($"{blocks,7} blocks: keystroke at {place:0%} to diagnostics", times);
            }
            await server.ExitAsync();
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    static JsonObject Change(string uri, int version, int line, bool insert) => new()
    {
        ["textDocument"] = new JsonObject { ["uri"] = uri, ["version"] = version },
        ["contentChanges"] = new JsonArray(new JsonObject
        {
            ["range"] = new JsonObject
            {
                ["start"] = new JsonObject { ["line"] = line, ["character"] = 0 },
                ["end"] = new JsonObject { ["line"] = line, ["character"] = insert ? 0 : 2 },
            },
            ["text"] = insert ? "Q " : "",
        }),
    };

    static void Print(string what, List<double> times)
    {
        times.Sort();
        Console.WriteLine($"{what}: median {times[times.Count / 2]:0.00} ms, p95 {times[(int)(times.Count * 0.95)]:0.00} ms, max {times[^1]:0.00} ms");
    }
}
