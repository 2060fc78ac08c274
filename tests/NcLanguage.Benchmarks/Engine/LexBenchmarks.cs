using BenchmarkDotNet.Attributes;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Benchmarks.Engine;

/// <summary>From bytes to words.</summary>
[MemoryDiagnoser]
[ShortRunJob]
public class LexBenchmarks
{
    byte[] _bytes = [];

    [Params(1_000, 100_000)]
    public int Blocks { get; set; }

    [GlobalSetup]
    public void Prepare() => _bytes = Bench.Bytes(Blocks, SampleKind.Mix);

    /// <summary>All words of the text, counted.</summary>
    [Benchmark]
    public int Lex()
    {
        var words = 0;
        foreach (var chunk in SourceText.From(_bytes).Chunks)
        {
            var blocks = chunk.Blocks;
            for (var i = 0; i < blocks.Count; i++)
                words += blocks[i].Tokens.Length;
        }
        return words;
    }

    /// <summary>The text cut into chunks without a look at its words.</summary>
    [Benchmark]
    public int CutIntoChunks() => SourceText.From(_bytes).Chunks.Length;
}
