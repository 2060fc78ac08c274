using Markdig;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using NcLanguage.Control.Flow;
using NcLanguage.Editing.Tests.Support;
using NcLanguage.Machine.Profiles;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing.Tests.Hovers;

/// <summary>Markdown that carries text of a program, a setup or a machine shows it as text. Judged by a CommonMark reader (Markdig) with the extensions that
/// editors have on: bare addresses become links there.</summary>
public sealed class EscapingTests
{
    static readonly MarkdownPipeline s_reader = new MarkdownPipelineBuilder().UseAutoLinks().UsePipeTables().UseEmphasisExtras().UseTaskLists().Build();

    static readonly string[] s_hostile =
    [
        "<script>alert(1)</script>", "<img src=x onerror=alert(1)>", "[press](command:evil)", "![see](http://x.invalid/y.png)", "http://x.invalid/a", "www.x.invalid", "a@x.invalid",
        "``` x ``` `y` ``z``", "<http://x.invalid>", "[a]: http://x.invalid", "**b** _c_ ~~d~~", "&lt;b&gt;", "| a | b |",
    ];

    public static TheoryData<string> Hostile => [.. s_hostile];

    [Theory]
    [MemberData(nameof(Hostile))]
    public void Nothing_but_text_comes_out(string hostile)
    {
        var comment = hostile.Replace("(", "", StringComparison.Ordinal).Replace(")", "", StringComparison.Ordinal);
        var name = System.Text.Json.JsonEncodedText.Encode(hostile);
        var program = $"""
            O0001 ({comment})
            G21 G90 G17 G54 ({comment})
            T1 M6 ({comment})
            G43 H1 G0 X-20 Y10 Z5 {hostile}
            S{hostile} M3 F[{hostile}]
            #101={hostile}
            #<{hostile}>=1
            G99 G81 X30 Y10 Z-3 R2 F100
            X70
            G80
            M98 P1200 {hostile}
            G65 P1200 A{hostile} B[1+{hostile}]
            IF [#101 EQ {hostile}] GOTO {hostile}
            WHILE [{hostile}] DO1
            END1
            (nc-allow feed-missing: {comment})
            {hostile}
            M30
            """;
        var setup = $$"""
            { "frame": "G54", "material": "{{name}}", "clearance": 2, "stock": { "min": [0, 0, -12], "max": [120, 60, 0] },
              "obstacles": [ { "name": "{{name}}", "min": [25, 0, 0], "max": [45, 20, 25] } ],
              "tools": [ { "number": 1, "kind": "drill", "diameter": 10, "material": "{{name}}", "length": 95, "lengthOffset": 1 } ] }
            """;
        var analysis = Editor.Analyse(program, setup, MachineProfile.IsoMill with { Name = hostile, IsChosen = true }, new(Programs: new Beside(hostile)));
        var shown = new HashSet<string>();
        for (var line = 0; line < analysis.Text.LineCount; line++)
        {
            for (var column = 0; column <= analysis.Text.Line(line).Length; column++)
            {
                if (Hover.At(analysis, line, column) is { } hover)
                    shown.Add(hover.Markdown);
                foreach (var entry in Completion.At(analysis, line, column, takesSnippets: true).Entries)
                    shown.Add(entry.Documentation ?? "");
                foreach (var signature in Signatures.At(analysis, line, column)?.Lines ?? [])
                    shown.Add(signature.Documentation);
            }
        }
        Assert.InRange(shown.Count, 20, int.MaxValue);
        foreach (var markdown in shown)
        {
            var read = Markdig.Markdown.Parse(markdown, s_reader);
            Assert.True(
                !read.Descendants().Any(node => node is HtmlInline or HtmlBlock or LinkInline or AutolinkInline or LinkReferenceDefinition or HtmlEntityInline),
                $"Not text alone:\n{markdown}\n\n{Markdig.Markdown.ToHtml(markdown, s_reader)}");
        }
        // It is there, and as it was written: the clamp that the traverse meets.
        var plain = hostile.Length > 60 ? hostile[..60] : hostile;
        Assert.Contains(shown, markdown => Markdig.Markdown.ToPlainText(markdown, s_reader).Contains(plain, StringComparison.Ordinal));
    }

    sealed class Beside(string name) : ICalledPrograms
    {
        public CalledFile? Find(int number) => number == 1200 ? new CalledFile(name, "/" + name, SourceText.From($"O1200 ({name})\nG0 Z5 {name}\nM99\n")) : null;

        public IReadOnlyList<(int Number, string Name)> List() => [(1200, name)];
    }
}
