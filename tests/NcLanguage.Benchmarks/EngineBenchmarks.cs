using System.Text;
using BenchmarkDotNet.Attributes;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Machine.Loading;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Benchmarks;

/// <summary>The engine in process: lexing, running, checking, and what a keystroke costs.</summary>
[MemoryDiagnoser]
[ShortRunJob]
public class EngineBenchmarks
{
    byte[] _bytes = [];
    Setup _setup = Setup.None;
    ProgramAnalysis? _analysis;
    SourceText? _edited;

    [Params(1_000, 10_000, 100_000)]
    public int Blocks { get; set; }

    /// <summary>Where in the text the key is struck, as a share of its lines.</summary>
    [Params(0.01, 0.5, 0.99)]
    public double Place { get; set; }

    [GlobalSetup]
    public void Prepare()
    {
        _bytes = Encoding.UTF8.GetBytes(SampleProgram.Make(Blocks));
        _setup = SetupFile.Read("bench.setup.json", Encoding.UTF8.GetBytes(SampleProgram.Setup)).Setup;
        _analysis = ProgramAnalysis.Create(SourceText.From(_bytes), _setup, Machine);
        var at = _analysis.Text.OffsetOf((int)(Place * (Blocks - 10)), 4);
        _edited = _analysis.Text.WithChange(at, at, "1"u8);
    }

    static MachineProfile Machine => MachineProfile.IsoMill with { IsChosen = true };

    [Benchmark]
    public int Lex()
    {
        var tokens = 0;
        foreach (var chunk in SourceText.From(_bytes).Chunks)
            tokens += chunk.Blocks[0].Tokens.Length;
        return tokens;
    }

    [Benchmark]
    public int Run()
    {
        var executor = new BlockExecutor(Machine, _setup);
        var state = executor.Start();
        var step = new Step();
        var moves = 0;
        foreach (var chunk in _analysis!.Text.Chunks)
        {
            for (var line = 0; line < chunk.Blocks.Count; line++)
            {
                executor.Run(chunk.Blocks[line], ref state, step);
                moves += step.Moves.Count;
            }
        }
        return moves;
    }

    [Benchmark]
    public int Analyse() => ProgramAnalysis.Create(SourceText.From(_bytes), _setup, Machine).Findings.Length;

    [Benchmark]
    public int Keystroke() => _analysis!.WithText(_edited!).Findings.Length;
}
