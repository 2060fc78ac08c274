using System.Diagnostics;
using System.Globalization;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Benchmarks;

/// <summary>How long what is left of a plate of 500 × 500 mm takes after 5,000 moves, on one thread, against filling as many cells with one value.
/// Processor time, so that what else runs on the machine counts little.</summary>
static class StockSpeed
{
    const int Rounds = 5;

    static readonly TimeSpan LeastTime = TimeSpan.FromMilliseconds(200);

    public static void Run()
    {
        foreach (var (name, setup, program) in StockPrograms.All)
            Measure(name, setup, program);
    }

    static void Measure(string name, Setup setup, string program)
    {
        var run = ProgramRun.Create(SourceText.From(program), new Job(MachineProfile.IsoMill, setup), [], [], CancellationToken.None);
        var cells = 0;
        var removed = 0.0;
        var left = Median(() =>
        {
            var stock = StockLeft.Of(run)!;
            (cells, removed) = (stock.Field.Cells, stock.Removed);
        });
        var heights = new float[cells];
        var fill = Median(() => Array.Fill(heights, 1.5f));
        var analysis = ProgramAnalysis.Create(SourceText.From(program), setup, MachineProfile.IsoMill);
        var bare = ProgramAnalysis.Create(SourceText.From(program), setup with { Stock = null }, MachineProfile.IsoMill);
        var atEnd = analysis.Text.WithChange(analysis.Text.Length, analysis.Text.Length, "(end)\n"u8);
        var atStart = analysis.Text.WithChange(0, 0, "G0 Z60\n"u8);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{name}: {cells:N0} cells, {removed:N0} mm³ removed in {left:0} ms, {left / fill:0} times filling the cells once ({fill:0.0} ms); "
            + $"a keystroke at the end {Median(() => analysis.WithText(atEnd)):0.0} ms, one that moves all {Median(() => analysis.WithText(atStart)):0.0} ms, "
            + $"without a stock {Median(() => bare.WithText(atStart)):0.0} ms"));
    }

    /// <summary>Milliseconds of a piece of work, the median of some rounds; quick work is done often in each, for the processor's clock is coarse.</summary>
    static double Median(Action work)
    {
        work();
        var times = new double[Rounds];
        for (var i = 0; i < Rounds; i++)
        {
            var repeats = 0;
            var start = Now();
            for (; Now() - start < LeastTime; repeats++)
                work();
            times[i] = (Now() - start).TotalMilliseconds / repeats;
        }
        Array.Sort(times);
        return times[Rounds / 2];
    }

    static TimeSpan Now() => Process.GetCurrentProcess().TotalProcessorTime;
}
