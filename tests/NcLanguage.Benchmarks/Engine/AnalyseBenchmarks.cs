using BenchmarkDotNet.Attributes;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Benchmarks.Engine;

/// <summary>From bytes to findings, and the control's part of it.</summary>
[MemoryDiagnoser]
[ShortRunJob]
public class AnalyseBenchmarks
{
    byte[] _bytes = [];
    SourceText? _text;
    Setup _setup = Setup.None;

    [Params(1_000, 100_000)]
    public int Blocks { get; set; }

    [ParamsAllValues]
    public SampleKind Kind { get; set; }

    [GlobalSetup]
    public void Prepare()
    {
        _bytes = Bench.Bytes(Blocks, Kind);
        _text = SourceText.From(_bytes);
        _setup = Bench.Setup;
    }

    /// <summary>Lexes the blocks and carries them out, without rules; counts the moves.</summary>
    [Benchmark]
    public int CarryOut()
    {
        var executor = new BlockExecutor(Bench.Machine, _setup);
        var state = executor.Start();
        var step = new Step();
        var moves = 0;
        foreach (var chunk in _text!.Chunks)
        {
            var blocks = chunk.Blocks;
            for (var line = 0; line < blocks.Count; line++)
            {
                executor.Run(blocks[line], ref state, step);
                moves += step.Moves.Count;
            }
        }
        return moves;
    }

    /// <summary>All findings of a text that is opened, on one thread.</summary>
    [Benchmark]
    public int Analyse() => ProgramAnalysis.Create(SourceText.From(_bytes), _setup, Bench.Machine).Findings.Length;
}
