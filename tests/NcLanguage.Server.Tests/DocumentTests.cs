using System.Collections.Immutable;
using System.Text;
using System.Text.Json.Nodes;
using CsCheck;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Server.Documents;
using NcLanguage.Server.Protocol;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Server.Tests;

/// <summary>Positions and incremental changes. The reference is .NET's own UTF-16 string and its UTF-8 encoder.</summary>
public sealed class DocumentTests
{
    static readonly string[] Pieces = ["G1 X1.5", "(ø6 é)", "(\U0001F529)", "\n", "\r\n", "\r", "%", "N10", "a\u0301", "中", "\t", "(Ω\U00010348)"];

    static readonly Gen<string> Texts = Gen.OneOf(Pieces).Array[0, 12].Select(string.Concat);

    [Fact]
    public void Each_position_comes_back_in_both_encodings() => Texts.Sample(text =>
    {
        var source = SourceText.From(text);
        var lines = Lines(text);
        Assert.Equal(lines.Length, source.LineCount);
        var utf16 = new PositionMapper(PositionEncoding.Utf16);
        var utf8 = new PositionMapper(PositionEncoding.Utf8);
        for (var line = 0; line < lines.Length; line++)
        {
            for (var column = 0; column <= lines[line].Length; column++)
            {
                var amid = column > 0 && column < lines[line].Length && char.IsLowSurrogate(lines[line][column]);
                var start = amid ? column - 1 : column;
                var bytes = Encoding.UTF8.GetByteCount(lines[line].AsSpan(0, start));
                Assert.Equal((line, bytes), utf16.ToPlace(source, new Position((uint)line, (uint)column)));
                Assert.Equal(new Position((uint)line, (uint)start), utf16.ToPosition(source, line, bytes));
                Assert.Equal((line, bytes), utf8.ToPlace(source, new Position((uint)line, (uint)bytes)));
                Assert.Equal(new Position((uint)line, (uint)bytes), utf8.ToPosition(source, line, bytes));
            }
        }
    });

    [Theory]
    [InlineData("aé\U0001F529b", 0, 0)]
    [InlineData("aé\U0001F529b", 1, 1)]
    [InlineData("aé\U0001F529b", 2, 1)]
    [InlineData("aé\U0001F529b", 3, 3)]
    [InlineData("aé\U0001F529b", 4, 3)]
    [InlineData("aé\U0001F529b", 5, 3)]
    [InlineData("aé\U0001F529b", 6, 3)]
    [InlineData("aé\U0001F529b", 7, 7)]
    [InlineData("aé\U0001F529b", 8, 8)]
    [InlineData("aé\U0001F529b", 9, 8)]
    public void Amid_a_utf8_sequence_is_its_start(string text, uint character, int column) =>
        Assert.Equal((0, column), new PositionMapper(PositionEncoding.Utf8).ToPlace(SourceText.From(text), new Position(0, character)));

    [Theory]
    [InlineData("ab\ncd", 0, 99, 0, 2)]
    [InlineData("ab\ncd", 1, uint.MaxValue, 1, 2)]
    [InlineData("ab\ncd", 2, 0, 1, 2)]
    [InlineData("ab\ncd", uint.MaxValue, uint.MaxValue, 1, 2)]
    [InlineData("ab\r\n", 0, 3, 0, 2)]
    [InlineData("ab\r\n", 1, 0, 1, 0)]
    [InlineData("", 5, 5, 0, 0)]
    public void Outside_the_text_is_clamped(string text, uint line, uint character, int toLine, int toColumn)
    {
        foreach (var encoding in Enum.GetValues<PositionEncoding>())
            Assert.Equal((toLine, toColumn), new PositionMapper(encoding).ToPlace(SourceText.From(text), new Position(line, character)));
    }

    [Fact]
    public void Bytes_that_are_no_utf8_are_passed_over()
    {
        var text = SourceText.From([(byte)'a', 0xFF, 0xC3, (byte)'b', 0x80, 0xF0, 0x9F]);
        foreach (var encoding in Enum.GetValues<PositionEncoding>())
        {
            var positions = new PositionMapper(encoding);
            for (uint character = 0; character < 12; character++)
            {
                (var line, var column) = positions.ToPlace(text, new Position(0, character));
                Assert.Equal(0, line);
                Assert.InRange(column, 0, text.Length);
                positions.ToPosition(text, 0, column);
            }
        }
    }

    [Theory]
    [InlineData(PositionEncoding.Utf16)]
    [InlineData(PositionEncoding.Utf8)]
    public void Random_changes_keep_the_text_equal_to_a_string(object encoding)
    {
        var positions = new PositionMapper((PositionEncoding)encoding);
        Gen<(int Start, int End, string Text)> edits = Gen.Select(Gen.Int[0, 200], Gen.Int[0, 200], Texts);
        Gen.Select(Texts, edits.Array[1, 8]).Sample((text, changes) =>
        {
            using var document = new OpenDocument("file:///a.nc", 1, SourceText.From(text), () => throw new OperationCanceledException(), () => AnalysisOptions.Default, new Deaf(), () => Task.CompletedTask);
            var reference = text;
            var version = 1;
            foreach ((var a, var b, var inserted) in changes)
            {
                var start = Settle(reference, Math.Min(a, b) % (reference.Length + 1));
                var end = Settle(reference, Math.Max(a, b) % (reference.Length + 1));
                var range = new TextRange(At(reference, start, positions.Encoding), At(reference, end, positions.Encoding));
                document.Change(++version, [new TextDocumentContentChangeEvent(new Utf8Text(Encoding.UTF8.GetBytes(inserted)), range)], positions);
                reference = string.Concat(reference.AsSpan(0, Math.Min(start, end)), inserted, reference.AsSpan(Math.Max(start, end)));
                Assert.Equal(reference, Read(document.Current.Text));
                Assert.Equal(version, document.Current.Version);
            }
        });
    }

    [Fact]
    public async Task Several_changes_of_one_message_follow_each_other()
    {
        await using var client = await TestClient.InitializedAsync();
        await client.OpenAsync("file:///a.nc", "G0 X1\nG0 X2");
        // The second is meant for the text the first has left.
        await client.ChangeAsync("file:///a.nc", 2, TestClient.Insert(0, 0, "(é\U0001F529)\n"), TestClient.Replace(1, 3, 2, 3, "(nc-allow feed-missing)\n"));
        var published = await client.DiagnosticsAsync("file:///a.nc", 2);
        var range = published["diagnostics"]!.AsArray().Single(d => (string?)d!["data"] == "allow-without-reason")!["range"]!;
        Assert.Equal(1, (int)range["start"]!["line"]!);
        Assert.Equal(3, (int)range["start"]!["character"]!);
    }

    [Theory]
    [InlineData("utf-16", 6, 29)]
    [InlineData("utf-8", 9, 32)]
    public async Task Findings_stand_in_the_clients_encoding(string encoding, int start, int end)
    {
        await using var client = await TestClient.InitializedAsync($$$"""{"general":{"positionEncodings":["{{{encoding}}}"]}}""");
        await client.OpenAsync("file:///a.nc", "(é\U0001F529) (nc-allow feed-missing) ");
        var published = await client.DiagnosticsAsync("file:///a.nc", 1);
        var range = published["diagnostics"]!.AsArray().First(d => (string?)d!["data"] == "allow-without-reason")!["range"]!;
        Assert.Equal(start, (int)range["start"]!["character"]!);
        Assert.Equal(end, (int)range["end"]!["character"]!);
    }

    [Fact]
    public async Task A_lone_surrogate_counts_as_one_unit_and_loses_nothing_behind_it()
    {
        await using var client = await TestClient.InitializedAsync();
        await client.NotifyAsync("textDocument/didOpen", """{"textDocument":{"uri":"file:///a.nc","languageId":"nc","version":1,"text":"(\ud83d) \ude00 \u00e9\ud83d\ude00\t\"\\\/ (nc-allow feed-missing)"}}""");
        var published = await client.DiagnosticsAsync("file:///a.nc", 1);
        var range = published["diagnostics"]!.AsArray().First(d => (string?)d!["data"] == "allow-without-reason")!["range"]!;
        Assert.Equal(14, (int)range["start"]!["character"]!);
        await client.NotifyAsync("textDocument/didChange", """{"textDocument":{"uri":"file:///a.nc","version":2},"contentChanges":[{"range":{"start":{"line":0,"character":0},"end":{"line":0,"character":14}},"text":"\udc00"}]}""");
        published = await client.DiagnosticsAsync("file:///a.nc", 2);
        range = published["diagnostics"]!.AsArray().First(d => (string?)d!["data"] == "allow-without-reason")!["range"]!;
        Assert.Equal(1, (int)range["start"]!["character"]!);
    }

    /// <summary>LSP 3.17, didOpen: not to be sent twice without a close between. Where it is, the client has the newer text; one close closes it.</summary>
    [Theory]
    [InlineData(2)]
    [InlineData(1)]
    public async Task Of_a_document_that_is_opened_twice_the_newer_text_counts(int version)
    {
        const string Uri = "file:///job/twice.nc";
        await using var client = await TestClient.InitializedAsync();
        await client.OpenAsync(Uri, "G1 (nc-allow feed-missing)\nM30");
        Assert.Contains((await client.DiagnosticsAsync(Uri, 1))["diagnostics"]!.AsArray(), finding => (string?)finding!["data"] == "allow-without-reason");
        await client.OpenAsync(Uri, "O7 (NEWER)\n\nG999\nM30", version);
        var newer = await client.DiagnosticsAsync(Uri, version);
        Assert.Equal(2, (int)newer["diagnostics"]!.AsArray().Single(finding => (string?)finding!["data"] == "code-unknown")!["range"]!["start"]!["line"]!);
        await client.ChangeAsync(Uri, 3, TestClient.Insert(0, 0, "\n"));
        Assert.Equal(3, (int)(await client.DiagnosticsAsync(Uri, 3))["diagnostics"]!.AsArray().Single(finding => (string?)finding!["data"] == "code-unknown")!["range"]!["start"]!["line"]!);
        await client.NotifyAsync("textDocument/didClose", $$"""{"textDocument":{"uri":"{{Uri}}"} }""");
        Assert.Equal(-32602, await client.ErrorOfAsync("textDocument/documentSymbol", $$"""{"textDocument":{"uri":"{{Uri}}"} }"""));
    }

    static string Read(SourceText text)
    {
        using var stream = new MemoryStream();
        text.WriteTo(stream);
        return Encoding.UTF8.GetString(stream.ToArray());
    }

    static string[] Lines(string text) => text.ReplaceLineEndings("\n").Split('\n');

    /// <summary>No position of the protocol stands amid a surrogate pair or between the two characters of a line end.</summary>
    static int Settle(string text, int index) =>
        index > 0 && index < text.Length && (char.IsLowSurrogate(text[index]) || (text[index] == '\n' && text[index - 1] == '\r')) ? index - 1 : index;

    static Position At(string text, int index, PositionEncoding encoding)
    {
        var before = Lines(text[..index]);
        var last = before[^1];
        return new Position((uint)(before.Length - 1), (uint)(encoding == PositionEncoding.Utf8 ? Encoding.UTF8.GetByteCount(last) : last.Length));
    }

    /// <summary>What comes of the versions is not looked at.</summary>
    sealed class Deaf : IProgramListener
    {
        public void Analysed(DocumentSnapshot snapshot, AnalysedProgram program, Func<bool> isNewest)
        {
        }

        public void Found(DocumentSnapshot snapshot, AnalysedProgram program, ImmutableArray<Finding> findings, Func<bool> isNewest)
        {
        }

        public void Rested(DocumentSnapshot snapshot, AnalysedProgram program, ImmutableArray<Finding> findings, Func<bool> isNewest)
        {
        }

        public void Failed(DocumentSnapshot snapshot, Exception fault, Func<bool> isNewest)
        {
        }
    }

    /// <summary>RFC 8089 section 2: localhost is the computer itself; what lies on another one is no file of this one.</summary>
    [Theory]
    [InlineData("file:///job/part.nc", "/job/part.nc")]
    [InlineData("file://localhost/job/part.nc", "/job/part.nc")]
    [InlineData("FILE://LOCALHOST/job/a%20b.nc", "/job/a b.nc")]
    [InlineData("file:///job/../job/p%61rt.nc", "/job/part.nc")]
    [InlineData("file://other/job/part.nc", null)]
    [InlineData("untitled:Untitled-1", null)]
    public void An_address_stands_for_a_file_of_this_computer_or_for_none(string uri, string? path)
    {
        if (!OperatingSystem.IsWindows())
            Assert.Equal(path, DocumentUri.ToPath(uri));
    }
}
