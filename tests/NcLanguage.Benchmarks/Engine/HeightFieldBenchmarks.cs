using BenchmarkDotNet.Attributes;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Machine.Profiles;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Benchmarks.Engine;

/// <summary>What is left of a plate of 500 × 500 mm after 5,000 moves.</summary>
[MemoryDiagnoser]
[ShortRunJob]
public class HeightFieldBenchmarks
{
    ProgramRun? _run;

    [ParamsSource(nameof(Programs))]
    public string Program { get; set; } = "";

    public static IEnumerable<string> Programs => StockPrograms.All.Select(program => program.Name);

    [GlobalSetup]
    public void Prepare()
    {
        var (_, setup, text) = StockPrograms.All.Single(program => program.Name == Program);
        _run = ProgramRun.Create(SourceText.From(text), new Job(MachineProfile.IsoMill, setup), [], [], CancellationToken.None);
    }

    /// <summary>The heights at up to 4 million cells; the volume removed, mm³.</summary>
    [Benchmark]
    public double Follow() => StockLeft.Of(_run!)!.Removed;
}
