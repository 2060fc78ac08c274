using BenchmarkDotNet.Attributes;
using NcLanguage.Checks.Analysis;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Benchmarks.Engine;

/// <summary>What a key costs.</summary>
[MemoryDiagnoser]
[ShortRunJob]
public class EditBenchmarks
{
    ProgramAnalysis? _analysis;
    int _at;

    [Params(1_000, 10_000, 100_000)]
    public int Blocks { get; set; }

    /// <summary>Where in the text the key is struck, as a share of its lines.</summary>
    [Params(0.01, 0.5, 0.99)]
    public double Place { get; set; }

    [GlobalSetup]
    public void Prepare()
    {
        _analysis = Bench.Analyse(Bench.Bytes(Blocks, SampleKind.Mix));
        _ = _analysis.Findings;
        _at = _analysis.Text.OffsetOf((int)(Place * (Blocks - 10)), 4);
    }

    /// <summary>The text alone.</summary>
    [Benchmark]
    public SourceText Change() => _analysis!.Text.WithChange(_at, _at, "1"u8);

    /// <summary>The text, its run and what the blocks themselves tell: what an editor is sent at once.</summary>
    [Benchmark]
    public int FirstLook() => _analysis!.WithText(Change()).FirstLook(_analysis).Length;

    /// <summary>All findings.</summary>
    [Benchmark]
    public int AllFindings() => _analysis!.WithText(Change()).Findings.Length;
}
