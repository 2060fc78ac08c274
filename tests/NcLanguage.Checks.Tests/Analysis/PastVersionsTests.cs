using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.Analysis;

/// <summary>A version keeps nothing of those before it but what it shares with them: parts remember what stood before or behind them, and one that is asked no more must not hold on to it.
/// Counted in parts that are still there.</summary>
public sealed class PastVersionsTests
{
    const int Blocks = 6_000;

    const string Head = "G21 G90 G17 G54\nT1 M6\nG0 G43 H1 Z50\nS1800 M3 F100\n";

    /// <summary>Blocks after which the tool stands where it stood.</summary>
    const int Round = 300;

    /// <summary>Cuts, or runs of some 20 holes. In the middle the feed is given anew: what changes it above ends there.</summary>
    static string Program(string kind)
    {
        var text = new StringBuilder(Head);
        for (var i = 0; i < Blocks; i++)
            text.Append(i == Blocks / 2 ? "F150\n" : (kind, i % 20) switch
            {
                ("cuts", _) => string.Create(CultureInfo.InvariantCulture, $"G1 X{i % 60}. Y{i % 50}.\n"),
                (_, 0) => "G80\n",
                (_, 1) => string.Create(CultureInfo.InvariantCulture, $"G99 G81 X10. Y{i % Round * 0.01:0.00} Z-4.5 R2\n"),
                (_, _) => string.Create(CultureInfo.InvariantCulture, $"X{10 + i % 20}.\n"),
            });
        return text.Append("G80\nG0 Z100\nM30\n").ToString();
    }

    [Theory]
    [InlineData("cuts")]
    [InlineData("holes")]
    public void Of_past_versions_there_is_nothing_left_but_what_the_last_one_shares(string kind)
    {
        var (last, parts) = Type(Program(kind));
        GC.Collect();
        GC.WaitForPendingFinalizers();
        GC.Collect();
        var inUse = new HashSet<object>(ReferenceEqualityComparer.Instance);
        foreach (var run in (ProgramRun?[])[last.Runs.Main, last.Runs.OtherSkip, last.Runs.OtherPositions, last.Runs.OtherReturns])
            foreach (var part in run is null ? [] : run.Results)
                inUse.Add(part);
        var left = parts.Where(part => part.Target is { } target && !inUse.Contains(target)).Distinct().Count();
        Assert.InRange(parts.Count, 3 * inUse.Count / 2, int.MaxValue);
        Assert.Equal(0, left);
    }

    /// <summary>Takes away what moves the tool within whole chunks about the feed in the middle, so that the chunk behind them goes on from nothing where it went on from a contour. Then has all
    /// before them run again, several times.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    static (ProgramAnalysis Last, List<WeakReference> Parts) Type(string text)
    {
        var analysis = ProgramAnalysis.Create(SourceText.From(text), Setup.None, MachineProfile.IsoMill);
        List<WeakReference> parts = [];
        Note();
        var feed = Head.Count(letter => letter == '\n') + Blocks / 2;
        var behind = analysis.Text.FirstLineOf(analysis.Text.ChunkOfLine(feed) + 2);
        var goesOn = PartAt(behind);
        Replace(behind - Round, Round, string.Join('\n', Enumerable.Range(behind - Round, Round).Select(line => (line - feed) switch
        {
            0 => "F150",
            // Where the tool came from and where it stands.
            1 or 2 => analysis.Text.LineText(behind - feed - 3 + line),
            _ => "(LEFT OUT)",
        })));
        Assert.True(ReferenceEquals(goesOn, PartAt(behind)));
        for (var times = 0; times < 3; times++)
        {
            Replace(3, 1, $"S1800 M3 F20{times}");
            Replace(behind + 1000, 1, "(A LINE)\n(AND ANOTHER)");
        }
        return (analysis, parts);

        PartResult PartAt(int line) => analysis.Main.Results[analysis.Text.ChunkOfLine(line)];

        // The end of the last line stays: it is the last byte of its chunk.
        void Replace(int line, int lines, string by)
        {
            var (start, end) = (analysis.Text.OffsetOf(line, 0), analysis.Text.OffsetOf(line + lines, 0) - 1);
            analysis = analysis.WithText(analysis.Text.WithChange(start, end, Encoding.UTF8.GetBytes(by)));
            Note();
        }

        void Note()
        {
            _ = analysis.Findings;
            foreach (var part in analysis.Main.Results)
                parts.Add(new WeakReference(part));
        }
    }
}
