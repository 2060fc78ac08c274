using System.Text.Json.Nodes;

namespace NcLanguage.Server.Tests;

/// <summary>A word that is half written is no fault: what it brings is a note until the keys rest, the line is left or the program is saved. How programs are written is
/// common practice, from memory: from top to bottom, or the end first and then what comes before it.</summary>
public sealed class HalfWrittenTests
{
    const string Uri = "file:///job/part.nc";
    const string Pulls = """{"textDocument":{"diagnostic":{}},"workspace":{"diagnostics":{"refreshSupport":true}}}""";

    const string Setup = """
        { "units": "mm", "frame": "G54", "machine": "iso-mill", "material": "aluminium", "stock": { "min": [0, 0, -12], "max": [70, 40, 0] }, "clearance": 2,
          "obstacles": [ { "name": "clamp", "min": [30, 30, 0], "max": [40, 50, 20] } ], "workOffsets": { "G54": [-300, -200, -400] },
          "tools": [ { "number": 6, "kind": "spot-drill", "diameter": 8, "pointAngle": 90, "length": 80, "lengthOffset": 6, "material": "HSS", "flutes": 2 },
                     { "number": 7, "kind": "drill", "diameter": 5.5, "pointAngle": 118, "fluteLength": 50, "length": 110, "lengthOffset": 7, "material": "HSS", "flutes": 2 } ],
          "holes": [ { "x": 12, "y": 20, "diameter": 5.5 }, { "x": 58, "y": 20, "diameter": 5.5 } ] }
        """;

    const string Head = "%\nO0417 (LATCH PLATE)\nN10 G21 G17 G90 G94 G40 G49 G80\n";

    const string Middle = """
        N20 G91 G28 Z0
        (SPOT BOTH HOLES)
        N30 G90 T6 M6
        N40 G54 G0 X12 Y20 S2400 M3
        N50 G43 H6 Z40 M8
        N60 G98 G82 X12 Y20 Z-3 R2 P0.1 F240
        N70 X58
        N80 G80 G0 Z40 M9
        N90 G91 G28 Z0 M5
        N100 G90 G49 T7 M6
        N110 G0 X12 Y20 S2000 M3
        N120 G43 H7 Z40 M8
        N130 M98 P0418
        N140 G80 G0 Z40 M9
        N150 G91 G28 Z0 M5
        N160 G90 G49
        """;

    const string End = "\nN170 M30\n";
    const string Called = "O0418 (THE HOLES)\nN10 G98 G81 X12 Y20 Z-15 R2 F200\nN20 X58\nN30 M99\n";

    static IEnumerable<string> Told(JsonNode published, int severity) =>
        published["diagnostics"]!.AsArray().Where(finding => (int)finding!["severity"]! <= severity).Select(finding => $"{(string?)finding!["data"]} {finding["range"]!["start"]!["line"]}");

    static Task SaveAsync(TestClient client) => client.NotifyAsync("textDocument/didSave", "{\"textDocument\":{\"uri\":\"" + Uri + "\"}}");

    static async Task<TestClient> OpenedAsync(string text, string capabilities = "{}")
    {
        var client = await TestClient.InitializedAsync(capabilities, files: new TestFiles { ["/job/part.setup.json"] = Setup });
        await client.OpenAsync(Uri, text);
        return client;
    }

    static string Key(ref int line, ref int column, char key)
    {
        var change = TestClient.Insert(line, column, key.ToString());
        (line, column) = key == '\n' ? (line + 1, 0) : (line, column + 1);
        return change;
    }

    [Theory]
    [InlineData("", Head + Middle + End + Called + "%\n", "")]
    [InlineData(Head, Middle, End + Called + "%\n")]
    public async Task A_sound_program_is_written_letter_by_letter_without_an_error_or_a_warning(string before, string written, string behind)
    {
        await using var client = await OpenedAsync("");
        await client.ChangeAsync(Uri, 2, TestClient.Insert(0, 0, before + behind));
        (var version, var line, var column) = (2, before.Count(c => c == '\n'), 0);
        await client.DiagnosticsAsync(Uri, version);
        foreach (var key in written)
        {
            await client.ChangeAsync(Uri, ++version, Key(ref line, ref column, key));
            var published = await client.DiagnosticsAsync(Uri, version);
            Assert.True(!Told(published, 2).Any(), $"line {line}, column {column}, '{key}': {string.Join(", ", Told(published, 2))}");
        }
        await SaveAsync(client);
        Assert.Empty(Told(await client.DiagnosticsAsync(Uri, version), 2));
    }

    /// <summary>Clients that know no ranges send all of the text, some with each key, some when a few have been typed.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(7)]
    public async Task So_it_is_by_a_client_that_sends_the_whole_text(int keysAtOnce)
    {
        const string Written = Head + Middle + End + Called + "%\n";
        await using var client = await OpenedAsync("");
        await client.DiagnosticsAsync(Uri, 1);
        var version = 1;
        for (var length = keysAtOnce; length < Written.Length + keysAtOnce; length += keysAtOnce)
        {
            var text = Written[..Math.Min(length, Written.Length)];
            await client.ChangeAsync(Uri, ++version, TestClient.Whole(text));
            var published = await client.DiagnosticsAsync(Uri, version);
            Assert.True(!Told(published, 2).Any(), $"{text[(text.LastIndexOf('\n') + 1)..]}: {string.Join(", ", Told(published, 2))}");
        }
        await SaveAsync(client);
        Assert.Empty(Told(await client.DiagnosticsAsync(Uri, version), 2));
    }

    /// <summary>What comes whole was not written here: what it lacks is told as in a file.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task A_program_that_is_put_in_at_once_is_not_on_its_way(bool asWhole)
    {
        var text = Head + Middle + "\nN165 (NOT CALLED BEFORE) M98 P0419" + End + Called + "%\n";
        await using var client = await OpenedAsync("");
        await client.ChangeAsync(Uri, 2, asWhole ? TestClient.Whole(text) : TestClient.Insert(0, 0, text));
        await client.DiagnosticsAsync(Uri, 2);
        await client.ChangeAsync(Uri, 3, TestClient.Insert(1, 5, " \n"));
        Assert.Contains("subprogram-missing 20", Told(await client.DiagnosticsAsync(Uri, 3), 1));
    }

    const string Sound = "N10 G21 G17 G90 G54\nN20 G0 X1\nN30 X2\nN40 M30\n";

    [Fact]
    public async Task Once_the_keys_rest_it_is_told()
    {
        await using var client = await OpenedAsync(Sound);
        await client.DiagnosticsAsync(Uri, 1);
        await client.ChangeAsync(Uri, 2, TestClient.Insert(1, 9, " Y"));
        var typed = await client.DiagnosticsAsync(Uri, 2);
        Assert.DoesNotContain("word-without-number 1", Told(typed, 2));
        Assert.Contains("word-without-number 1", Told(typed, 3));
        Assert.Contains("word-without-number 1", Told(await client.DiagnosticsAsync(Uri, 2), 1));
        // From then on it stands until it is mended.
        await client.ChangeAsync(Uri, 3, TestClient.Insert(1, 11, " "));
        Assert.Contains("word-without-number 1", Told(await client.DiagnosticsAsync(Uri, 3), 1));
    }

    const string Holes = "N10 G21 G17 G90 G54\nN20 T7 M6\nN30 S2000 M3\nN40 G43 H7 G0 X12 Y20 Z40\nN50 G99 G82 X12 Y20 Z-5 R2 P500 F200\nN60 X58\nN70 G80\nN80 M30\n";

    /// <summary>A hint behind the last whole word of the line that is being written would stand in the way of the next and move with each key; others stay. A client that cannot be told to ask again
    /// gets it at once (LSP 3.17, "Inlay Hint Refresh Request").</summary>
    [Theory]
    [InlineData("{}", false)]
    [InlineData("{\"workspace\":{\"inlayHint\":{\"refreshSupport\":true}}}", true)]
    public async Task A_hint_comes_to_the_line_being_written_when_the_keys_rest(string capabilities, bool isHeldBack)
    {
        await using var client = await OpenedAsync(Holes, capabilities);
        await client.DiagnosticsAsync(Uri, 1);
        int[] all = [4, 5];
        Assert.Equal(all, await LinesAsync());
        await client.ChangeAsync(Uri, 2, TestClient.Insert(5, 7, " "));
        Assert.Equal(isHeldBack ? all[..1] : all, await LinesAsync());
        await client.ChangeAsync(Uri, 3, TestClient.Insert(5, 8, "Z"));
        Assert.Equal(isHeldBack ? all[..1] : all, await LinesAsync());
        if (isHeldBack)
            await client.NextAsync("workspace/inlayHint/refresh");
        Assert.Equal(all, await LinesAsync());
        // What stands behind a hint does not move it.
        await client.ChangeAsync(Uri, 4, TestClient.Insert(4, 37, "0"));
        Assert.Equal(all, await LinesAsync());

        async Task<int[]> LinesAsync()
        {
            var hints = await client.RequestAsync("textDocument/inlayHint", "{\"textDocument\":{\"uri\":\"" + Uri + "\"},\"range\":{\"start\":{\"line\":0,\"character\":0},\"end\":{\"line\":99,\"character\":0}}}");
            return [.. hints!.AsArray().Select(hint => (int)hint!["position"]!["line"]!)];
        }
    }

    [Fact]
    public async Task Once_the_line_is_left_it_is_told()
    {
        await using var client = await OpenedAsync(Sound);
        await client.DiagnosticsAsync(Uri, 1);
        await client.ChangeAsync(Uri, 2, TestClient.Insert(1, 9, "Y"));
        await client.DiagnosticsAsync(Uri, 2);
        await client.ChangeAsync(Uri, 3, TestClient.Insert(2, 6, "Z"));
        Assert.Equal(["word-without-number 1"], Told(await client.DiagnosticsAsync(Uri, 3), 1).Where(told => told.StartsWith("word", StringComparison.Ordinal)));
        await client.ChangeAsync(Uri, 4, TestClient.Insert(2, 7, "\n"));
        Assert.Equal(2, Told(await client.DiagnosticsAsync(Uri, 4), 1).Count(told => told.StartsWith("word", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task What_a_key_brings_in_the_lines_behind_is_a_note_with_it()
    {
        await using var client = await OpenedAsync("N10 G21 G17 G90 G94 G54\nN20 T6 M6\nN30 S2400 M3\nN40 G43 H6 G0 Z40\nN50 X12 Y20\nN60 M30\n");
        Assert.DoesNotContain("length-offset-mismatch 3", Told(await client.DiagnosticsAsync(Uri, 1), 2));
        await client.ChangeAsync(Uri, 2, TestClient.Insert(4, 7, "5"));
        await client.DiagnosticsAsync(Uri, 2);
        await client.ChangeAsync(Uri, 3, TestClient.Replace(1, 5, 1, 6, "7"));
        Assert.DoesNotContain("length-offset-mismatch 3", Told(await client.DiagnosticsAsync(Uri, 3), 2));
        Assert.Contains("length-offset-mismatch 3", Told(await client.DiagnosticsAsync(Uri, 3), 2));
    }

    [Theory]
    [InlineData(1, 9, 1, 9, " Y Z5")]
    [InlineData(1, 4, 1, 9, "X Y Z")]
    [InlineData(1, 8, 2, 5, "")]
    public async Task What_is_pasted_or_cut_out_is_told_at_once(int line, int column, int endLine, int endColumn, string text)
    {
        await using var client = await OpenedAsync(Sound);
        await client.DiagnosticsAsync(Uri, 1);
        await client.ChangeAsync(Uri, 2, TestClient.Replace(line, column, endLine, endColumn, text));
        string[] told = [.. Told(await client.DiagnosticsAsync(Uri, 2), 1)];
        await using var fresh = await OpenedAsync(Changed());
        Assert.NotEmpty(told);
        Assert.Equal(Told(await fresh.DiagnosticsAsync(Uri, 1), 1), told);

        string Changed()
        {
            var lines = Sound.Split('\n');
            return string.Join('\n', [.. lines[..line], lines[line][..column] + text + lines[endLine][endColumn..], .. lines[(endLine + 1)..]]);
        }
    }

    [Fact]
    public async Task What_was_told_before_stays_while_the_keys_flow()
    {
        await using var client = await OpenedAsync("N10 G21 G17 G90 G54\nN20 G0 X\nN30 Y2\nN40 M30\n");
        Assert.Contains("word-without-number 1", Told(await client.DiagnosticsAsync(Uri, 1), 1));
        await client.ChangeAsync(Uri, 2, TestClient.Insert(2, 6, "5"));
        Assert.Contains("word-without-number 1", Told(await client.DiagnosticsAsync(Uri, 2), 1));
        await client.ChangeAsync(Uri, 3, TestClient.Insert(1, 8, "7"));
        Assert.DoesNotContain("word-without-number 1", Told(await client.DiagnosticsAsync(Uri, 3), 1));
    }

    [Fact]
    public async Task Once_it_is_saved_it_is_told()
    {
        await using var client = await OpenedAsync(Sound);
        await client.DiagnosticsAsync(Uri, 1);
        await client.ChangeAsync(Uri, 2, TestClient.Insert(1, 9, "Y"));
        Assert.DoesNotContain("word-without-number 1", Told(await client.DiagnosticsAsync(Uri, 2), 1));
        await SaveAsync(client);
        Assert.Contains("word-without-number 1", Told(await client.DiagnosticsAsync(Uri, 2), 1));
    }

    [Fact]
    public async Task Who_asks_for_findings_himself_is_told_to_ask_again_once_the_keys_rest()
    {
        await using var client = await OpenedAsync(Sound, Pulls);
        async Task<JsonNode> AskAsync() => (await client.RequestAsync("textDocument/diagnostic", "{\"textDocument\":{\"uri\":\"" + Uri + "\"}}"))!;
        static bool IsTold(JsonNode report) => report["items"]!.AsArray().Any(finding => (string?)finding!["data"] == "word-without-number" && (int)finding["severity"]! == 1);
        await AskAsync();
        await client.ChangeAsync(Uri, 2, TestClient.Insert(1, 9, "Y"));
        Assert.False(IsTold(await AskAsync()));
        await client.NextAsync("workspace/diagnostic/refresh", _ => true);
        Assert.True(IsTold(await AskAsync()));
    }

    /// <summary>What a new program lacks because it is not written to its end is a note until it is saved; in one that was sound it is told as what it is.</summary>
    [Fact]
    public async Task What_is_still_to_come_is_a_note_until_it_is_saved()
    {
        const string Begun = "N10 G21 G17 G90 G94 G54\nN20 T6 M6\nN30 S2400 M3\nN40 G0 X12 Y20\nN50 G43 H6 Z40 M8\nN60 G98 G82 X12 Y20 Z-3 R2 P0.1 F240\nN70 X58\n";
        string[] toCome = ["cycle-not-cancelled", "spindle-left-on", "coolant-left-on", "hole-not-finished"];
        static string[] Names(JsonNode published, int severity) => [.. Told(published, severity).Select(told => told.Split(' ')[0])];

        await using var client = await OpenedAsync("%\nO0417\n");
        await client.DiagnosticsAsync(Uri, 1);
        await client.ChangeAsync(Uri, 2, TestClient.Insert(2, 0, "M30\n%\n"));
        await client.ChangeAsync(Uri, 3, TestClient.Insert(2, 0, Begun));
        var typed = await client.DiagnosticsAsync(Uri, 3);
        Assert.Empty(toCome.Except(Names(typed, 3)));
        Assert.Empty(Names(typed, 2).Intersect(toCome));
        await SaveAsync(client);
        Assert.Empty(toCome.Except(Names(await client.DiagnosticsAsync(Uri, 3), 2)));

        await using var finished = await OpenedAsync("%\nO0417\n" + Begun + "N80 G80 M9\nN90 M5\nM30\n%\n");
        Assert.Empty(Names(await finished.DiagnosticsAsync(Uri, 1), 2).Intersect(toCome[..3]));
        await finished.ChangeAsync(Uri, 2, TestClient.Replace(9, 0, 11, 0, ""));
        Assert.Empty(toCome.Except(Names(await finished.DiagnosticsAsync(Uri, 2), 2)));
    }
}
