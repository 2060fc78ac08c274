using System.Globalization;
using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.Analysis;

/// <summary>What a key costs as the program doubles, counted in blocks that run, chunks whose holes are compared, cuts that are followed and bytes allocated: none of them
/// may grow with the program, but for the few bytes that each chunk has in the rows of a version.</summary>
public sealed class GrowthTests
{
    static readonly int[] Sizes = [10_000, 20_000, 40_000];

    /// <summary>What the rows of chunks, their offsets, lines, texts and results take, with some room.</summary>
    const int BytesOfAChunk = 120;

    static readonly Setup Plate = new()
    {
        IsPresent = true,
        Stock = new Box3(new Point3(0, 0, -20), new Point3(120, 80, 0)),
        Obstacles =
        [
            new BoxObstacle("clamp A", new Box3(new Point3(-30, 20, -5), new Point3(-4, 40, 25))),
            new BoxObstacle("clamp B", new Box3(new Point3(124, 20, -5), new Point3(150, 40, 25))),
        ],
        Tools = [new Tool { Number = 1, Diameter = 6.8, PointAngle = 118, Length = 110 }, new Tool { Number = 2, Diameter = 6, Kind = ToolKind.EndMill, Length = 90 }],
    };

    /// <summary>Runs of some 100 holes, or cuts with a lift every 100 blocks.</summary>
    static string Program(string kind, int blocks)
    {
        var text = new StringBuilder(kind == "holes" ? "G21 G90 G17 G54\nT1 M6\nG0 G43 H1 Z50\nS1800 M3\nM8\n" : "G21 G90 G17 G54\nT2 M6\nG0 G43 H2 Z50\nX10 Y10 S3000 M3\nM8\n");
        for (var i = 100; i < blocks + 92; i++)
            text.Append((kind, i % 100) switch
            {
                ("holes", 0) => "G80\n",
                ("holes", 1) => "G0 Z50\n",
                // Each run has a row of its own: what drills the same places again is told.
                ("holes", 2) => string.Create(CultureInfo.InvariantCulture, $"G99 G81 X10 Y{10 + i / 100 * 0.125:0.000} Z-4.5 R2 F180\n"),
                ("holes", _) => string.Create(CultureInfo.InvariantCulture, $"X{10 + i % 100}. Y{10 + i / 100 * 0.125:0.000}\n"),
                (_, 0) => "G0 Z5\n",
                (_, 1) => "G0 X10 Y10\n",
                (_, 2) => "G1 Z-1 F200\n",
                (_, _) => string.Create(CultureInfo.InvariantCulture, $"G1 X{10 + i % 100}. Y{10 + i * 3 % 60}. F400\n"),
            });
        return text.Append("G80\nG0 Z100\nM5 M9\nM30\n").ToString();
    }

    static ProgramAnalysis Analyse(string text)
    {
        var analysis = ProgramAnalysis.Create(SourceText.From(text), Plate, MachineProfile.IsoMill with { IsChosen = true });
        Assert.Empty(analysis.Findings);
        return analysis;
    }

    static readonly Dictionary<(string Kind, int Size), ProgramAnalysis> Known = [];

    static ProgramAnalysis Of(string kind, int size)
    {
        lock (Known)
            return Known.TryGetValue((kind, size), out var analysis) ? analysis : Known[(kind, size)] = Analyse(Program(kind, size));
    }

    static SourceText Edited(ProgramAnalysis analysis, string edit, double where)
    {
        var text = analysis.Text;
        // Amid a run of holes or cuts.
        var line = (int)(where * (text.LineCount - 300)) / 100 * 100 + 150;
        var (at, end) = (text.OffsetOf(line, 0), text.OffsetOf(line, int.MaxValue));
        return edit switch
        {
            "char" => text.WithChange(end, end, "1"u8),
            "line" => text.WithChange(at, at, "\n"u8),
            "deleted" => text.WithChange(at, text.OffsetOf(line + 1, 0), []),
            _ => text.WithChange(at, at, Encoding.ASCII.GetBytes(string.Concat(Enumerable.Range(0, 1000).Select(i => $"X{20 + i % 90}.5 Y{20 + i / 90}.5\n")))),
        };
    }

    public static TheoryData<string, string, double> Edits()
    {
        var edits = new TheoryData<string, string, double>();
        foreach (var kind in (string[])["holes", "cuts"])
            foreach (var edit in (string[])["char", "line", "deleted", "pasted"])
                foreach (var where in (double[])[0, 0.5, 1])
                    edits.Add(kind, edit, where);
        return edits;
    }

    readonly record struct Work(int Blocks, long Bytes, int Comparisons, int Chunks);

    static Work Do(string kind, int size, string edit, double where)
    {
        var before = Of(kind, size);
        var text = Edited(before, edit, where);
        // Once to have all code and storage that later keys find there already.
        _ = before.WithText(text).FirstLook(before);
        var start = GC.GetAllocatedBytesForCurrentThread();
        var after = before.WithText(text);
        _ = after.FirstLook(before);
        var bytes = GC.GetAllocatedBytesForCurrentThread() - start;
        var compared = TimesCompared(before, after);
        _ = after.Findings;
        var again = TimesCompared(before, after) - compared;
        // The next test finds the version before as it was.
        _ = before.WithText(before.Text).Findings;
        return new Work(after.BlocksRun, bytes, again, text.Chunks.Length);
    }

    /// <summary>How often the holes of a chunk were compared with those before them, over all chunks of both versions.</summary>
    static int TimesCompared(ProgramAnalysis before, ProgramAnalysis after) =>
        before.Main.Results.ToArray().Concat(after.Main.Results.ToArray()).ToHashSet<PartResult>(ReferenceEqualityComparer.Instance).Sum(part => part.TimesCompared);

    [Theory]
    [MemberData(nameof(Edits))]
    public void A_key_costs_the_same_in_a_program_twice_as_long(string kind, string edit, double where)
    {
        var work = Array.ConvertAll(Sizes, size => Do(kind, size, edit, where));
        Assert.All(work, one => Assert.InRange(one.Blocks, 1, edit == "pasted" ? 1600 : 600));
        for (var i = 1; i < work.Length; i++)
        {
            Assert.InRange(work[i].Blocks, 0, work[i - 1].Blocks + 256);
            Assert.InRange(work[i].Bytes, 0, work[i - 1].Bytes + BytesOfAChunk * (work[i].Chunks - work[i - 1].Chunks) + 30_000);
            Assert.InRange(work[i].Comparisons, 0, work[i - 1].Comparisons + 4);
        }
    }

    /// <summary>Distances in the place of positions from the first block on: all runs again, and no more than all.</summary>
    [Theory]
    [InlineData("holes")]
    [InlineData("cuts")]
    public void An_edit_that_changes_all_that_follows_costs_as_much_as_the_program_is_long(string kind)
    {
        var bytes = new long[Sizes.Length];
        for (var i = 0; i < Sizes.Length; i++)
        {
            var before = Of(kind, Sizes[i]);
            var text = before.Text.WithChange(4, 7, "G91"u8);
            var start = GC.GetAllocatedBytesForCurrentThread();
            var after = before.WithText(text);
            _ = after.Findings;
            bytes[i] = GC.GetAllocatedBytesForCurrentThread() - start;
            Assert.InRange(after.BlocksRun, Sizes[i] * 9 / 10, Sizes[i] + 1);
        }
        Assert.InRange(bytes[1], 0, bytes[0] * 5 / 2);
        Assert.InRange(bytes[2], 0, bytes[1] * 5 / 2);
    }

    /// <summary>What is kept of a block, and nothing that was made to look at it: its text has been read before, and holes, cuts and times are all there is of it. A string of the least
    /// length takes 24 bytes more.</summary>
    [Theory]
    [InlineData("holes", 190)]
    [InlineData("cuts", 115)]
    public void Nothing_is_allocated_for_a_block_but_what_is_kept_of_it(string kind, int bytesOfABlock)
    {
        var bytes = new long[2];
        for (var i = 0; i < 2; i++)
        {
            var text = SourceText.From(Program(kind, Sizes[i]));
            // With a machine chosen it is run once.
            var machine = MachineProfile.IsoMill with { IsChosen = true };
            _ = ProgramAnalysis.Create(text, Plate, machine).Main;
            var start = GC.GetAllocatedBytesForCurrentThread();
            _ = ProgramAnalysis.Create(text, Plate, machine).Main;
            bytes[i] = GC.GetAllocatedBytesForCurrentThread() - start;
        }
        Assert.InRange((bytes[1] - bytes[0]) / (double)(Sizes[1] - Sizes[0]), 20, bytesOfABlock);
    }

    /// <summary>A row that is told, with a reference of 8 bytes each; nothing is made of a finding that stays as it is.</summary>
    [Fact]
    public void Behind_a_key_a_finding_that_stays_costs_a_reference()
    {
        var bytes = new long[2];
        for (var i = 0; i < 2; i++)
        {
            var text = new StringBuilder("G21 G90 G17 G54\n");
            for (var line = 0; line < 4_000 * (i + 1); line++)
                text.Append(CultureInfo.InvariantCulture, $"Q{line}\n");
            var before = ProgramAnalysis.Create(SourceText.From(text.Append("M30\n").ToString()), Setup.None, MachineProfile.IsoMill with { IsChosen = true });
            Assert.InRange(before.Findings.Length, 4_000 * (i + 1), int.MaxValue);
            var typed = before.Text.WithChange(0, 0, " "u8);
            _ = before.WithText(typed).FirstLook(before);
            var after = before.WithText(typed);
            var start = GC.GetAllocatedBytesForCurrentThread();
            _ = after.FirstLook(before);
            bytes[i] = GC.GetAllocatedBytesForCurrentThread() - start;
        }
        Assert.InRange((bytes[1] - bytes[0]) / 4_000.0, 0, 10);
    }

    /// <summary>Of holes that are drilled again as many are told as anybody reads, however many there are: behind a key the others are noted, and nothing is told of them. Programs with so many holes that
    /// each place is not looked at for other reasons.</summary>
    [Fact]
    public void Behind_a_key_no_more_is_told_of_repeated_holes_however_many_there_are()
    {
        var bytes = new long[2];
        for (var i = 0; i < 2; i++)
        {
            var text = new StringBuilder("G21 G90 G17 G54\nT1 M6\nS1000 M3\nG0 X0 Y0\nG43 H1 Z50\nG99 G81 X0 Y0 Z-5 R2 F100\n");
            var holes = 24_000 * (i + 1);
            for (var hole = 0; hole < holes; hole++)
                text.Append(CultureInfo.InvariantCulture, $"X{hole % 40}\n");
            var before = ProgramAnalysis.Create(SourceText.From(text.Append("G80\nM5\nM30\n").ToString()), Setup.None, MachineProfile.IsoMill with { IsChosen = true });
            var repeats = before.Findings.Where(finding => finding.Name == "hole-repeated").ToList();
            Assert.Equal(500, repeats.Count);
            Assert.EndsWith($" a second time. The same goes for {holes + 1 - 40 - 500} more holes behind it, the last in line {holes + 6}.", repeats[^1].Message, StringComparison.Ordinal);
            Assert.DoesNotContain(repeats.SkipLast(1), finding => finding.Message.Contains("more hole", StringComparison.Ordinal));
            var after = before.WithText(before.Text.WithChange(0, 0, " "u8));
            var start = GC.GetAllocatedBytesForCurrentThread();
            Assert.Equal(before.Findings.Length, after.Findings.Length);
            bytes[i] = GC.GetAllocatedBytesForCurrentThread() - start;
        }
        Assert.InRange((bytes[1] - bytes[0]) / 24_000.0, 0, 50);
    }

    /// <summary>From the last kept picture of the stock on; of these there are eight, so that an eighth of the cuts is followed again, and some more behind an edit.</summary>
    [Fact]
    public void An_edit_at_the_end_follows_a_share_of_the_cuts_again()
    {
        foreach (var size in Sizes)
        {
            var before = Of("cuts", size);
            Assert.InRange(before.Main.CutsFollowed, size / 2, size);
            Assert.InRange(before.WithText(Edited(before, "deleted", 1)).Main.CutsFollowed, 1, size / 5);
        }
    }
}
