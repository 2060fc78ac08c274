using System.Reflection;
using System.Text.Json.Nodes;
using NcLanguage.Server.Rpc;
using NcLanguage.Server.Scheduling;
using StreamJsonRpc;

namespace NcLanguage.Server.Tests;

/// <summary>Order, cancelling, superseding: a change is seen by all that came after it and by nothing before it.</summary>
public sealed class SchedulingTests
{
    const string Uri = "file:///job/part.nc";
    const string Symbols = """{"textDocument":{"uri":"file:///job/part.nc"}}""";

    [Fact]
    public void Every_method_of_the_contract_has_a_row_and_every_row_a_method()
    {
        string[] contract =
        [
            .. typeof(IServerMethods).GetMethods().Select(method => method.GetCustomAttribute<JsonRpcMethodAttribute>()!.Name!),
            // The library's own.
            Methods.CancelRequest,
        ];
        Assert.Equal(contract.Order(), MethodTable.Rows.Keys.Order());
    }

    [Fact]
    public void What_changes_documents_runs_in_order_and_what_reads_them_does_not()
    {
        foreach ((var method, var schedule) in MethodTable.Rows)
        {
            var reads = method.StartsWith("textDocument/", StringComparison.Ordinal) && !method.StartsWith("textDocument/did", StringComparison.Ordinal);
            if (reads)
                Assert.Equal(Schedule.Snapshot, schedule);
            if (method.Contains("/did", StringComparison.Ordinal))
                Assert.Equal(Schedule.InOrder, schedule);
        }
    }

    [Fact]
    public void No_method_is_both_answered_and_declared_unsupported() =>
        Assert.Empty(Unsupported.Reasons.Keys.Intersect(MethodTable.Rows.Keys));

    [Fact]
    public async Task It_is_settled_when_nothing_is_owed_or_the_time_is_up()
    {
        var backlog = new Backlog();
        var never = TimeSpan.FromHours(1);
        Assert.True(backlog.SettleAsync(never).IsCompleted);
        backlog.Came();
        backlog.Came();
        Task passed = backlog.SettleAsync(never), soon = backlog.SettleAsync(TimeSpan.FromMilliseconds(1));
        backlog.Answered();
        await soon.WaitAsync(TimeSpan.FromSeconds(10));
        Assert.False(passed.IsCompleted);
        backlog.Answered();
        await passed.WaitAsync(TimeSpan.FromSeconds(10));
        Assert.True(backlog.SettleAsync(never).IsCompleted);
    }

    [Fact]
    public async Task What_no_key_waits_for_lets_others_pass_but_is_owed()
    {
        var backlog = new Backlog();
        var never = TimeSpan.FromHours(1);
        backlog.Came();
        var passed = backlog.PassAsync(never);
        Assert.False(passed.IsCompleted);
        backlog.WorksPatiently(1);
        await passed.WaitAsync(TimeSpan.FromSeconds(10));
        Assert.True(backlog.PassAsync(never).IsCompleted);
        var settled = backlog.SettleAsync(never);
        // Its answer has to go out like every other.
        backlog.WorksPatiently(-1);
        Assert.False(backlog.PassAsync(never).IsCompleted);
        Assert.False(settled.IsCompleted);
        backlog.Answered();
        await settled.WaitAsync(TimeSpan.FromSeconds(10));
        Assert.True(backlog.PassAsync(never).IsCompleted);
    }

    [Fact]
    public async Task The_queue_waits_for_what_runs_in_order_and_only_starts_the_rest()
    {
        using var queue = new RequestQueue(new Backlog());
        List<string> log = [];
        var change = new TaskCompletionSource<int>();
        var read = new TaskCompletionSource<int>();
        Task first = queue.Enqueue(inOrder: false, () => Start("read 1", read.Task), default);
        Task second = queue.Enqueue(inOrder: true, () => Start("change", change.Task), default);
        Task third = queue.Enqueue(inOrder: false, () => Start("read 2", Task.FromResult(0)), default);
        await Task.Delay(50);
        Assert.Equal(["read 1", "change"], log);
        change.SetResult(0);
        await third.WaitAsync(TimeSpan.FromSeconds(10));
        Assert.Equal(["read 1", "change", "read 2"], log);
        Assert.False(first.IsCompleted);
        read.SetResult(0);
        await Task.WhenAll(first, second);

        async ValueTask<int> Start(string name, Task<int> until)
        {
            log.Add(name);
            return await until;
        }
    }

    [Fact]
    public async Task The_queue_survives_what_throws_and_never_starts_what_was_cancelled()
    {
        using var queue = new RequestQueue(new Backlog());
        using var cancelled = new CancellationTokenSource();
        var change = new TaskCompletionSource<int>();
        var failing = queue.Enqueue<int>(inOrder: true, () => throw new InvalidOperationException("broken"), default);
        var waiting = queue.Enqueue(inOrder: true, async () => await change.Task, default);
        var started = false;
        var dropped = queue.Enqueue(inOrder: true, () => { started = true; return ValueTask.FromResult(0); }, cancelled.Token);
        var last = queue.Enqueue(inOrder: true, () => ValueTask.FromResult(7), default);
        await cancelled.CancelAsync();
        change.SetResult(0);
        await Assert.ThrowsAsync<InvalidOperationException>(() => failing);
        await waiting;
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => dropped);
        Assert.Equal(7, await last);
        Assert.False(started);
    }

    [Fact]
    public async Task A_cancelled_request_is_answered_with_request_cancelled()
    {
        var files = new TestFiles();
        await using var client = await TestClient.InitializedAsync(files: files);
        files.Hold();
        await client.OpenAsync(Uri, "G0 X1");
        (var id, var answer) = client.BeginAsync("textDocument/documentSymbol", Symbols);
        await client.NotifyAsync("$/cancelRequest", $$"""{"id":{{id}}}""");
        Assert.Equal(-32800, (int)(await answer)["error"]!["code"]!);
        files.Release();
        Assert.NotNull(await client.RequestAsync("textDocument/documentSymbol", Symbols));
    }

    [Fact]
    public async Task A_read_overtaken_by_a_change_is_answered_with_content_modified()
    {
        var files = new TestFiles();
        await using var client = await TestClient.InitializedAsync(files: files);
        files.Hold();
        await client.OpenAsync(Uri, "G0 X1");
        (_, var before) = client.BeginAsync("textDocument/documentSymbol", Symbols);
        await client.ChangeAsync(Uri, 2, TestClient.Insert(0, 0, "G1 "));
        (_, var after) = client.BeginAsync("textDocument/documentSymbol", Symbols);
        Assert.Equal(-32801, (int)(await before)["error"]!["code"]!);
        Assert.False(after.IsCompleted);
        files.Release();
        Assert.NotNull((await after)["result"]);
    }

    [Fact]
    public async Task A_read_of_a_document_closed_meanwhile_is_answered_with_content_modified()
    {
        var files = new TestFiles();
        await using var client = await TestClient.InitializedAsync(files: files);
        files.Hold();
        await client.OpenAsync(Uri, "G0 X1");
        (_, var read) = client.BeginAsync("textDocument/documentSymbol", Symbols);
        await client.NotifyAsync("textDocument/didClose", Symbols);
        Assert.Equal(-32801, (int)(await read)["error"]!["code"]!);
        files.Release();
    }

    [Fact]
    public async Task A_slow_analysis_holds_up_neither_changes_nor_other_documents()
    {
        var files = new TestFiles();
        await using var client = await TestClient.InitializedAsync(files: files);
        await client.OpenAsync("file:///job/other.nc", "G0 X1");
        await client.DiagnosticsAsync("file:///job/other.nc", 1);
        files.Hold();
        await client.OpenAsync(Uri, "G0 X1");
        await client.ChangeAsync("file:///job/other.nc", 2, TestClient.Insert(0, 0, "(nc-allow feed-missing)"));
        var published = await client.DiagnosticsAsync("file:///job/other.nc", 2);
        Assert.Contains(published["diagnostics"]!.AsArray(), d => (string?)d!["data"] == "allow-without-reason");
        files.Release();
        await client.DiagnosticsAsync(Uri, 1);
    }

    [Fact]
    public async Task Findings_of_an_older_version_never_follow_those_of_a_newer_one()
    {
        await using var client = await TestClient.InitializedAsync();
        var big = string.Concat(Enumerable.Range(1, 3000).Select(i => $"N{i} G1 X{i}. Y0. F100.\n"));
        await client.OpenAsync(Uri, big);
        const int Last = 120;
        for (var version = 2; version <= Last; version++)
        {
            await client.ChangeAsync(Uri, version, TestClient.Insert(0, 0, "\n"));
            if (version % 7 == 0)
                await Task.Delay(5);
        }
        await client.DiagnosticsAsync(Uri, Last);
        await Task.Delay(100);
        int[] versions = [.. client.Log.Where(m => (string?)m["method"] == "textDocument/publishDiagnostics").Select(m => (int)m["params"]!["version"]!)];
        // A large program's findings may come in parts, where time goes by before all are known: those of one version may follow each other.
        Assert.Equal(versions.Order(), versions);
        Assert.Equal(Last, versions[^1]);
    }

    [Fact]
    public async Task Closing_takes_the_findings_away_and_none_come_after()
    {
        var files = new TestFiles();
        await using var client = await TestClient.InitializedAsync(files: files);
        files.Hold();
        await client.OpenAsync(Uri, "(nc-allow feed-missing)");
        await client.NotifyAsync("textDocument/didClose", Symbols);
        var cleared = await client.DiagnosticsAsync(Uri, null);
        Assert.Empty(cleared["diagnostics"]!.AsArray());
        files.Release();
        await Task.Delay(150);
        Assert.Single(client.Log, m => (string?)m["method"] == "textDocument/publishDiagnostics");
    }

    [Fact]
    public async Task Answers_owed_at_exit_are_still_given()
    {
        await using var client = await TestClient.InitializedAsync();
        await client.OpenAsync(Uri, "G0 X1");
        (_, var read) = client.BeginAsync("textDocument/documentSymbol", Symbols);
        (_, var shutdown) = client.BeginAsync("shutdown", null);
        await client.NotifyAsync("exit", null);
        Assert.NotNull((await read)["result"]);
        Assert.Null((await shutdown)["error"]);
        Assert.Equal(0, await client.ExitCode.WaitAsync(TimeSpan.FromSeconds(10)));
    }
}
