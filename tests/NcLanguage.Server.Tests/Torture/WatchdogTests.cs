using System.Diagnostics;
using System.Text.Json.Nodes;
using NcLanguage.Server.Rpc;
using NcLanguage.Server.Scheduling;
using Xunit.Abstractions;

namespace NcLanguage.Server.Tests.Torture;

/// <summary>No request runs longer than what bounds it lets it, whatever the program (DEVELOPERS.md, "Budgets"): each method that reads a program, on programs made to
/// keep a server busy. The patience is for a machine under load; the times themselves are in the test's output.</summary>
public sealed class WatchdogTests(ITestOutputHelper output)
{
    const string Uri = "file:///job/part.nc";
    static readonly TimeSpan Patience = TimeSpan.FromSeconds(120);

    const string Setup = """
        { "units": "mm", "frame": "G54", "machine": "iso-mill", "stock": { "min": [0, 0, -20], "max": [500, 500, 0] }, "clearance": 2,
          "obstacles": [ { "name": "clamp", "min": [20, 20, 0], "max": [45, 40, 25] }, { "name": "stud", "center": [90, 90], "diameter": 12, "bottom": 0, "top": 30 } ],
          "tools": [ { "number": 1, "kind": "end-mill", "diameter": 10, "fluteLength": 20, "length": 80, "lengthOffset": 1, "holderDiameter": 40, "holderGauge": 60 } ] }
        """;

    const string Head = "G21 G90 G17 G54\nT1 M6\nS1000 M3\nG43 H1 G0 X0 Y0 Z50\n";

    /// <summary>A client that asks for the edits of the action chosen.</summary>
    const string Resolves = """{"textDocument":{"codeAction":{"dataSupport":true,"resolveSupport":{"properties":["edit"]}},"hover":{"contentFormat":["markdown"]}}}""";

    public static TheoryData<string> Programs => [.. Texts.Keys];

    /// <summary>Each program, and a client that has all edits at once: code actions, or commands in their place.</summary>
    public static TheoryData<string, string> ProgramsOfOtherClients
    {
        get
        {
            var data = new TheoryData<string, string>();
            foreach (var program in Texts.Keys)
            {
                data.Add(program, TestClient.Literals);
                data.Add(program, """{"workspace":{"applyEdit":true}}""");
            }
            return data;
        }
    }

    static readonly Dictionary<string, string> Texts = new()
    {
        ["a loop of unknown count"] = Head + "#1=#500\nWHILE [#1 GT 0] DO1\nG1 X[#1*2] Y5 Z-1 F200\nG81 X#1 Y9 Z-4 R2\nG80\n#1=#1-1\nEND1\nM30\n",
        ["a loop without end"] = Head + "#1=0\nWHILE [1 EQ 1] DO1\nG1 X[#1] Y5 Z-1 F200\n#1=#1+0.01\nEND1\nM30\n",
        ["a jump to itself"] = Head + "N10 G1 X5 F100\nGOTO 10\nM30\n",
        ["a billion calls"] = Head + "M98 P1200 L999999999\nM30\nO1200\nG1 X10 Z-1 F200\nM98 P1300 L999999999\nM99\nO1300\nG91 X1\nG90\nM99\n",
        ["a program that calls itself"] = "O0001\n" + Head + "M98 P0001\nM98 P0001\nM99\n",
        ["a billion holes"] = Head + "G91 G99 G81 X0.001 Y0 Z-4.5 R-48 F180 L999999999\nK999999999\nG80\nM30\n",
        ["a billion pecks"] = Head + "G99 G83 X20 Y20 Z-99999 R2 Q0.0001 F180\nG99 G73 X30 Y20 Z-99999 R2 Q0.0001\nG80\nM30\n",
        // Each of so many strokes that the moves of all together are followed to their bound (MoveBudget).
        ["400 holes of 1,000 pecks"] = Head + string.Concat(Enumerable.Range(0, 400).Select(i => $"G99 G83 X{i} Y20 Z-19 R2 Q0.0195 F180\n")) + "G80\nM30\n",
        ["5,000 calls"] = Head + string.Concat(Enumerable.Repeat("M98 P1200\n", 5000)) + "M30\nO1200\nG91 G1 X0.1 Y0.1 F200\nG90 G81 X5 Y5 Z-3 R2\nG80\nM99\n",
        ["10,000 brackets deep"] = Head + $"#1={new string('[', 10_000)}1{new string(']', 10_000)}\nG1 X{new string('[', 10_000)}\n#2={string.Concat(Enumerable.Repeat("SIN[", 10_000))}1\nM30\n",
        ["lines of 100,000 characters"] = Head + string.Concat(Enumerable.Repeat("X1.5 ", 20_000)) + "\n(" + new string('(', 100_000) + "\n#1=" + string.Concat(Enumerable.Repeat("1+", 20_000)) + "1\nN" + new string('9', 100_000) + "\nG" + new string('1', 100_000) + "\nM30\n",
        ["greatest numbers"] = Head + "G2 X1e9 Y0 I999999999999 J0 F1\nG2 X10 Y10 R99999999999999999999\nG3 I0.00001 X5 Y5 Z-99999999999\nG1 X" + new string('9', 400) + "\nG0 X-999999999 Y999999999 Z-999999999\nM30\n",
        ["5,000 faulty blocks"] = Head + string.Concat(Enumerable.Range(0, 5_000).Select(i => $"N{i % 977} G1 X{i % 500}. Y{i % 313} Z-1 Q\n")) + "M30\n",
        ["5,000 jumps"] = Head + string.Concat(Enumerable.Range(1, 5_000).Select(i => $"N{i} IF [#500 EQ {i}] GOTO {5_001 - i}\n")) + "M30\n",
    };

    [Fact]
    public void Every_method_that_reads_a_program_is_asked_here() =>
        Assert.Equal(MethodTable.Rows.Where(row => row.Value == Schedule.Snapshot).Select(row => row.Key).Order(), Requests(10).Select(request => request.Method).Distinct().Order());

    [Theory]
    [MemberData(nameof(Programs))]
    public async Task Every_method_comes_to_an_end_by_itself(string program)
    {
        await using var client = await OpenedAsync(program);
        var first = await client.DiagnosticsAsync(Uri, 1);
        Assert.InRange(first["diagnostics"]!.AsArray().Count, 0, Features.DiagnosticPublisher.MostFindings + 1);
        var lines = Texts[program].Split('\n').Length;
        foreach ((var method, var parameters) in Requests(lines))
        {
            var clock = Stopwatch.StartNew();
            var answer = await client.AskAsync(method, parameters);
            output.WriteLine($"{clock.ElapsedMilliseconds,6} ms  {method}");
            // What cannot be answered is refused by one of the protocol's codes, never by a fault of the server's own.
            Assert.NotEqual(-32603, (int?)answer["error"]?["code"]);
        }
        foreach (var action in (await client.RequestAsync("textDocument/codeAction", Range(lines, Asked)))!.AsArray().Where(action => action!["data"] is not null))
        {
            var clock = Stopwatch.StartNew();
            var answer = await client.AskAsync("codeAction/resolve", action!.ToJsonString());
            output.WriteLine($"{clock.ElapsedMilliseconds,6} ms  {action["title"]}");
            Assert.NotEqual(-32603, (int?)answer["error"]?["code"]);
        }
    }

    [Theory]
    [MemberData(nameof(ProgramsOfOtherClients))]
    public async Task Actions_whose_edits_are_wanted_at_once_come_to_an_end(string program, string capabilities)
    {
        await using var client = await OpenedAsync(program, capabilities: capabilities);
        await client.DiagnosticsAsync(Uri, 1);
        var lines = Texts[program].Split('\n').Length;
        foreach (var range in new[] { Range(lines, Asked), $$"""{"textDocument":{"uri":"{{Uri}}"},"range":{"start":{{TestClient.At(6, 0)}},"end":{{TestClient.At(6, 0)}}}{{Asked}}}""" })
        {
            var clock = Stopwatch.StartNew();
            var answer = await client.AskAsync(Methods.CodeAction, range);
            output.WriteLine($"{clock.ElapsedMilliseconds,6} ms  {answer["result"]?.AsArray().Count} actions");
            Assert.NotNull(answer["result"]);
            (var id, var canceled) = client.BeginAsync(Methods.CodeAction, range);
            await client.NotifyAsync("$/cancelRequest", $$"""{"id":{{id}} }""");
            Assert.NotEqual(-32603, (int?)(await canceled.WaitAsync(Patience))["error"]?["code"]);
        }
    }

    /// <summary>Files of half a megabyte, each on one line as a program writes them. What is told of one is bounded as what is told of a program is.</summary>
    [Theory]
    [InlineData("\"m#\":1", "")]
    [InlineData("{\"numbr\":#,\"diametr\":5}", "\"tools\":[")]
    [InlineData("{\"min\":[0,0,9],\"max\":[1,1,#e-9]}", "\"obstacles\":[")]
    [InlineData("\"G#\":[0,0]", "\"workOffsets\":{")]
    public async Task A_setup_full_of_mistakes_is_read_and_its_findings_are_bounded(string item, string list)
    {
        var items = string.Join(',', Enumerable.Range(0, 40_000).Select(i => item.Replace("#", $"{i}", StringComparison.Ordinal)));
        var setup = $"{{\"units\":\"mm\",{list}{items}{(list.EndsWith('[') ? "]" : list.EndsWith('{') ? "}" : "")}}}";
        await using var client = await OpenedAsync("a jump to itself");
        await client.OpenAsync("file:///job/part.setup.json", setup);
        var clock = Stopwatch.StartNew();
        var told = (await client.DiagnosticsAsync("file:///job/part.setup.json", null))["diagnostics"]!.AsArray();
        output.WriteLine($"{clock.ElapsedMilliseconds,6} ms, {setup.Length} bytes");
        Assert.Equal(501, told.Count);
        Assert.Matches("^[0-9]+ more mistakes of this file are not told", (string?)told[^1]!["message"]);
    }

    [Theory]
    [MemberData(nameof(Programs))]
    public async Task Every_method_ends_when_it_is_cancelled(string program)
    {
        var files = new TestFiles { ["/job/part.setup.json"] = Setup };
        files.Hold();
        await using var client = await OpenedAsync(program, files);
        // As long as nothing is known of the program, cancelling is the only way to end.
        var waiting = await CancelledAsync(client, program);
        Assert.Contains(waiting, answer => (int?)answer["error"]?["code"] == -32800);
        files.Release();
        await client.DiagnosticsAsync(Uri, 1);
        await CancelledAsync(client, program);
    }

    /// <summary>What each method answers when it is cancelled at once: never by a fault of the server's own.</summary>
    static async Task<JsonNode[]> CancelledAsync(TestClient client, string program)
    {
        var lines = Texts[program].Split('\n').Length;
        List<Task<JsonNode>> answers = [];
        foreach ((var method, var parameters) in Requests(lines))
        {
            (var id, var answer) = client.BeginAsync(method, parameters);
            answers.Add(answer);
            await client.NotifyAsync("$/cancelRequest", $$"""{"id":{{id}} }""");
        }
        var all = await Task.WhenAll(answers).WaitAsync(Patience);
        Assert.DoesNotContain(all, answer => (int?)answer["error"]?["code"] == -32603);
        return all;
    }

    [Theory]
    [MemberData(nameof(Programs))]
    public async Task A_key_ends_the_analysis_before_it(string program)
    {
        await using var client = await OpenedAsync(program);
        for (var version = 2; version <= 30; version++)
            await client.ChangeAsync(Uri, version, TestClient.Insert(0, 0, " "));
        await client.DiagnosticsAsync(Uri, 30);
    }

    static async Task<TestClient> OpenedAsync(string program, TestFiles? files = null, string capabilities = Resolves)
    {
        var client = await TestClient.InitializedAsync(capabilities, files: files ?? new TestFiles { ["/job/part.setup.json"] = Setup }, pages: new RealPages());
        await client.OpenAsync(Uri, Texts[program]);
        return client;
    }

    static string Range(int lines, string more = "") =>
        $$"""{"textDocument":{"uri":"{{Uri}}"},"range":{"start":{"line":0,"character":0},"end":{"line":{{lines}},"character":0} }{{more}} }""";

    const string Options = ""","options":{"tabSize":4,"insertSpaces":true}""";
    const string Asked = ""","context":{"diagnostics":[],"triggerKind":1}""";
    const string Stopped = ""","context":{"frameId":1,"stoppedLocation":{"start":{"line":6,"character":0},"end":{"line":6,"character":0} } }""";

    static IEnumerable<(string Method, string Parameters)> Requests(int lines)
    {
        var document = $$"""{"textDocument":{"uri":"{{Uri}}"} }""";
        string[] ofDocument =
        [
            Methods.DocumentSymbol, Methods.FoldingRange, Methods.DocumentLink, Methods.SemanticTokensFull, Methods.PullDiagnostics, Methods.CodeLens, Methods.MotionView,
            Methods.SetupSheet, Methods.Holes, Methods.JobInUse, Methods.NewSetup,
        ];
        foreach (var method in ofDocument)
            yield return (method, document);
        yield return (Methods.SemanticTokensDelta, $$"""{"textDocument":{"uri":"{{Uri}}"},"previousResultId":"1"}""");
        yield return (Methods.WorkspaceDiagnostics, """{"previousResultIds":[]}""");
        yield return (Methods.WorkspaceSymbol, """{"query":""}""");
        yield return (Methods.CodeLensResolve, $$"""{"range":{"start":{"line":0,"character":0},"end":{"line":0,"character":1} },"data":{"uri":"{{Uri}}","line":0} }""");
        yield return (Methods.Formatting, document[..^2] + Options + "}");
        yield return (Methods.RangeFormatting, Range(lines, Options));
        yield return (Methods.InlayHint, Range(lines));
        yield return (Methods.SemanticTokensRange, Range(lines));
        yield return (Methods.CodeAction, Range(lines, Asked));
        yield return (Methods.InlineValue, Range(lines, Stopped));
        yield return (Methods.CodeActionResolve, $$"""{"title":"x","data":{"uri":"{{Uri}}","version":1} }""");
        yield return (Methods.InlayHintResolve, $$"""{"position":{"line":5,"character":1},"label":"x","data":{"uri":"{{Uri}}","version":1,"line":5,"column":1} }""");
        yield return (Methods.CompletionResolve, """{"label":"G0"}""");
        yield return (Methods.WillRenameFiles, """{"files":[{"oldUri":"file:///job/part.nc","newUri":"file:///job/O77.nc"}]}""");
        yield return (Methods.ExecuteCommand, $$"""{"command":"nclanguage.openMotionView","arguments":["{{Uri}}"]}""");
        int[] places = [.. new[] { 0, 4, 5, 6, 8, 9, lines / 2, lines - 2 }.Where(line => line < lines).Distinct()];
        yield return (Methods.SelectionRange, $$"""{"textDocument":{"uri":"{{Uri}}"},"positions":[{{string.Join(',', places.Select(line => TestClient.At(line, 1)))}}]}""");
        foreach (var line in places)
        {
            foreach (var character in new[] { 1, 40_000 })
            {
                var at = $$"""{"textDocument":{"uri":"{{Uri}}"},"position":{{TestClient.At(line, character)}}""";
                foreach (var method in AtAPlace)
                    yield return (method, at + "}");
                yield return (Methods.References, at + ""","context":{"includeDeclaration":true} }""");
                yield return (Methods.Rename, at + ""","newName":"O77"}""");
                yield return (Methods.OnTypeFormatting, at + ""","ch":"\n" """ + Options + "}");
            }
        }
        const string Place = """{"start":{"line":5,"character":0},"end":{"line":5,"character":5} }""";
        var item = $$"""{"item":{"name":"O1200","kind":12,"uri":"{{Uri}}","range":{{Place}},"selectionRange":{{Place}} } }""";
        yield return (Methods.IncomingCalls, item);
        yield return (Methods.OutgoingCalls, item);
    }

    static string[] AtAPlace { get; } =
    [
        Methods.Hover, Methods.Completion, Methods.SignatureHelp, Methods.Definition, Methods.Declaration, Methods.DocumentHighlight, Methods.PrepareRename,
        Methods.LinkedEditingRange, Methods.PrepareCallHierarchy, Methods.StateAt,
    ];
}
