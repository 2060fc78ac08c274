using System.Text;
using System.Text.Json;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Server.Documents;
using NcLanguage.Server.Features;
using NcLanguage.Server.Protocol;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Server.Tests;

/// <summary>What goes out behind a key is what would go out anew, and all but a few of the findings are not put into the protocol's words again. Counted in findings mapped.</summary>
public sealed class ShownFindingsTests
{
    // Every tenth block misses a number; a comment before it has letters that are one, two and four bytes long.
    static string Program(int blocks) =>
        "G21 G90 G17 G54\nT1 M6\nG0 G43 H1 Z50\nS1800 M3\nG1 X1 Y1 F100\n"
        + string.Concat(Enumerable.Range(0, blocks).Select(i => i % 10 == 5 ? $"(é\U0001F529) G1 X{i} F@\n" : $"G1 X{i} Y{i % 7}\n")) + "G0 Z100\nM30\n";

    readonly PositionMapper _positions = new(PositionEncoding.Utf16);
    int _mapped;

    ShownFindings Show(ProgramAnalysis analysis, ShownFindings? before, bool areNotes = false, bool hasLinks = false)
    {
        _mapped = 0;
        var setters = new SetterLines(analysis.Main);
        return ShownFindings.Of(analysis.Text, analysis.Findings, [.. analysis.Findings.Select(_ => areNotes)], hasLinks, before, setters.Of, (finding, _) =>
        {
            _mapped++;
            return new Diagnostic(
                _positions.ToRange(analysis.Text, finding.Line, finding.StartColumn, finding.EndColumn),
                new DiagnosticText(finding.Message, DiagnosticSeverity.Error, finding.Id),
                [.. analysis.Related(finding).Select(place => new DiagnosticRelatedInformation(_positions.ToRange(analysis.Text, place.Line, place.StartColumn, place.EndColumn), new RelatedText("file:///a.nc", place.Message)))]);
        });
    }

    static string Json(ShownFindings shown) => JsonSerializer.Serialize(new PublishDiagnosticsParams("file:///a.nc", 1, shown.Diagnostics), ProtocolJson.Default.PublishDiagnosticsParams);

    static ProgramAnalysis Analyse(string text) => ProgramAnalysis.Create(SourceText.From(text), Setup.None, MachineProfile.IsoMill with { IsChosen = true });

    static ProgramAnalysis Edit(ProgramAnalysis before, int line, int column, int length, string text)
    {
        var at = before.Text.OffsetOf(line, column);
        return before.WithText(before.Text.WithChange(at, at + length, Encoding.UTF8.GetBytes(text)));
    }

    [Theory]
    [InlineData(2_000, 60)]
    [InlineData(4_000, 60)]
    [InlineData(8_000, 60)]
    public void A_key_maps_the_findings_of_its_chunk_only(int blocks, int most)
    {
        var before = Analyse(Program(blocks));
        var shown = Show(before, null);
        Assert.Equal(before.Findings.Length, _mapped);
        Assert.InRange(_mapped, blocks / 10, blocks);
        var after = Edit(before, blocks / 2, 0, 0, "@");
        var now = Json(Show(after, shown));
        Assert.InRange(_mapped, 1, most);
        Assert.Equal(Json(Show(after, null)), now);
    }

    [Theory]
    [InlineData(2_000, "\n")]
    [InlineData(8_000, "\n")]
    [InlineData(8_000, "G1 X1.5 Y2\nG1 X2.5\n")]
    public void Lines_that_come_and_go_map_the_findings_of_their_own_place_only(int blocks, string lines)
    {
        var analysis = Analyse(Program(blocks));
        var shown = Show(analysis, null);
        analysis = Edit(analysis, blocks / 2, 0, 0, lines);
        shown = Show(analysis, shown);
        Assert.InRange(_mapped, 0, 10);
        Assert.Equal(Json(Show(analysis, null)), Json(shown));
        analysis = Edit(analysis, blocks / 2, 0, lines.Length, "");
        shown = Show(analysis, shown);
        Assert.InRange(_mapped, 0, 10);
        Assert.Equal(Json(Show(analysis, null)), Json(shown));
    }

    [Fact]
    public void What_a_finding_refers_to_is_told_anew_where_another_block_sets_it()
    {
        // The feed of every cut is told, with the block that set it: a feed of no use stands behind the first of them only for a while.
        var text = "G21 G90 G17 G54\nT1 M6\nG0 G43 H1 Z50\nS1800 M3\nG1 X1 Y1 F100\n" + string.Concat(Enumerable.Range(0, 40).Select(i => $"G1 X{i}\nG0 G40 X{i} F900000\nG1 X{i}.5\n")) + "G0 Z100\nM30\n";
        var analysis = Analyse(text);
        Assert.Contains(analysis.Findings, finding => new SetterLines(analysis.Main).Of(finding) >= 0);
        var shown = Show(analysis, null);
        (int Line, string Text)[] edits = [(5, "F200\n"), (3, "\n"), (60, "G0 F300\n"), (5, "M5\n"), (4, "G20\n"), (30, "G91\n")];
        foreach ((var line, var inserted) in edits)
        {
            analysis = Edit(analysis, line, 0, 0, inserted);
            shown = Show(analysis, shown);
            Assert.Equal(Json(Show(analysis, null)), Json(shown));
            // Written twice, it is kept as it was written.
            Assert.Equal(Json(shown), Json(shown));
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void Random_edits_tell_what_is_told_without_a_before(int seed)
    {
        var random = new Random(seed);
        string[] blocks = ["G1 X1 F900000\n", "G0 X5\n", "F100\n", "S90000 M3\n", "M5\n", "G1 X2 Y3 Q\n", "G91\n", "G90\n", "T2 M6\n", "(é\U0001F529) G1 X3 F@\n", "G20\n", "G81 Z-5 R2\n", "G80\n", "N7\n", "\n"];
        var analysis = Analyse("G21 G90 G17 G54\n" + string.Concat(Enumerable.Range(0, 500).Select(_ => blocks[random.Next(blocks.Length)])) + "M30\n");
        var shown = Show(analysis, null);
        var (all, mapped) = (0, 0);
        for (var edit = 0; edit < 150; edit++)
        {
            var line = random.Next(analysis.Text.LineCount);
            var at = analysis.Text.OffsetOf(line, 0);
            var end = random.Next(3) == 0 ? analysis.Text.OffsetOf(Math.Min(line + random.Next(4), analysis.Text.LineCount - 1), 0) : at;
            analysis = analysis.WithText(analysis.Text.WithChange(at, end, Encoding.UTF8.GetBytes(random.Next(4) == 0 ? "@" : blocks[random.Next(blocks.Length)])));
            shown = Show(analysis, shown);
            mapped += _mapped;
            Assert.Equal(Json(Show(analysis, null)), Json(shown));
            all += _mapped;
        }
        Assert.InRange(mapped, 0, all / 2);
    }

    [Fact]
    public void Whatever_is_edited_the_same_goes_out_as_without_a_before()
    {
        var analysis = Analyse(Program(600));
        var shown = Show(analysis, null);
        (int Line, int Column, int Length, string Text)[] edits =
        [
            (10, 0, 0, "(é) "), // the finding in this line moves
            (10, 1, 2, "\U0001F529"), // its line is as long in letters as before, but not in bytes
            (300, 0, 0, "\n"),
            (301, 0, 0, "G1 F@\n"),
            (20, 0, 40, ""),
            (0, 0, 3, "G20"),
            (500, 0, 0, "G91 "),
            (598, 0, 0, "@\n@\n"),
        ];
        foreach ((var line, var column, var length, var text) in edits)
        {
            analysis = Edit(analysis, line, column, length, text);
            shown = Show(analysis, shown);
            Assert.Equal(Json(Show(analysis, null)), Json(shown));
        }
    }

    [Fact]
    public void Where_what_is_said_hangs_on_more_than_the_finding_it_is_said_anew()
    {
        var analysis = Analyse(Program(600));
        var shown = Show(analysis, null);
        var all = _mapped;
        Show(analysis, shown);
        Assert.Equal(0, _mapped);
        Show(analysis, shown, areNotes: true);
        Assert.Equal(all, _mapped);
        Show(analysis, shown, hasLinks: true);
        Assert.Equal(all, _mapped);
    }
}
