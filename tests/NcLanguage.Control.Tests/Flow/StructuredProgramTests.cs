using System.Globalization;
using CsCheck;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Expressions;

namespace NcLanguage.Control.Tests.Flow;

/// <summary>Random programs, run as trees by a small interpreter of their own and as text by the control: in jumps and programs by number, and in O words.</summary>
public sealed class StructuredProgramTests
{
    const string Beginning = "G21 G90 G0 X0 Y0 Z0";

    /// <summary>Every rapid ends at the same place, and every variable holds the same.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Text_runs_as_the_tree_does(bool behindO)
    {
        var (compared, moves) = (0, 0);
        Gen.Int.Sample(seed =>
        {
            var program = new ProgramMaker(new Random(seed), hasInput: false, testsAfter: true, hasModes: false).Make();
            var reference = new StructuredRun(program, hasSharedLocals: !behindO);
            if (!reference.Run())
                return;
            var text = StructuredPrinter.Print(program, behindO, Beginning).Text;
            var session = new FlowSession(text, mostBlocks: 1_000_000);
            Assert.True(session.Faults.Count == 0, $"{session.Faults.FirstOrDefault()}\n{text}");
            Assert.Equal(NcLanguage.Control.Flow.FlowEnd.Ended, session.End);

            var places = session.Visits.Where(visit => IsMove(text, visit.Line)).Skip(1).Select(visit => visit.After.Position).ToList();
            Assert.True(places.Count == reference.Places.Count, $"{places.Count} moves, not {reference.Places.Count}\n{text}");
            for (var i = 0; i < places.Count; i++)
                Assert.True((places[i] - reference.Places[i]).Length <= 1e-9 * (1 + reference.Places[i].Length), $"move {i}: {places[i]}, not {reference.Places[i]}\n{text}");
            foreach (var (number, value) in reference.Locals.Concat(reference.Common.Where(pair => pair.Key < 120)))
                Assert.True(Math.Abs(session.Variable(number) - value) <= 1e-9 * (1 + Math.Abs(value)), $"#{number} = {session.Variable(number)}, not {value}\n{text}");
            Interlocked.Increment(ref compared);
            Interlocked.Add(ref moves, places.Count);
        }, iter: 2_000);
        Assert.True(compared > 1_800 && moves > 2_500, string.Create(CultureInfo.InvariantCulture, $"{compared} programs, {moves} moves"));
    }

    static bool IsMove(string text, int line) => text.Split('\n')[line - 1] is var block && (block.StartsWith("G0 ", StringComparison.Ordinal) || line == 1);

    /// <summary>With a variable not known, whatever is said to be known at a block holds in the run with any value of it: what a block meets there, it meets
    /// at one of the runs that were followed. Blocks of a loop with its test behind the body are left out: of its later passes nothing is said.</summary>
    [Theory]
    [InlineData(false, false)]
    [InlineData(true, false)]
    [InlineData(false, true)]
    [InlineData(true, true)]
    public void What_is_known_holds_for_every_value(bool behindO, bool testsAfter)
    {
        var (compared, known) = (0L, 0L);
        Gen.Int.Sample(seed =>
        {
            var program = new ProgramMaker(new Random(seed), hasInput: true, testsAfter, hasModes: seed % 2 == 0).Make();
            var unknown = StructuredPrinter.Print(program, behindO, Beginning + (seed % 3 == 0 ? "" : " #500=#5061"));
            var blocks = unknown.Text.Split('\n');
            var followed = new FlowSession(unknown.Text).Visits.ToLookup(visit => visit.Line);
            var lastMain = behindO ? int.MaxValue : Array.IndexOf(blocks, "M30") + 1;
            var firstMain = behindO ? Array.FindLastIndex(blocks, block => block.EndsWith("ENDSUB", StringComparison.Ordinal)) + 2 : 1;
            foreach (var value in (ReadOnlySpan<double>)[-3, 0, 0.5, 1, 2, 4, 60])
            {
                var text = StructuredPrinter.Print(program, behindO, string.Create(CultureInfo.InvariantCulture, $"{Beginning} #500={value}")).Text;
                var session = new FlowSession(text, mostBlocks: 20_000);
                foreach (var visit in session.Visits.Take(3000))
                {
                    // The block that looks at a loop's condition is met once where that is not known.
                    if (visit.Line == 1 || blocks[visit.Line - 1].Contains("WHILE", StringComparison.Ordinal) || unknown.InTestedAfter.Contains(visit.Line) || (testsAfter && unknown.InTestedAfter.Count > 0 && (visit.Line < firstMain || visit.Line > lastMain)))
                        continue;
                    var covering = followed[visit.Line].FirstOrDefault(other => Knowledge.Contradiction(other.Before, visit.Before) is null);
                    Assert.True(covering is not null,
                        $"#500={value}, line {visit.Line}: {string.Join(", ", followed[visit.Line].Select(other => Knowledge.Contradiction(other.Before, visit.Before)))}\n{text}");
                    Interlocked.Increment(ref compared);
                    if (!double.IsNaN(covering.Before.Position.X))
                        Interlocked.Increment(ref known);
                }
            }
        }, iter: 300);
        // Much was compared, and much of it was known: not knowing anything would agree with all.
        Assert.True(compared > 20_000 && known > compared / 10, $"{compared} blocks, {known} with a known place");
    }
}
