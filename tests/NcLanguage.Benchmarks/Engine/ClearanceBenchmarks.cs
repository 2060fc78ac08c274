using BenchmarkDotNet.Attributes;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Machine.Geometry;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Benchmarks.Engine;

/// <summary>How near the moves of a program come to four clamps.</summary>
[MemoryDiagnoser]
[ShortRunJob]
public class ClearanceBenchmarks
{
    const int Blocks = 10_000;

    readonly List<(Move Move, Point3 ToFrame, int Tool)> _moves = [];
    Job? _job;

    [ParamsAllValues]
    public SampleKind Kind { get; set; }

    /// <summary>How far the tool may stay away for its distance to be of interest, mm: the setup's clearance, or any distance, as the list of closest approaches asks.</summary>
    [Params(2, double.PositiveInfinity)]
    public double Within { get; set; }

    [GlobalSetup]
    public void Prepare()
    {
        _job = new Job(Bench.Machine, Bench.Setup);
        var state = _job.Executor.Start();
        var step = new Step();
        foreach (var chunk in SourceText.From(Bench.Bytes(Blocks, Kind)).Chunks)
        {
            var blocks = chunk.Blocks;
            for (var line = 0; line < blocks.Count; line++)
            {
                _job.Executor.Run(blocks[line], ref state, step);
                foreach (ref readonly var move in step.Moves.Items)
                    if (move.IsMotion)
                        _moves.Add((move, step.ToFrame, step.After.Tool));
            }
        }
    }

    /// <summary>The least distance over all moves, mm.</summary>
    [Benchmark]
    public double Nearest()
    {
        var least = double.PositiveInfinity;
        foreach (var (move, toFrame, tool) in _moves)
            if (_job!.ApproachOf(move, toFrame, tool, Within).Distance is var distance && distance < least)
                least = distance;
        return least;
    }
}
