using System.Text.RegularExpressions;
using NcLanguage.Checks;
using NcLanguage.Reports.Holes;

namespace NcLanguage.Corpus.Tests;

/// <summary>Every program of the corpus is one that a careful setter would run: nothing is found in it, and it moves and drills as the reviewed files say.</summary>
/// <remarks>After a change that is meant to change traces, NC_CORPUS_WRITE=1 writes the moves and the holes anew under the heads; what comes out is to be
/// reviewed against the closed forms of the heads, which ClosedForms asserts.</remarks>
public sealed partial class SoundProgramTests
{
    static readonly bool IsWriting = Environment.GetEnvironmentVariable("NC_CORPUS_WRITE") == "1";

    public static TheoryData<string> Programs => [.. CorpusProgram.Names];

    [Fact]
    public void There_are_programs_of_many_kinds() => Assert.InRange(CorpusProgram.Names.Length, 28, 200);

    [Theory]
    [MemberData(nameof(Programs))]
    public void Nothing_is_found_but_the_notes_that_the_head_gives_a_reason_for(string name)
    {
        var program = CorpusProgram.Of(name);
        Assert.Empty(program.Mistakes);
        var found = program.Analyse().Findings.Select(finding => (finding.Severity, Place: $"{finding.Name} {finding.Line + 1}", finding.Message)).ToList();
        Assert.DoesNotContain(found, finding => finding.Severity != Severity.Note);
        var expected = NoteInHead().Matches(TraceFile.Read(program.FileBeside(".trace.txt")).Head).Select(match => match.Groups[1].Value);
        Assert.Equal(expected.Order(), found.Select(finding => finding.Place).Order());
    }

    [Theory]
    [MemberData(nameof(Programs))]
    public void It_moves_as_the_reviewed_trace(string name)
    {
        var program = CorpusProgram.Of(name);
        var path = program.FileBeside(".trace.txt");
        var (head, moves) = TraceFile.Read(path);
        if (IsWriting)
            File.WriteAllText(path, head + (moves = TraceFile.Render(program)));
        Assert.NotEmpty(head);
        Assert.Equal(moves, TraceFile.Render(program));
    }

    [Theory]
    [MemberData(nameof(Programs))]
    public void It_drills_as_the_reviewed_table(string name)
    {
        var program = CorpusProgram.Of(name);
        var path = program.FileBeside(".holes.csv");
        var report = HoleReport.Of(program.Path, program.Analyse().Main);
        if (report.Holes.Count == 0)
        {
            Assert.False(File.Exists(path), "A program without holes has a table of them.");
            return;
        }
        using var table = new StringWriter { NewLine = "\n" };
        HoleCsv.Write(report, table);
        var holes = table.ToString().ReplaceLineEndings("\n");
        if (IsWriting)
            File.WriteAllText(path, holes);
        Assert.Equal(File.ReadAllText(path).ReplaceLineEndings("\n"), holes);
    }

    /// <summary>A line "# note NAME LINE: reason".</summary>
    [GeneratedRegex(@"^# note (\S+ \d+): \S", RegexOptions.Multiline)]
    private static partial Regex NoteInHead();
}
