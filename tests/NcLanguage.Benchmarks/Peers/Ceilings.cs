using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace NcLanguage.Benchmarks.Peers;

/// <summary>What the same machine does at most: bytes a second of programs that do next to nothing with a file.</summary>
static class Ceilings
{
    const int Rounds = 7;
    const int Lines = 1_000_000;

    /// <summary>One sentence with the figures.</summary>
    /// <param name="treeSitter">A library of the parser for C, made by its generator; null where there is none.</param>
    /// <param name="treeSitterLines">Lines of the text that it parses.</param>
    public static string Measure(string? treeSitter, int treeSitterLines)
    {
        var folder = Directory.CreateTempSubdirectory("nc-bench").FullName;
        try
        {
            var path = SampleProgram.Write(Lines, folder, "ceiling");
            var bytes = File.ReadAllBytes(path);
            var text = string.Create(CultureInfo.InvariantCulture,
                $"On the same machine, with a program of {bytes.Length / 1e6:0.0} MB: `wc -l` {Speed(bytes.Length, () => CountWithWc(path))}, reading the file {Speed(bytes.Length, () => File.ReadAllBytes(path).Length)}, "
                + $"counting line ends in memory {Speed(bytes.Length, () => bytes.AsSpan().Count((byte)'\n'))}");
            return treeSitter is null ? text + "." : $"{text}; {Parser(treeSitter, treeSitterLines)}.";
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    static string Speed(int bytes, Func<int> work)
    {
        var seconds = Enumerable.Range(0, Rounds).Select(_ => Time(() => work())).Min() / 1e3;
        return string.Create(CultureInfo.InvariantCulture, $"{bytes / seconds / 1e9:0.0} GB/s");
    }

    static string Parser(string library, int lines)
    {
        using var parser = new TreeSitter(library);
        var text = Encoding.UTF8.GetBytes(PeerSource.C(lines));
        var parse = Enumerable.Range(0, 3).Select(_ => Time(() => parser.Parse(text))).Min();
        var at = text.AsSpan(text.Length / 2).IndexOf("* b"u8) + text.Length / 2;
        byte[] edited = [.. text[..at], (byte)'+', .. text[at..]];
        var again = Enumerable.Range(0, Rounds).Select(_ =>
        {
            parser.Parse(text);
            return Time(() => parser.Insert(edited, at, 1));
        }).Order().ElementAt(Rounds / 2);
        return string.Create(CultureInfo.InvariantCulture,
            $"tree-sitter's C library, with its grammar of C, parses {lines:N0} lines in {parse:0} ms ({text.Length / parse / 1e3:0.0} MB/s) and again behind a key in {again:0.0} ms, which is parsing alone");
    }

    static int CountWithWc(string path)
    {
        using var process = Process.Start(new ProcessStartInfo("wc", ["-l", path]) { RedirectStandardOutput = true })!;
        return process.StandardOutput.ReadToEnd().Length;
    }

    static double Time(Action work)
    {
        var clock = Stopwatch.StartNew();
        work();
        return clock.Elapsed.TotalMilliseconds;
    }
}
