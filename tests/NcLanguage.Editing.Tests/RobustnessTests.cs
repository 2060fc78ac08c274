using System.Runtime.CompilerServices;
using System.Text;
using CsCheck;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Flow;
using NcLanguage.Editing.Tests.Outlines;
using NcLanguage.Editing.Tests.Support;
using NcLanguage.Machine.Files;
using NcLanguage.Machine.Profiles;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing.Tests;

/// <summary>No answer ever throws, anywhere, and an edited program answers as a fresh one.</summary>
public sealed class RobustnessTests
{
    static readonly string[] Blocks =
    [
        "G21 G90 G17 G54", "G91", "G90", "T4 M6", "T6 M6", "T99 M6", "T99999999", "G43 H4", "S1500 M3", "S0 M4", "M5", "M8", "M9", "F120", "F0", "G95 F.1", "G93 F2",
        "G0 X10 Y10 Z50", "G1 X5", "G2 X20 Y0 I5 J0", "G3 X0 R30", "G2 I5", "G98 G81 X10 Y10 Z-5 R2", "G99 G82 X30 Z-4 R2 P0.5", "G83 X40 Z-20 R2 Q5",
        "G83 Z-200 Q.5 X1", "G73 X1 Q0", "G84 X1 Z-9 R5", "G76 X1 Q1", "G86 X1 P1", "G87 X1 Q1 K3 Z-5", "G88 X1", "G89 Y1", "X50", "Y20", "Z-9", "R5", "X60 Y30 L3", "X1 L99",
        "G80", "G4 P2", "G4 X2", "G4", "G28 G91 Z0", "G30", "G53 G0 Z0", "/X90 Y10", "/2 N5", "M30", "M99", "%", "O2000", "O100 SUB", ":7", "(clamp ahead)", "(never closed", "; end",
        "", "   ", "N10 G0 X5", "N10", "G0 G1 X1", "X", "X1 X2", "#1=5", "#[1+1]=#1", "##1=3", "#<größe>=2", "X#1", "G#1 X1", "X[1/0]", "G20", "G20 G0 X1.5", "G18", "G19", "G17",
        "G41 D1", "G40", "G68 X0 Y0 R30", "G69", "G51 P2", "G51.1 X0", "G16", "G15", "G96 S60", "IF [#1 GT 2] GOTO 10", "GOTO", "G55", "G54.1 P3", "G92 X0", "G52 X1", "G10 L2 P1 X0",
        "G65 P100 A1 X2", "M98 P1", "G999", "M777", "Ø8", "X99999999999999999999999999", "G81 X1e5", "X-0.0000001",
    ];

    const string Letters = "GXYZRPQFSTMNIJKLO0123456789.-+#[]()%/;: \r\n";

    internal static readonly Gen<byte[]> AnyProgram = Gen.Frequency(
        (6, Gen.Int[0, Blocks.Length - 1].Select(i => Blocks[i]).Array[0, 40].Select(lines => Encoding.UTF8.GetBytes(string.Join('\n', lines)))),
        (1, Gen.Byte.Array[0, 300]),
        (1, Gen.Int[0, Letters.Length - 1].Select(i => (byte)Letters[i]).Array[0, 300]));

    internal static readonly Gen<MachineProfile> AnyMachine = Gen.Select(Gen.Int[0, 511], Gen.Int[0, 2], (bits, dwell) => MachineProfile.IsoMill with
    {
        IsChosen = (bits & 256) != 0,
        Readings = new Readings
        {
            Dwell = (DwellReading)dwell,
            Integers = (IntegerReading)(bits & 1),
            HolePositions = (HolePositionReading)(bits >> 1 & 1),
            ReturnLevel = (ReturnLevelReading)(bits >> 2 & 1),
            RapidPath = (RapidPathReading)(bits >> 3 & 1),
            StopsAct = (StopReading)(bits >> 4 & 1),
            Repeats = (RepeatReading)(bits >> 5 & 1),
            RapidsEndCycle = (bits & 64) != 0,
            Units = (UnitReading)(bits >> 7 & 1),
            LengthOffset = (LengthOffsetReading)(bits >> 7 & 1),
        },
    });

    [Fact]
    public void Nothing_throws_anywhere()
    {
        var setup = Editor.Setup(Editor.PlateSetup);
        Gen.Select(AnyMachine, AnyProgram, Gen.Bool, Gen.Bool).Sample((machine, bytes, hasSetup, skip) =>
        {
            var analysis = ProgramAnalysis.Create(
                SourceText.From(bytes), hasSetup ? setup : Machine.Setups.Setup.None, machine, new AnalysisOptions(Portable: skip, Skip: skip));
            AskEverything(analysis);
        }, iter: 150);
    }

    public static TheoryData<string> Corpus { get; } = [.. Directory.GetFiles(CorpusFolder(), "*.nc", SearchOption.AllDirectories).Select(path => Path.GetRelativePath(CorpusFolder(), path))];

    /// <summary>Sound programs of many kinds, with loops, calls and frames, answer at every place too.</summary>
    [Theory]
    [MemberData(nameof(Corpus))]
    public void Nothing_throws_in_the_corpus(string program)
    {
        var path = Path.Combine(CorpusFolder(), program);
        var inputs = JobFiles.Resolve(path, CorpusFolder(), DiskFiles.Instance, JobOptions.None);
        AskEverything(ProgramAnalysis.Create(
            SourceText.From(File.ReadAllBytes(path)), inputs.Setup, inputs.Machine, new AnalysisOptions(Programs: new SiblingPrograms(path, DiskFiles.Instance))));
    }

    static string CorpusFolder([CallerFilePath] string here = "") => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", "corpus"));

    /// <summary>The most that a block may ask for: 9,999 repeats, 10,000 pecks.</summary>
    [Theory]
    [InlineData("G91 G99 G81 X1 Z-1 R1 F100 L9999")]
    [InlineData("G99 G83 X1 Z-99.99 R0 Q.01 F100")]
    [InlineData("G99 G83 X1 Z-9 R0 Q.001 F100 L9999")]
    public void The_greatest_blocks_are_told_shortly(string block)
    {
        var analysis = Editor.Analyse("G21 G90 G0 X0 Y0 Z0\n" + block, Editor.PlateSetup);
        Assert.InRange(Hover.At(analysis, 1, 3)!.Markdown.Length, 100, 4000);
        Assert.InRange(InlayHints.In(analysis, 0, 1).Count, 1, 1);
    }

    static void AskWhileTyping(ProgramAnalysis analysis, int line, int column, int length)
    {
        var offer = Completion.At(analysis, line, column, takesSnippets: column % 2 == 0);
        Assert.True(offer.Entries.IsEmpty || (offer.StartColumn <= column && column <= offer.EndColumn && offer.EndColumn <= length));
        Assert.All(offer.Entries, entry =>
        {
            Assert.False(string.IsNullOrWhiteSpace(entry.Label + entry.Detail) || entry.NewText.Length == 0);
            Assert.DoesNotMatch("NaN|Infinity|E[+-][0-9]", entry.Label + entry.NewText + entry.Detail);
        });
        if (Signatures.At(analysis, line, column) is { } signatures)
            Assert.DoesNotContain("NaN", signatures.Lines[signatures.Active].Label + signatures.Lines[signatures.Active].Documentation, StringComparison.Ordinal);
    }

    static void AskEverything(ProgramAnalysis analysis)
    {
        var text = analysis.Text;
        for (var line = -1; line <= text.LineCount; line++)
        {
            var length = line >= 0 && line < text.LineCount ? text.Line(line).Length : 3;
            for (var column = -1; column <= length + 1; column++)
            {
                // Each costs a run of its block: at every third place they are met by chance often enough.
                if ((line + column) % 3 == 0)
                    AskWhileTyping(analysis, line, column, length);
                if (Hover.At(analysis, line, column) is { } answer)
                {
                    Assert.True(answer.Line == line && answer.StartColumn <= column && column <= answer.EndColumn && answer.EndColumn <= length);
                    Assert.False(string.IsNullOrWhiteSpace(answer.Markdown));
                    Assert.DoesNotContain("NaN", answer.Markdown, StringComparison.Ordinal);
                    Assert.DoesNotContain("Infinity", answer.Markdown, StringComparison.Ordinal);
                }
            }
            Assert.Equal(line >= 0 && line < text.LineCount, StateAt.Line(analysis, line) is not null);
        }
        foreach (var (first, last) in new[] { (0, int.MaxValue), (-3, 2), (text.LineCount - 1, text.LineCount + 9), (5, 1), (int.MinValue, int.MinValue) })
        {
            Assert.All(InlayHints.In(analysis, first, last), hint =>
                Assert.True(hint.Line >= first && hint.Line <= last && hint.Column >= 0 && hint.Column <= text.Line(hint.Line).Length && hint.Text.Length <= InlayHints.LongestText));
            Assert.All(Fixes.In(analysis, first, last), fix => Assert.InRange(fix.Finding.Line, first, last));
        }
        OutlineTests.Nests(Outline.Of(analysis), 0, text.LineCount - 1);
        var edits = Fixes.AllSafe(analysis);
        var whole = Fixes.In(analysis, 0, int.MaxValue).Where(fix => fix.Safety == Checks.FixSafety.Safe && fix.Edits.All(edit => edits.Contains(edit))).ToList();
        Assert.All(edits, edit => Assert.Contains(whole, fix => fix.Edits.Contains(edit)));
        HoleAnswers.Of(analysis);
    }

    [Fact]
    public void An_edited_program_answers_as_a_fresh_one()
    {
        var setup = Editor.Setup(Editor.PlateSetup);
        Gen.Select(AnyMachine, AnyProgram.Array[1, 8], Gen.Select(Gen.Double[0, 1], Gen.Int[0, 30], AnyProgram).Array[1, 4]).Sample((machine, parts, edits) =>
        {
            var text = SourceText.From([.. parts.SelectMany(part => part.Append((byte)'\n'))]);
            var analysis = ProgramAnalysis.Create(text, setup, machine);
            foreach (var (where, length, insert) in edits)
            {
                var from = (int)(where * text.Length);
                text = text.WithChange(from, Math.Min(from + length, text.Length), insert);
                analysis = analysis.WithText(text);
            }
            var fresh = ProgramAnalysis.Create(SourceText.From(text.ToBytes()), setup, machine);
            Assert.Equal(InlayHints.In(fresh, 0, int.MaxValue), InlayHints.In(analysis, 0, int.MaxValue));
            Assert.Equal(Fixes.AllSafe(fresh).AsEnumerable(), Fixes.AllSafe(analysis));
            Assert.Equal(HoleAnswers.Of(fresh).Holes.AsEnumerable(), HoleAnswers.Of(analysis).Holes);
            Assert.Equal(Flat(Outline.Of(fresh)), Flat(Outline.Of(analysis)));
            for (var line = 0; line < text.LineCount; line += 3)
                for (var column = 0; column <= text.Line(line).Length; column += 2)
                    Assert.Equal(Hover.At(fresh, line, column), Hover.At(analysis, line, column));
        }, iter: 60);
    }

    static List<(string, string, int, int)> Flat(IEnumerable<OutlineItem> items) =>
        [.. items.SelectMany(item => Flat(item.Children).Prepend((item.Name, item.Detail, item.FirstLine, item.LastLine)))];
}
