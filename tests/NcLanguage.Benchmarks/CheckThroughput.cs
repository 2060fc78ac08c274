using System.Diagnostics;

namespace NcLanguage.Benchmarks;

/// <summary>Megabytes of program that `check` gets through in a second, as a whole process.</summary>
static class CheckThroughput
{
    const int Blocks = 1_000_000;
    const int Rounds = 5;

    public static void Run(string executable)
    {
        var folder = Directory.CreateTempSubdirectory("nc-bench");
        try
        {
            var megabytes = new FileInfo(SampleProgram.Write(Blocks, folder.FullName, "long")).Length / 1e6;
            var seconds = new List<double>();
            for (var i = 0; i < Rounds; i++)
                seconds.Add(Time(executable, "check", folder.FullName, "--format", "json", "--fail-on", "never"));
            seconds.Sort();
            var start = Enumerable.Range(0, Rounds).Select(_ => Time(executable, "--version")).Order().ElementAt(Rounds / 2);
            Console.WriteLine($"check: {megabytes:0.0} MB, {Blocks} blocks: median {seconds[Rounds / 2]:0.00} s (min {seconds[0]:0.00}, max {seconds[^1]:0.00}), "
                + $"{megabytes / seconds[Rounds / 2]:0.0} MB/s; --version alone {start * 1000:0} ms");
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>Seconds of a run of the command.</summary>
    /// <exception cref="InvalidOperationException">It did not end with 0.</exception>
    public static double Time(string executable, params string[] arguments)
    {
        var start = new ProcessStartInfo(executable) { RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (var argument in arguments)
            start.ArgumentList.Add(argument);
        var clock = Stopwatch.StartNew();
        using var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync();
        process.StandardOutput.BaseStream.CopyTo(Stream.Null);
        process.WaitForExit();
        if (process.ExitCode != 0)
            throw new InvalidOperationException($"{executable} ended with {process.ExitCode}: {errors.Result}");
        return clock.Elapsed.TotalSeconds;
    }
}
