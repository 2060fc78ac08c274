using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;

namespace NcLanguage.Server.Tests.Torture;

/// <summary>For tests that weigh the memory of the whole process: nothing runs beside them.</summary>
[CollectionDefinition(nameof(Alone), DisableParallelization = true)]
public sealed class Alone;

/// <summary>Thousands of requests at once, and clients that do not read what they asked for.</summary>
[Collection(nameof(Alone))]
public sealed class FloodTests
{
    const string Uri = "file:///job/part.nc";
    const int Many = 10_000;
    const long WideMargin = 64 * 1024 * 1024;

    [Fact]
    public async Task Ten_thousand_requests_at_once_are_answered_once_each()
    {
        await using var client = await TestClient.InitializedAsync();
        await client.OpenAsync(Uri, "G0 X1");
        await client.SendRawAsync(Requests(1_000_000, Many, "textDocument/documentSymbol"));
        await HeaderTests.Eventually(() => client.AnswerCount >= Many + 1);
        Assert.Equal(Enumerable.Range(1_000_000, Many), AnsweredIn(client).Where(id => id >= 1_000_000).Order());
        Assert.All(client.Log.Where(message => IsAnswer(message, 1_000_000)), message => Assert.NotNull(message["result"]));
        await AssertText(client, 1, 1);
    }

    [Fact]
    public async Task Ten_thousand_cancelled_requests_leave_nothing_behind()
    {
        var files = new TestFiles();
        await using var client = await TestClient.InitializedAsync(files: files);
        await client.OpenAsync("file:///job/warm.nc", "G0 X1");
        await client.DiagnosticsAsync("file:///job/warm.nc", 1);
        files.Hold();
        await client.OpenAsync(Uri, "G0 X1");
        var before = GC.GetTotalMemory(forceFullCollection: true);
        await client.SendRawAsync(Requests(1_000_000, Many, "textDocument/hover"));
        var cancels = new StringBuilder();
        for (var id = 1_000_000; id < 1_000_000 + Many; id++)
            Frame(cancels, $$"""{"jsonrpc":"2.0","method":"$/cancelRequest","params":{"id":{{id}} } }""");
        await client.SendRawAsync(Encoding.ASCII.GetBytes(cancels.ToString()));
        await HeaderTests.Eventually(() => client.AnswerCount >= Many + 1);
        files.Release();
        Assert.Equal(Enumerable.Range(1_000_000, Many), AnsweredIn(client).Where(id => id >= 1_000_000).Order());
        Assert.All(client.Log.Where(message => IsAnswer(message, 1_000_000)), message => Assert.Equal(-32800, (int)message["error"]!["code"]!));
        await AssertText(client, 1, 1);
        Assert.InRange(GC.GetTotalMemory(forceFullCollection: true) - before, long.MinValue, WideMargin);
    }

    [Fact]
    public async Task A_client_that_does_not_read_gets_the_newest_findings_when_it_does_and_costs_no_memory()
    {
        await using var client = await TestClient.InitializedAsync();
        // Each version has more than 300 findings: a thousand versions would be hundreds of MB.
        var faulty = string.Concat(Enumerable.Range(1, 300).Select(i => $"G1 X{i}. Q\n"));
        await client.OpenAsync(Uri, faulty);
        var first = await client.DiagnosticsAsync(Uri, 1);
        Assert.InRange(first["diagnostics"]!.AsArray().Count, 300, int.MaxValue);
        client.StopReading();
        await client.NotifyAsync("$/setTrace", """{"value":"verbose"}""");
        var before = GC.GetTotalMemory(forceFullCollection: true);
        const int Last = 1500;
        for (var version = 2; version <= Last; version++)
        {
            await client.ChangeAsync(Uri, version, TestClient.Insert(0, 0, "\n"));
            await Task.Delay(1);
        }
        Assert.InRange(GC.GetTotalMemory(forceFullCollection: true) - before, long.MinValue, WideMargin);
        client.GoOnReading();
        await client.DiagnosticsAsync(Uri, Last);
        // Those that had gone out when it stopped reading, and the newest.
        Assert.InRange(client.Log.Count(message => (string?)message["method"] == "textDocument/publishDiagnostics"), 2, 50);
        Assert.InRange(client.Log.Count(message => (string?)message["method"] == "$/logTrace"), 1, Rpc.Outbox.MostWaiting + 500);
        await AssertText(client, Last, 300 + Last);
    }

    [Fact]
    public async Task A_client_that_asks_without_reading_is_answered_in_full_once_it_reads()
    {
        await using var client = await TestClient.InitializedAsync();
        await client.OpenAsync(Uri, "G0 X1");
        client.StopReading();
        await client.SendRawAsync(Requests(1_000_000, Many, "textDocument/documentSymbol")).WaitAsync(TimeSpan.FromSeconds(60));
        await client.ChangeAsync(Uri, 2, TestClient.Insert(0, 0, "\n"));
        await Task.Delay(100);
        client.GoOnReading();
        await HeaderTests.Eventually(() => client.AnswerCount >= Many + 1);
        Assert.Equal(Enumerable.Range(1_000_000, Many), AnsweredIn(client).Where(id => id >= 1_000_000).Order());
        await client.DiagnosticsAsync(Uri, 2);
        await AssertText(client, 2, 2);
    }

    [Theory]
    [InlineData("textDocument/documentSymbol")]
    [InlineData("no/such/method")]
    public async Task A_client_that_sends_without_end_and_reads_nothing_is_not_read_either(string method)
    {
        await using var client = await TestClient.InitializedAsync();
        await client.OpenAsync(Uri, "G0 X1");
        client.StopReading();
        await client.SendRawAsync(Requests(1_000_000, Many, method)).WaitAsync(TimeSpan.FromSeconds(60));
        // Messages of 1 MB: some 40 are taken beside the many small ones, then no more.
        var filling = new string(' ', 1024 * 1024);
        var sent = 0;
        var sending = Task.CompletedTask;
        for (; sent < 200; sent++)
        {
            sending = client.SendRawAsync(Requests(2_000_000 + sent, 1, method, filling));
            // Those for which there is room are taken, however long that takes on a machine under load.
            if (await Task.WhenAny(sending, Task.Delay(sent < 30 ? 60_000 : 1500)) != sending)
                break;
        }
        Assert.InRange(sent, 30, 100);
        client.GoOnReading();
        await sending.WaitAsync(TimeSpan.FromSeconds(60));
        await HeaderTests.Eventually(() => client.AnswerCount >= Many + sent + 2);
        await AssertText(client, 1, 1);
    }

    [Fact]
    public async Task A_client_that_does_not_read_may_still_leave()
    {
        await using var client = await TestClient.InitializedAsync();
        await client.OpenAsync(Uri, "G0 X1");
        client.StopReading();
        await client.SendRawAsync(Requests(1_000_000, Many, "textDocument/documentSymbol"));
        await client.SendAsync("""{"jsonrpc":"2.0","id":"last","method":"shutdown"}""");
        await client.NotifyAsync("exit", null);
        Assert.Equal(0, await client.ExitCode.WaitAsync(TimeSpan.FromSeconds(60)));
    }

    [Fact]
    public async Task A_client_that_vanishes_with_answers_unread_ends_the_session_with_1()
    {
        var client = await TestClient.InitializedAsync();
        await client.OpenAsync(Uri, "G0 X1");
        client.StopReading();
        await client.SendRawAsync(Requests(1_000_000, Many, "textDocument/documentSymbol"));
        client.HangUp();
        Assert.Equal(1, await client.ExitCode.WaitAsync(TimeSpan.FromSeconds(60)));
    }

    [Fact]
    public async Task A_message_beyond_the_greatest_length_is_passed_over_unread_with_one_line()
    {
        await using var client = await TestClient.InitializedAsync();
        await client.OpenAsync("file:///part.nc", "G0 X1");
        var before = GC.GetTotalMemory(forceFullCollection: true);
        const int Blocks = 257;
        var block = new byte[1024 * 1024];
        await client.SendRawAsync(Encoding.ASCII.GetBytes($"Content-Length: {(long)Blocks * block.Length}\r\n\r\n"));
        // Told before any of it has come.
        await HeaderTests.Eventually(() => HeaderTests.CodeOf(client, null) == -32600);
        for (var i = 0; i < Blocks; i++)
            await client.SendRawAsync(block);
        Assert.Equal(-32601, await client.ErrorOfAsync("no/such/method", "{}"));
        Assert.True(GC.GetTotalMemory(forceFullCollection: true) - before < 64 * 1024 * 1024);
        var log = client.ErrorLog.ToString();
        Assert.Contains("A message of 257 MB was not read; the longest that is has 256 MB.", log, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", log, StringComparison.Ordinal);
        Assert.NotNull(await client.RequestAsync("textDocument/documentSymbol", """{"textDocument":{"uri":"file:///part.nc"}}"""));
    }

    static byte[] Requests(int firstId, int count, string method, string filling = "")
    {
        var text = new StringBuilder();
        for (var id = firstId; id < firstId + count; id++)
            Frame(text, $$"""{"jsonrpc":"2.0","id":{{id}},"method":"{{method}}","params":{"textDocument":{"uri":"{{Uri}}"},"position":{"line":0,"character":1}{{filling}} } }""");
        return Encoding.ASCII.GetBytes(text.ToString());
    }

    static void Frame(StringBuilder text, string message) =>
        text.Append(CultureInfo.InvariantCulture, $"Content-Length: {message.Length}\r\n\r\n").Append(message);

    static IEnumerable<int> AnsweredIn(TestClient client) =>
        client.Log.Where(message => IsAnswer(message, 0)).Select(message => (int)message["id"]!);

    static bool IsAnswer(JsonNode message, int least) =>
        message["method"] is null && message["id"] is JsonValue value && value.TryGetValue(out int id) && id >= least;

    /// <summary>The document stands as it was left: so many lines, and its last block still there.</summary>
    static async Task AssertText(TestClient client, int version, int lines)
    {
        await client.ChangeAsync(Uri, version + 1, TestClient.Insert(int.MaxValue, 0, "\n(nc-allow feed-missing)"));
        var published = await client.DiagnosticsAsync(Uri, version + 1);
        var finding = published["diagnostics"]!.AsArray().Single(d => (string?)d!["data"] == "allow-without-reason")!;
        Assert.Equal(lines, (int)finding["range"]!["start"]!["line"]!);
    }
}
