using System.Text;
using System.Text.Json;
using NcLanguage.Cli.Tests.Support;

namespace NcLanguage.Cli.Tests;

/// <summary><c>check</c>: what it reads, and the shapes of what it tells.</summary>
public sealed class CheckTests : IDisposable
{
    readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    Outcome Check(params string[] arguments) => Command.In(_scratch.Folder, ["check", .. arguments]);

    static IEnumerable<JsonElement> Findings(Outcome outcome, string path) =>
        outcome.Json.GetProperty("files").EnumerateArray().Single(file => file.GetProperty("path").GetString() == path).GetProperty("findings").EnumerateArray();

    [Fact]
    public void The_JSON_has_the_members_of_the_contract()
    {
        _scratch.Write("wrong.nc", Samples.WithError);
        var outcome = Check("wrong.nc", "--format", "json");
        Assert.Equal((1, ""), (outcome.ExitCode, outcome.Errors));
        Assert.Equal(1, outcome.Json.GetProperty("errors").GetInt32());
        Assert.Equal(JsonValueKind.Number, outcome.Json.GetProperty("warnings").ValueKind);
        Assert.Equal(JsonValueKind.Number, outcome.Json.GetProperty("notes").ValueKind);
        var finding = Assert.Single(Findings(outcome, "wrong.nc"));
        Assert.Equal("code-unknown", finding.GetProperty("name").GetString());
        Assert.Matches("^NC1[0-9]{3}$", finding.GetProperty("id").GetString());
        Assert.Equal("error", finding.GetProperty("severity").GetString());
        Assert.Equal(
            (2, 1, 2, 5),
            (Int(finding, "line"), Int(finding, "column"), Int(finding, "endLine"), Int(finding, "endColumn")));
        Assert.NotEmpty(finding.GetProperty("message").GetString()!);
        Assert.Equal(JsonValueKind.Array, finding.GetProperty("fixes").ValueKind);
        Assert.Equal(JsonValueKind.Array, finding.GetProperty("related").ValueKind);

        static int Int(JsonElement element, string name) => element.GetProperty(name).GetInt32();
    }

    [Fact]
    public void Columns_count_characters_whatever_the_encoding()
    {
        // An umlaut is two bytes in UTF-8, a tool is a surrogate pair in UTF-16, FF is a byte that is no UTF-8: one column each.
        const string text = "G21 G90 G17 G54\n(ä🔧) G999\nM30\n";
        _scratch.Write("utf8.nc", text);
        _scratch.Write("mark.nc", [.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes("(ä🔧) G999\nM30\n")]);
        _scratch.Write("little.nc", [0xFF, 0xFE, .. Encoding.Unicode.GetBytes(text)]);
        _scratch.Write("big.nc", [0xFE, 0xFF, .. Encoding.BigEndianUnicode.GetBytes(text)]);
        _scratch.Write("bytes.nc", [.. "G21 G90 G17 G54\n("u8, 0xFF, 0xE4, .. ") G999\nM30\n"u8]);
        var outcome = Check(".", "--format", "json");
        foreach (var name in new[] { "utf8.nc", "mark.nc", "little.nc", "big.nc", "bytes.nc" })
        {
            var finding = Assert.Single(Findings(outcome, name), finding => finding.GetProperty("name").GetString() == "code-unknown");
            Assert.Equal((name, 6), (name, finding.GetProperty("column").GetInt32()));
        }
    }

    [Fact]
    public void Folders_are_searched_to_the_bottom_hidden_ones_left_out_and_told_in_order()
    {
        foreach (var name in new[] { "b.NC", "a.tap", "deep/er/c.cnc", "d.iso", "e.eia", "f.ncp", "not.txt", ".hidden/g.nc" })
            _scratch.Write(name, Samples.Sound);
        var files = Check(".", "a.tap", "--format", "json").Json.GetProperty("files").EnumerateArray().Select(file => file.GetProperty("path").GetString());
        Assert.Equal(["a.tap", "b.NC", "d.iso", Path.Combine("deep", "er", "c.cnc"), "e.eia", "f.ncp"], files);
    }

    /// <summary>A pattern of the shell, part*, names the files beside a program too.</summary>
    [Fact]
    public void Files_beside_programs_are_no_programs()
    {
        _scratch.Write("part.nc", Samples.Sound);
        _scratch.Write("part.setup.json", """{ "units": "mm", "clearence": 2 }""");
        _scratch.Write("mill.machine.json", """{ "name": "bench mill", "travels": {} }""");
        _scratch.Write("nc.cutting.json", """{ "rows": 3 }""");
        var outcome = Check("part.nc", "part.setup.json", "mill.machine.json", "nc.cutting.json", "--format", "json", "--fail-on", "never");
        var files = outcome.Json.GetProperty("files").EnumerateArray().Select(file => file.GetProperty("path").GetString());
        Assert.Equal((0, ""), (outcome.ExitCode, outcome.Errors));
        Assert.Equal(["part.nc", "mill.machine.json", "nc.cutting.json", "part.setup.json"], files);
        Assert.Equal("setup-unknown-key", Assert.Single(Findings(outcome, "part.setup.json")).GetProperty("name").GetString());
        Assert.Equal("setup-unknown-key", Assert.Single(Findings(outcome, "mill.machine.json")).GetProperty("name").GetString());
        Assert.Single(Findings(outcome, "nc.cutting.json"));
    }

    [Fact]
    public void A_file_named_by_itself_may_have_any_ending() =>
        Assert.Equal(1, Check(_scratch.Write("program.txt", Samples.WithError)).ExitCode);

    [Fact]
    public void Standard_input_is_read_for_a_dash()
    {
        var outcome = Command.Run(_scratch.Folder, Encoding.UTF8.GetBytes(Samples.WithError), ["check", "-", "--format", "json"]);
        Assert.Equal("code-unknown", Assert.Single(Findings(outcome, "-")).GetProperty("name").GetString());
    }

    [Theory]
    [InlineData("")]
    [InlineData("%\n")]
    [InlineData("%\nO1\n%\n")]
    public void An_empty_file_gets_a_clear_answer(string program)
    {
        _scratch.Write("empty.nc", program);
        var text = Check("empty.nc");
        Assert.Contains("no block", text.Output, StringComparison.Ordinal);
        Assert.Equal(0, Check("empty.nc", "--format", "json").Json.GetProperty("files")[0].GetProperty("blocks").GetInt32());
    }

    [Fact]
    public void Binary_rubbish_gives_findings_and_no_control_characters()
    {
        var bytes = new byte[20_000];
        new Random(7).NextBytes(bytes);
        bytes[0] = (byte)'G';
        _scratch.Write("rubbish.nc", bytes);
        var json = Check("rubbish.nc", "--format", "json");
        Assert.Equal((1, ""), (json.ExitCode, json.Errors));
        Assert.NotEqual(0, json.Json.GetProperty("errors").GetInt32());
        var text = Check("rubbish.nc");
        Assert.DoesNotContain(text.Output, character => char.IsControl(character) && character is not '\n' and not '\r');
    }

    [Fact]
    public void A_line_of_100_MB_is_checked_and_shown_in_part()
    {
        var bytes = new byte[100_000_000];
        bytes.AsSpan().Fill((byte)'?');
        _scratch.Write("long.nc", bytes);
        var outcome = Check("long.nc");
        Assert.Equal((1, ""), (outcome.ExitCode, outcome.Errors));
        Assert.True(outcome.Output.Length < 1_000_000, $"{outcome.Output.Length} characters");
    }

    [Fact]
    public void A_great_many_findings_with_fixes_take_no_great_while()
    {
        // Every block has the number of an earlier one; each fix looks for a free number in the whole program.
        var text = new StringBuilder("G21 G90 G17 G54\n");
        for (var i = 0; i < 40_000; i++)
            text.Append("N10 (again)\n");
        _scratch.Write("many.nc", text.Append("M30\n").ToString());
        var outcome = Check("many.nc", "--format", "json", "--fail-on", "never");
        var file = outcome.Json.GetProperty("files")[0];
        Assert.Equal(39_999, file.GetProperty("findings").EnumerateArray().Count(finding => finding.GetProperty("name").GetString() == "number-repeated"));
        Assert.Equal(39_999 - 1000, file.GetProperty("fixesLeftOut").GetInt32());
        Assert.Contains("more in this file", Check("many.nc").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_the_text_is_cut_the_errors_come_first()
    {
        var blocks = string.Concat(Enumerable.Repeat("N10 (again)\n", 300));
        _scratch.Write("cut.nc", "G21 G90 G17 G54\n" + blocks + "G0 X10.2.5\nM30\n");
        var output = Check("cut.nc").Output;
        Assert.Contains("more in this file, errors told first", output, StringComparison.Ordinal);
        Assert.InRange(output.IndexOf("number-malformed", StringComparison.Ordinal), 0, output.IndexOf("number-repeated", StringComparison.Ordinal));
    }

    [Fact]
    public void A_mistake_in_the_setup_stands_under_the_setup_once()
    {
        _scratch.Write("a.nc", Samples.Sound);
        _scratch.Write("b.nc", Samples.Sound);
        _scratch.Write("nc.setup.json", "{\n  \"ä\": 1, \"tols\": []\n}");
        var outcome = Check(".", "--format", "json", "--fail-on", "warning");
        Assert.Equal(1, outcome.ExitCode);
        var finding = Assert.Single(Findings(outcome, "nc.setup.json"), f => f.GetProperty("message").GetString()!.Contains("tols", StringComparison.Ordinal));
        Assert.Equal("setup-unknown-key", finding.GetProperty("name").GetString());
        Assert.Equal((2, 11), (finding.GetProperty("line").GetInt32(), finding.GetProperty("column").GetInt32()));
    }

    [Fact]
    public void A_broken_setup_is_an_error_and_the_program_is_still_checked()
    {
        _scratch.Write("a.nc", Samples.WithError);
        _scratch.Write("a.setup.json", "{ \"stock\": ");
        var outcome = Check("a.nc", "--format", "json");
        Assert.Equal("setup-malformed", Assert.Single(Findings(outcome, "a.setup.json")).GetProperty("name").GetString());
        Assert.Contains(Findings(outcome, "a.nc"), finding => finding.GetProperty("name").GetString() == "code-unknown");
    }

    /// <summary>A setup may name any file that its reader may read, and what a check tells is shown to others.</summary>
    [Theory]
    [InlineData("text")]
    [InlineData("json")]
    [InlineData("sarif")]
    [InlineData("github")]
    public void Nothing_is_shown_of_a_file_that_is_none_of_ours(string format)
    {
        _scratch.Write("secret.txt", "hunter2:swordfish\nmore\n");
        _scratch.Write("job/a.setup.json", "{ \"machine\": \"../secret.txt\" }");
        _scratch.Write("job/a.nc", Samples.Sound);
        var outcome = Check(".", "--format", format);
        Assert.Contains("Expected '{', but found 'h'", outcome.Output.Replace("\\u0027", "'", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.DoesNotContain("hunter", outcome.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("swordfish", outcome.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("hunter", Command.In(_scratch.Folder, "trace", "job/a.nc", "--machine", "secret.txt").Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void A_setup_that_is_a_link_to_nothing_is_told()
    {
        if (OperatingSystem.IsWindows())
            return;
        _scratch.Write("a.nc", Samples.Sound);
        File.CreateSymbolicLink(_scratch.At("a.setup.json"), "nowhere.json");
        var outcome = Check("a.nc", "--format", "json");
        Assert.Equal(1, outcome.ExitCode);
        var finding = Assert.Single(Findings(outcome, "a.setup.json"));
        Assert.Equal("a.setup.json is a link to a file that is not there; the program is checked without a setup.", finding.GetProperty("message").GetString());
    }

    [Fact]
    public void Behind_two_dashes_a_name_may_begin_with_one()
    {
        _scratch.Write("-x.nc", Samples.WithError);
        Assert.Equal("-x.nc", Check("--format", "json", "--", "-x.nc").Json.GetProperty("files")[0].GetProperty("path").GetString());
        Assert.Equal((0, ""), (Command.In(_scratch.Folder, "trace", "--", "-x.nc") is var trace ? (trace.ExitCode, trace.Errors) : default));
        Assert.Equal(2, Check("-x.nc").ExitCode);
    }

    [Fact]
    public void SARIF_has_a_rule_for_every_result()
    {
        _scratch.Write("sub folder/wrong.nc", Samples.WithError);
        var run = Check(".", "--format", "sarif").Json;
        Assert.Equal("2.1.0", run.GetProperty("version").GetString());
        run = run.GetProperty("runs")[0];
        var rules = run.GetProperty("tool").GetProperty("driver").GetProperty("rules").EnumerateArray().Select(rule => rule.GetProperty("id").GetString()).ToList();
        Assert.Equal("unicodeCodePoints", run.GetProperty("columnKind").GetString());
        Assert.All(run.GetProperty("results").EnumerateArray(), result => Assert.Contains(result.GetProperty("ruleId").GetString(), rules));
        var place = run.GetProperty("results")[0].GetProperty("locations")[0].GetProperty("physicalLocation");
        Assert.Equal("sub%20folder/wrong.nc", place.GetProperty("artifactLocation").GetProperty("uri").GetString());
        Assert.Equal(2, place.GetProperty("region").GetProperty("startLine").GetInt32());
    }

    [Fact]
    public void Annotations_are_one_line_each()
    {
        _scratch.Write("wrong.nc", Samples.WithError);
        var line = Assert.Single(Check("wrong.nc", "--format", "github").Output.Split('\n', StringSplitOptions.RemoveEmptyEntries));
        Assert.Matches(@"^::error file=wrong\.nc,line=2,endLine=2,col=1,endColumn=5,title=NC\d{4} code-unknown::.+$", line);
    }

    [Theory]
    [InlineData("CI", "true")]
    [InlineData("GITHUB_ACTIONS", "true")]
    [InlineData("NO_COLOR", "1")]
    public void Nothing_is_coloured_in_a_pipe(string name, string value)
    {
        _scratch.Write("wrong.nc", Samples.WithError);
        var outcome = Command.Run(_scratch.Folder, null, ["check", "wrong.nc"], (name, value));
        Assert.DoesNotContain('\u001b', outcome.Output);
        Assert.Contains("ERROR", outcome.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_thread_whose_name_says_nothing_is_not_checked_and_that_is_told()
    {
        _scratch.Write("wrong.nc", "G21 G90 G17 G54\nM30\n");
        _scratch.Write("wrong.setup.json", """{ "holes": [ { "x": 0, "y": 0, "thread": "XY9" }, { "x": 9, "y": 0, "thread": "M8" }, { "x": 18, "y": 0, "thread": "M11" }, { "x": 18, "y": 9, "thread": "XY9" } ] }""");
        var output = Check("wrong.nc").Output.ReplaceLineEndings(" ");
        Assert.Contains("Not checked: which thread is cut where the drawing asks for XY9 (", output, StringComparison.Ordinal);
        Assert.Contains("Not checked: the pitch of M11 (", output, StringComparison.Ordinal);
        Assert.DoesNotContain("M8 ", output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Unobtainium", "HSS", "Not checked: cutting speed and feed (the cutting data do not know the material Unobtainium).")]
    [InlineData("Aluminium", "unobtainium", "Not checked: the cutting speed of tools of unobtainium (the cutting data do not know it).")]
    [InlineData("Aluminium", "high speed steel", null)]
    public void A_material_that_the_cutting_data_do_not_know_is_told(string material, string toolMaterial, string? told)
    {
        _scratch.Write("made.nc", "G21 G90 G17 G54\nM30\n");
        _scratch.Write("made.setup.json", $$"""{ "material": "{{material}}", "tools": [ { "number": 1, "kind": "drill", "diameter": 8, "material": "{{toolMaterial}}" } ] }""");
        var output = Check("made.nc").Output.ReplaceLineEndings(" ");
        Assert.Equal(told is not null, output.Contains("cutting speed", StringComparison.Ordinal));
        Assert.Contains(told ?? "", output, StringComparison.Ordinal);
        var sheet = Command.Run(_scratch.Folder, null, ["sheet", "made.nc", "-o", "made.html"]);
        Assert.Equal(0, sheet.ExitCode);
        Assert.Equal(material == "Aluminium", File.ReadAllText(_scratch.At("made.html")).Contains($"cutting speed and feed for {material}, as far", StringComparison.Ordinal));
    }

    /// <summary>Rows of the user's own that name no material are for all.</summary>
    [Theory]
    [InlineData("\"material\": \"Unobtainium\", ", "cutting speed and feed but by rows for all materials (the cutting data do not know the material Unobtainium).")]
    [InlineData("", null)]
    public void Rows_for_all_materials_hold_for_one_that_is_not_known(string material, string? told)
    {
        _scratch.Write("nc.cutting.json", """{ "rows": [ { "kind": ["drill"], "speed": [20, 30], "source": "our own trials" } ] }""");
        _scratch.Write("made.nc", "G21 G90 G17 G54\nT1 M6\nS9000 M3\nM30\n");
        _scratch.Write("made.setup.json", $$"""{ {{material}}"tools": [ { "number": 1, "kind": "drill", "diameter": 8 } ] }""");
        var output = Check("made.nc").Output.ReplaceLineEndings(" ");
        Assert.Contains("far above the 20 to 30 m/min for all materials with this tool, drill of 8 mm (our own trials).", output, StringComparison.Ordinal);
        Assert.Equal(told is not null, output.Contains("Not checked: cutting", StringComparison.Ordinal));
        Assert.Contains(told ?? "", output, StringComparison.Ordinal);
        Assert.Equal(0, Command.Run(_scratch.Folder, null, ["sheet", "made.nc", "-o", "made.html"]).ExitCode);
        Assert.Contains("has rows for all materials", File.ReadAllText(_scratch.At("made.html")), StringComparison.Ordinal);
    }

    [Fact]
    public void The_place_is_marked_under_the_block_and_the_caution_is_there()
    {
        _scratch.Write("wrong.nc", "G21 G90 G17 G54\nN10 G999\nM30\n");
        var lines = Check("wrong.nc").Output.Split('\n').Select(line => line.TrimEnd('\r')).ToList();
        var block = lines.IndexOf("    N10 G999");
        Assert.True(block > 0, string.Join('\n', lines));
        Assert.Equal("        ^^^^", lines[block + 1]);
        Assert.Contains("Not checked: clearance to clamps", string.Join('\n', lines), StringComparison.Ordinal);
        Assert.Contains("a hand on feed hold", string.Join('\n', lines), StringComparison.Ordinal);
    }

    /// <summary>What goes beyond the bounds (DEVELOPERS.md, "Budgets") is told at each block. The runtime gives 144 MB to objects here: what was followed is not kept side by side.</summary>
    [Fact]
    public void A_short_program_that_asks_for_very_many_holes_takes_little_memory_and_what_is_not_followed_is_told()
    {
        const int Blocks = 2_000;
        _scratch.Write("many.nc", "G21 G90 G17 G54\nG0 X0 Y0 Z5\n" + string.Concat(Enumerable.Repeat("G91 G81 X1. Z-1. R1. F100 L99999999\n", Blocks)) + "G80 G90\nM30\n");
        var outcome = Command.Run(_scratch.Folder, null, ["check", "many.nc", "--machine", "iso-mill", "--format", "json"], ("DOTNET_GCHeapHardLimit", "9000000"));
        Assert.Equal("", outcome.Errors);
        var told = Findings(outcome, "many.nc").Where(finding => finding.GetProperty("name").GetString() == "path-not-known").Select(finding => finding.GetProperty("message").GetString()!).ToList();
        Assert.Equal(Blocks, told.Count);
        Assert.StartsWith("This block makes more than 100000 moves: what goes beyond is not followed", told[0], StringComparison.Ordinal);
        Assert.StartsWith("The blocks before have made 1000000 moves by repeats and pecks: of the more than 200 of this one, what goes beyond is not followed", told[^1], StringComparison.Ordinal);
    }
}
