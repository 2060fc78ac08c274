using System.Text.Json.Nodes;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Machine.Files;

namespace NcLanguage.Server.Tests.Torture;

/// <summary>A fault of the server's own answers the request it happened in (JSON-RPC 2.0, "Internal error" −32603), is logged once, and leaves all else as it was.</summary>
public sealed class FaultTests
{
    const string Uri = "file:///job/secret-part.nc";
    const string Document = """{"textDocument":{"uri":"file:///job/secret-part.nc"}}""";
    const string Program = "G21 G90 G17 (COMMENT OF MINE)\nG1 X1\nM30\n";

    [Fact]
    public async Task A_feature_that_throws_answers_with_an_internal_error_and_is_logged_once()
    {
        await using var client = await TestClient.InitializedAsync(pages: new BrokenPages());
        await client.OpenAsync(Uri, Program, version: 3);
        var before = await client.DiagnosticsAsync(Uri, 3);
        for (var time = 0; time < 3; time++)
            Assert.Equal(-32603, await client.ErrorOfAsync("nclanguage/motionView", Document));

        var logged = (string)(await client.NextAsync("window/logMessage"))["message"]!;
        Assert.Matches("^nclanguage/motionView failed at document [0-9a-f]{8}, version 3, by InvalidCastException.$", logged);
        Assert.Single(client.Log, message => (string?)message["method"] == "window/logMessage");
        var stderr = client.ErrorLog.ToString();
        Assert.Contains("System.InvalidCastException", stderr, StringComparison.Ordinal);
        Assert.Contains("   at NcLanguage.Server.Tests.Torture.FaultTests.BrokenPages.MotionView", stderr, StringComparison.Ordinal);
        foreach (var secret in new[] { "secret", "COMMENT", "quoted" })
            Assert.DoesNotContain(secret, stderr + logged, StringComparison.OrdinalIgnoreCase);

        await client.ChangeAsync(Uri, 4, TestClient.Insert(0, 0, "\n"));
        var after = await client.DiagnosticsAsync(Uri, 4);
        Assert.Equal(before["diagnostics"]!.AsArray().Select(d => (string?)d!["code"]), after["diagnostics"]!.AsArray().Select(d => (string?)d!["code"]));
        Assert.NotNull(await client.RequestAsync("textDocument/documentSymbol", Document));
    }

    [Fact]
    public async Task The_log_names_the_file_and_quotes_the_exception_where_the_settings_ask_for_it()
    {
        await using var client = await TestClient.InitializedAsync(more: ""","initializationOptions":{"logDetails":true}""", pages: new BrokenPages());
        await client.OpenAsync(Uri, Program);
        Assert.Equal(-32603, await client.ErrorOfAsync("nclanguage/motionView", Document));
        Assert.Equal($"nclanguage/motionView failed at {Uri}, version 1, by InvalidCastException: quoted (COMMENT OF MINE)", (string?)(await client.NextAsync("window/logMessage"))["message"]);
    }

    [Theory]
    [InlineData("false", "The pages of the reference could not be written, so findings carry no links: UnauthorizedAccessException")]
    [InlineData("true", "The pages of the reference could not be written, so findings carry no links: Access to '/home/secret' is denied.")]
    public async Task Where_the_pages_could_not_be_written_the_log_names_the_folder_only_if_asked(string details, string expected)
    {
        await using var client = await TestClient.InitializedAsync(
            """{"textDocument":{"publishDiagnostics":{"codeDescriptionSupport":true}}}""", $$"""
            ,"initializationOptions":{"logDetails":{{details}}}
            """,
            writeReference: () => throw new UnauthorizedAccessException("Access to '/home/secret' is denied."));
        await client.OpenAsync(Uri, Program);
        Assert.Equal(expected, (string?)(await client.NextAsync("window/logMessage"))["message"]);
    }

    [Fact]
    public async Task The_place_asked_for_is_in_the_log()
    {
        await using var client = await TestClient.InitializedAsync(
            """{"textDocument":{"codeAction":{"codeActionLiteralSupport":{"codeActionKind":{"valueSet":["quickfix"]}}}}}""", rules: new RuleSet([new BrokenFixRule()]));
        await client.OpenAsync(Uri, Program);
        Assert.Equal(-32603, await client.ErrorOfAsync(
            "textDocument/codeAction", """{"textDocument":{"uri":"file:///job/secret-part.nc"},"range":{"start":{"line":1,"character":2},"end":{"line":2,"character":0}},"context":{"diagnostics":[]}}"""));
        Assert.Matches(
            @"^textDocument/codeAction failed at document [0-9a-f]{8}, version 1, line 1 character 2 \(from 0\), by InvalidCastException.$",
            (string?)(await client.NextAsync("window/logMessage"))["message"]);
    }

    [Fact]
    public async Task A_rule_that_throws_is_told_among_the_findings_of_the_others_and_logged_once()
    {
        await using var client = await TestClient.InitializedAsync(rules: new RuleSet([new BrokenRule(), .. RuleList.All]));
        await using var sound = await TestClient.InitializedAsync();
        await client.OpenAsync(Uri, Program);
        await sound.OpenAsync(Uri, Program);
        var found = (await client.DiagnosticsAsync(Uri, 1))["diagnostics"]!.AsArray();
        var expected = (await sound.DiagnosticsAsync(Uri, 1))["diagnostics"]!.AsArray();
        var told = Assert.Single(found, d => (string?)d!["data"] == "broken-on-purpose")!;
        Assert.Contains("by a fault of its own (InvalidCastException)", (string?)told["message"], StringComparison.Ordinal);
        Assert.NotEmpty(expected);
        Assert.Equal(expected.Select(d => d!.ToJsonString()), found.Where(d => d != told).Select(d => d!.ToJsonString()));

        await client.ChangeAsync(Uri, 2, TestClient.Insert(1, 0, "G0"));
        await client.DiagnosticsAsync(Uri, 2);
        Assert.Matches(
            @"^The check broken-on-purpose failed at document [0-9a-f]{8}, version 1, line 0 character 0 \(from 0\), by InvalidCastException.$",
            (string?)(await client.NextAsync("window/logMessage"))["message"]);
        Assert.Single(client.Log, message => (string?)message["method"] == "window/logMessage");
    }

    [Fact]
    public async Task An_analysis_that_throws_answers_all_who_wait_says_so_in_place_of_findings_and_is_logged_once()
    {
        var files = new BrokenFiles();
        await using var client = await TestClient.InitializedAsync(files: files);
        await client.OpenAsync(Uri, Program);
        await client.DiagnosticsAsync(Uri, 1);
        files.IsBroken = true;
        await client.NotifyAsync("workspace/didChangeWatchedFiles", """{"changes":[{"uri":"file:///job/secret-part.setup.json","type":1}]}""");
        Assert.Equal(-32603, await client.ErrorOfAsync("textDocument/documentSymbol", Document));
        Assert.Equal(-32603, await client.ErrorOfAsync("textDocument/foldingRange", Document));
        var told = Assert.Single((await client.DiagnosticsAsync(Uri, 1))["diagnostics"]!.AsArray())!;
        Assert.Contains("could not be checked", (string?)told["message"], StringComparison.Ordinal);
        Assert.Matches("^The analysis failed at document [0-9a-f]{8}, version 1, by InvalidOperationException.$", (string?)(await client.NextAsync("window/logMessage"))["message"]);
        Assert.Single(client.Log, message => (string?)message["method"] == "window/logMessage");

        // The text was kept, and is checked again once that can be.
        files.IsBroken = false;
        await client.ChangeAsync(Uri, 2, TestClient.Insert(3, 0, "(nc-allow feed-missing)"));
        await client.NotifyAsync("workspace/didChangeWatchedFiles", """{"changes":[{"uri":"file:///job/secret-part.setup.json","type":1}]}""");
        var again = await client.DiagnosticsAsync(Uri, 2);
        if (again["diagnostics"]!.AsArray().Count == 1)
            again = await client.DiagnosticsAsync(Uri, 2);
        Assert.Equal(3, (int)again["diagnostics"]!.AsArray().Single(d => (string?)d!["data"] == "allow-without-reason")!["range"]!["start"]!["line"]!);
    }

    /// <summary>A text of JSON has 166,666,666 characters at most (the limit of the platform's writer).</summary>
    [Fact]
    public async Task An_answer_that_cannot_be_written_is_told_as_such_and_logged()
    {
        await using var client = await TestClient.InitializedAsync(pages: new UnwritablePages());
        await client.OpenAsync(Uri, Program);
        var error = (await client.AskAsync("nclanguage/motionView", Document))["error"]!;
        Assert.Equal(-32603, (int?)error["code"]);
        Assert.StartsWith("nclanguage/motionView: the answer cannot be written (", (string?)error["message"], StringComparison.Ordinal);
        Assert.StartsWith("nclanguage/motionView failed by ", (string?)(await client.NextAsync("window/logMessage"))["message"], StringComparison.Ordinal);
        Assert.NotNull(await client.RequestAsync("textDocument/documentSymbol", Document));
    }

    sealed class UnwritablePages : IPages
    {
        public string MotionView(PageInput input, string? nonce, CancellationToken cancel) => new(' ', 166_666_667);

        public string SetupSheet(PageInput input, CancellationToken cancel) => "";

        public string Write(string name, string page) => "";
    }

    sealed class BrokenPages : IPages
    {
        public string MotionView(PageInput input, string? nonce, CancellationToken cancel) => throw new InvalidCastException("quoted (COMMENT OF MINE)");

        public string SetupSheet(PageInput input, CancellationToken cancel) => "";

        public string Write(string name, string page) => "";
    }

    sealed class BrokenFiles : IFileAccess
    {
        public volatile bool IsBroken;

        public FileAnswer Read(string path) => IsBroken ? throw new InvalidOperationException("broken on purpose") : new FileAnswer(FileState.Missing);
    }

    internal static RuleInfo Info(string name) => new()
    {
        Id = "NC2999",
        Name = name,
        Severity = Severity.Error,
        Title = "Broken on purpose",
        Finds = "Nothing.",
        AtTheMachine = "Nothing.",
        Example = "",
        Instead = "",
        NotFound = "",
        Source = "",
    };

    sealed class BrokenRule : Rule
    {
        public override RuleInfo Info { get; } = FaultTests.Info("broken-on-purpose");

        public override StepEvents Interest => StepEvents.Words;

        public override void CheckStep(in StepContext step) => throw new InvalidCastException("broken on purpose");
    }

    sealed class BrokenFixRule : Rule
    {
        public override RuleInfo Info { get; } = FaultTests.Info("unfixable");

        public override bool ReadsText => true;

        public override void CheckText(in BlockContext block) => block.Report(this, 0, 1, "Found.");

        public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis) => throw new InvalidCastException("broken on purpose");
    }
}
