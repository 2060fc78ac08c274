using System.Diagnostics;

namespace NcLanguage.Benchmarks;

/// <summary>`check` of 1,000 programs of 10,000 blocks each, as a whole process, with four clamps, with and without a stock that the cuts are followed through: megabytes a second, processors
/// kept busy, memory over time; beside it what reading the same bytes takes that does nothing with them.</summary>
static class ManyPrograms
{
    const int Programs = 1_000;
    const int Blocks = 10_000;
    const int Rounds = 3;

    /// <summary>What the greatest memory in the last third of a run may be above that in the first: a part of it, or one more program in hand, MB.</summary>
    const double MostMore = 0.1, MostMoreSmall = 8;

    /// <summary>The least part of the processors that is kept busy.</summary>
    const double LeastBusy = 0.8;

    /// <returns>0 where memory stayed flat and the processors were kept busy, else 1.</returns>
    public static int Run(string executable)
    {
        var folder = Directory.CreateTempSubdirectory("nc-bench");
        var holds = true;
        try
        {
            var text = SampleProgram.Make(Blocks);
            for (var i = 0; i < Programs; i++)
                File.WriteAllText(Path.Combine(folder.FullName, $"part{i:000}.nc"), text);
            var paths = Directory.GetFiles(folder.FullName, "*.nc");
            var megabytes = paths.Sum(path => new FileInfo(path).Length) / 1e6;
            Console.WriteLine($"{Programs} programs, {megabytes:0.0} MB, {Environment.ProcessorCount} processors");
            Ceiling("wc -l, one thread", megabytes, () => Watch(new ProcessStartInfo("bash", ["-c", $"cat {folder.FullName}/*.nc | wc -l"])));
            Ceiling("ReadAllBytes, one thread", megabytes, () => Array.ForEach(paths, path => File.ReadAllBytes(path)));
            Ceiling("ReadAllBytes, all threads", megabytes, () => Parallel.ForEach(paths, path => File.ReadAllBytes(path)));
            foreach (var (name, setup) in new[] { ("clamps", SampleProgram.SetupWithoutStock), ("clamps and stock", SampleProgram.Setup) })
            {
                File.WriteAllText(Path.Combine(folder.FullName, "nc.setup.json"), setup);
                for (var round = 0; round < Rounds; round++)
                    holds &= Check(executable, folder.FullName, name, megabytes);
            }
            return holds ? 0 : 1;
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    static bool Check(string executable, string folder, string with, double megabytes)
    {
        var (seconds, processor, memory) = Watch(new ProcessStartInfo(executable, ["check", folder, "--format", "json", "--fail-on", "never"]));
        double[] thirds = [.. Enumerable.Range(0, 3).Select(third => memory.Skip(third * memory.Count / 3).Take(memory.Count / 3 + 1).Max() / 1e6)];
        var isFlat = thirds[^1] <= thirds[0] + Math.Max(MostMore * thirds[0], MostMoreSmall);
        var isBusy = processor / seconds >= LeastBusy * Environment.ProcessorCount;
        Console.WriteLine(
            $"check with {with}: {seconds:0.00} s, {megabytes / seconds:0.0} MB/s, {megabytes / processor:0.0} MB/s of one processor's time, "
            + $"{processor / seconds:0.00} processors busy; greatest memory in each third {string.Join(", ", thirds.Select(greatest => $"{greatest:0}"))} MB: "
            + $"{(isFlat ? "flat" : "it has grown")}{(isBusy ? "" : ", processors idle")}");
        return isFlat && isBusy;
    }

    static void Ceiling(string what, double megabytes, Action act)
    {
        act();
        var clock = Stopwatch.StartNew();
        act();
        Console.WriteLine($"{what}: {megabytes / clock.Elapsed.TotalSeconds:0} MB/s");
    }

    /// <summary>Runs a process to its end: seconds, seconds of processors, and resident memory in bytes, looked at every 10 ms.</summary>
    static (double Seconds, double Processor, List<long> Memory) Watch(ProcessStartInfo start)
    {
        start.RedirectStandardOutput = true;
        var (memory, processor) = (new List<long>(), TimeSpan.Zero);
        var clock = Stopwatch.StartNew();
        using var process = Process.Start(start)!;
        var output = process.StandardOutput.BaseStream.CopyToAsync(Stream.Null);
        while (!process.WaitForExit(10))
        {
            process.Refresh();
            try
            {
                memory.Add(process.WorkingSet64);
                processor = process.TotalProcessorTime;
            }
            catch (InvalidOperationException)
            {
                // It ended between two looks.
            }
        }
        var seconds = clock.Elapsed.TotalSeconds;
        output.Wait();
        if (process.ExitCode != 0)
            throw new InvalidOperationException($"{start.FileName} ended with {process.ExitCode}.");
        return (seconds, processor.TotalSeconds, memory);
    }
}
