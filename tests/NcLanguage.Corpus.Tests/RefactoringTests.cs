using System.Text;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Comparison;
using NcLanguage.Control.Moves;
using NcLanguage.Editing;
using NcLanguage.Editing.Formatting;
using NcLanguage.Editing.Refactorings;
using NcLanguage.Machine.Profiles;
using NcLanguage.Syntax.Text;
using Xunit.Abstractions;

namespace NcLanguage.Corpus.Tests;

/// <summary>Every refactoring at every place of the corpus where it fits, under both built-in ways of reading: the motion is held against the old one here, not
/// by the refactoring's own proof, and undoing gives every byte back.</summary>
public sealed class RefactoringTests(ITestOutputHelper output)
{
    /// <summary>What a refactoring may shift a place by, mm: what numbers are written to.</summary>
    const double Tolerance = 0.0005 + 1e-9;

    static readonly Readings[] Ways = [MachineProfile.IsoMill.Readings, MachineProfile.TrainingMill.Readings];

    public static TheoryData<string> Names => [.. RefactoringList.All.Select(refactoring => refactoring.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void The_motion_stays_and_undo_gives_the_bytes_back(string name)
    {
        var refactoring = RefactoringList.Find(name)!;
        var (places, refusals) = (0, new SortedDictionary<string, int>(StringComparer.Ordinal));
        foreach (var readings in Ways)
        {
            foreach (var program in CorpusProgram.Names)
            {
                var analysis = CorpusProgram.Of(program).Analyse(Written(program, name, readings), readings: readings);
                var seen = new HashSet<string>(StringComparer.Ordinal);
                foreach (var lines in PlacesOf(refactoring, analysis))
                {
                    if (refactoring.TitleFor(analysis, lines) is null)
                        continue;
                    var result = refactoring.Of(analysis, lines, default);
                    if (result.Refusal is { } sentence)
                    {
                        var told = sentence.StartsWith("The new text would", StringComparison.Ordinal) ? $"{program} {lines}: {sentence}" : sentence;
                        refusals[told] = refusals.GetValueOrDefault(told) + 1;
                        continue;
                    }
                    if (!seen.Add(string.Join('|', result.Edits)))
                        continue;
                    places++;
                    var edited = Draft.Apply(analysis.Text, result.Edits);
                    Assert.Equal(analysis.Text.ToBytes(), Undo(analysis.Text, result.Edits, edited));
                    // A program read the other way than it was written for is not sound: there a finding may well be told of more blocks.
                    if (analysis.Findings.IsEmpty)
                        Assert.Empty(Brought(analysis, edited));
                    if (MovesOtherwise.Contains(name))
                        DrillsTheSameSooner($"{program}, {lines}", analysis, edited);
                    else
                        MovesTheSame($"{program}, {lines}", analysis, edited);
                }
            }
        }
        output.WriteLine($"{name}: {places} places");
        foreach (var (sentence, count) in refusals)
            output.WriteLine($"  {count} x {sentence}");
        Assert.True(places > 0, $"{name} fits nowhere in the corpus");
    }

    /// <summary>Those that change the way between the holes on purpose.</summary>
    static readonly HashSet<string> MovesOtherwise = ["returnLevels", "allReturnLevels", "orderHoles"];

    /// <summary>The same holes in any order, by the same tools at the same depths, no finding more, and less time.</summary>
    static void DrillsTheSameSooner(string where, ProgramAnalysis analysis, SourceText edited)
    {
        var after = analysis.WithText(edited);
        Assert.Equal(Holes(analysis), Holes(after));
        Assert.True(after.Findings.Length <= analysis.Findings.Length, $"{where}: {string.Join(", ", after.Findings.Select(finding => finding.Message))}\n{edited}");
        Assert.True(Seconds(after) < Seconds(analysis), $"{where}: {Seconds(analysis)} s became {Seconds(after)} s");

        static List<string> Holes(ProgramAnalysis analysis) =>
        [
            .. HoleTable.Of(analysis.Main).Select(row => FormattableString.Invariant(
                $"T{row.Hole.Tool} G{row.Hole.Cycle} X{row.Hole.X:0.###} Y{row.Hole.Y:0.###} R{row.Hole.RLevel:0.###} Z{row.Hole.Bottom:0.###} {row.Hole.DwellSeconds} {row.Hole.Feed} {row.Hole.Speed} {row.Hole.Peck}"))
                .Order(StringComparer.Ordinal),
        ];
    }

    static double Seconds(ProgramAnalysis analysis)
    {
        var seconds = 0.0;
        foreach (var part in analysis.Main.Results)
            seconds += part.Seconds;
        return seconds;
    }

    /// <summary>What some undo, the corpus does not have: it is written first.</summary>
    static readonly Dictionary<string, string> Undone = new() { ["arcToCentre"] = "arcToRadius", ["toPositions"] = "toDistances", ["gatherCycle"] = "writeOutCycle" };

    /// <summary>The program of the corpus, or what another refactoring makes of it.</summary>
    static string? Written(string program, string name, Readings readings)
    {
        if (name == "orderHoles")
            return Crossed(program);
        if (!Undone.TryGetValue(name, out var first))
            return null;
        var analysis = CorpusProgram.Of(program).Analyse(readings: readings);
        return Draft.Apply(analysis.Text, RefactoringList.Find(first)!.Of(analysis, new Lines(0, analysis.Text.LineCount - 1, false), default).Edits).ToString();
    }

    /// <summary>The corpus drills in good order: of the tapped block two holes of the square change places, so that the way crosses itself.</summary>
    static string? Crossed(string program) => program == "tapped-block"
        ? CorpusProgram.Of(program).Text.Replace("N70 X75\nN80 Y45\nN90 X15\n", "N70 X75 Y45\nN80 X15\nN90 X75 Y15\n", StringComparison.Ordinal)
        : null;

    static IEnumerable<Lines> PlacesOf(Refactoring refactoring, ProgramAnalysis analysis)
    {
        const int Stretch = 6;
        var last = analysis.Text.LineCount - 1;
        if (refactoring.Reach != Reach.Place)
            yield return Lines.At(0);
        if (refactoring.Reach == Reach.Program)
            yield break;
        yield return new Lines(0, last, false);
        for (var line = 0; line + Stretch <= last; line += Stretch / 2)
            yield return new Lines(line, line + Stretch - 1, false);
        for (var line = 0; refactoring.Reach == Reach.Place && line <= last; line++)
            yield return Lines.At(line);
    }

    /// <summary>The rules that find more than before, notes aside.</summary>
    static IEnumerable<string> Brought(ProgramAnalysis analysis, SourceText edited) =>
        from finding in analysis.WithText(edited).Findings
        where finding.Severity != Severity.Note
        group finding by finding.Name into found
        where found.Count() > analysis.Findings.Count(finding => finding.Name == found.Key)
        select $"{found.Key}: {found.First().Message}\n{edited}";

    /// <summary>Takes the edits back one by one, from the last.</summary>
    static byte[] Undo(SourceText text, IReadOnlyList<RangeEdit> edits, SourceText edited)
    {
        var back = new List<(int Start, int End, byte[] Old)>();
        var (shift, end) = (0, 0);
        foreach (var edit in edits)
        {
            var from = text.OffsetOf(edit.Stretch.StartLine, edit.Stretch.StartColumn);
            var to = text.OffsetOf(edit.Stretch.EndLine, edit.Stretch.EndColumn);
            Assert.True(from >= end, "Edits lie apart and in order.");
            end = to;
            var written = Encoding.UTF8.GetByteCount(edit.NewText);
            back.Add((from + shift, from + shift + written, text.ToBytes()[from..to]));
            shift += written - (to - from);
        }
        for (var i = back.Count - 1; i >= 0; i--)
            edited = edited.WithChange(back[i].Start, back[i].End, back[i].Old);
        return edited.ToBytes();
    }

    static void MovesTheSame(string where, ProgramAnalysis analysis, SourceText edited)
    {
        var (before, after) = (MotionList.Of(analysis.Text, analysis.Main.Job, default), MotionList.Of(edited, analysis.Main.Job, default));
        Assert.Equal(before.End, after.End);
        Assert.True(before.Motions.Count == after.Motions.Count, $"{where}: {before.Motions.Count} motions, then {after.Motions.Count}");
        for (var i = 0; i < before.Motions.Count; i++)
        {
            var (a, b) = (before.Motions[i], after.Motions[i]);
            var isSame = a.Kind == b.Kind && Near(a.To.X, b.To.X) && Near(a.To.Y, b.To.Y) && Near(a.To.Z, b.To.Z) && a.Tool == b.Tool && a.Coordinates.WorkOffset == b.Coordinates.WorkOffset
                && a.Spindle == b.Spindle && a.Coolant == b.Coolant && Near(a.Dwell, b.Dwell) && NearShare(a.Feed, b.Feed) && NearShare(a.Speed, b.Speed)
                && (a.Kind != MoveKind.Arc || (a.Clockwise == b.Clockwise && a.FullTurns == b.FullTurns && Near(a.Center.X, b.Center.X) && Near(a.Center.Y, b.Center.Y)
                    && Near(a.Center.Z, b.Center.Z)));
            Assert.True(isSame, $"{where}, motion {i} of line {a.Line + 1}: {a} became {b}\n{edited}");
        }
    }

    static bool Near(double a, double b) => a.Equals(b) || Math.Abs(a - b) <= Tolerance;

    static bool NearShare(double a, double b) => a.Equals(b) || Math.Abs(a - b) <= 1e-4 * Math.Max(Math.Abs(a), Math.Abs(b));
}
