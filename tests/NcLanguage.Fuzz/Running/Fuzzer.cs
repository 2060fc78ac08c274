using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Text;
using NcLanguage.Fuzz.Cases;

namespace NcLanguage.Fuzz.Running;

/// <summary>Writes cases and checks them until its time is over; each fault found is told once, with the smallest case that shows it.</summary>
/// <param name="name">Of the check, as kept cases name it.</param>
/// <param name="write">Makes a case from chance.</param>
/// <param name="check">Throws where the case shows a fault.</param>
sealed class Fuzzer(string name, Func<Dice, FuzzCase> write, Action<FuzzCase> check)
{
    /// <summary>A case takes milliseconds, seconds on a machine that has much else to do: one that takes longer than this never ends.</summary>
    public static readonly TimeSpan Longest = TimeSpan.FromMinutes(4);

    const int MostFailures = 12;

    /// <summary>The sign of a case that does not end; it cannot be made smaller by trying.</summary>
    const string Endless = "a case does not end";

    readonly ConcurrentDictionary<string, Failure> _failures = new();
    readonly (long Started, int Seed)[] _open = new (long, int)[FuzzTime.Workers];
    int _cases;
    int _next;
    long _slowest;
    int _slowestSeed;

    public string Name => name;

    /// <summary>Checks one kept case.</summary>
    public void Replay(FuzzCase kept) => check(kept);

    /// <returns>What was done, one line.</returns>
    public string Run(TimeSpan time, int firstSeed)
    {
        _next = firstSeed - 1;
        var clock = Stopwatch.StartNew();
        var workers = Enumerable.Range(0, FuzzTime.Workers).Select(worker => Task.Factory.StartNew(() => Work(worker, clock, time, firstSeed), TaskCreationOptions.LongRunning)).ToArray();
        while (!Task.WaitAll(workers, TimeSpan.FromSeconds(1)))
            if (Array.Find(_open, open => open.Started > 0 && Stopwatch.GetElapsedTime(open.Started) > Longest) is { Started: > 0 } stuck)
            {
                _failures.TryAdd(Endless, new Failure(stuck.Seed, write(new Dice(stuck.Seed)), Endless, $"It was still running after {Longest.TotalSeconds} s."));
                break;
            }
        var told = string.Create(CultureInfo.InvariantCulture,
            $"{name}: {_cases} cases in {clock.Elapsed.TotalSeconds:0} s from seed {firstSeed} on, {_failures.Count} faults; the slowest took {_slowest} ms (seed {_slowestSeed})");
        if (_failures.IsEmpty)
            return told;
        throw new FuzzFault(told, "\n" + string.Join("\n", _failures.Values.OrderBy(failure => failure.Sign, StringComparer.Ordinal)
            .Select(failure => Tell(failure.Sign == Endless ? failure : Shrinker.Shrink(failure, check)))));
    }

    void Work(int worker, Stopwatch clock, TimeSpan time, int firstSeed)
    {
        while (clock.Elapsed < time && _failures.Count < MostFailures)
        {
            var seed = Interlocked.Increment(ref _next);
            if (seed - firstSeed >= FuzzTime.MostCases)
                return;
            var started = Stopwatch.GetTimestamp();
            _open[worker] = (started, seed);
            Try(seed);
            _open[worker] = default;
            var took = (long)Stopwatch.GetElapsedTime(started).TotalMilliseconds;
            if (took > _slowest)
                (_slowest, _slowestSeed) = (took, seed);
            Interlocked.Increment(ref _cases);
        }
    }

    void Try(int seed)
    {
        FuzzCase? written = null;
        try
        {
            written = write(new Dice(seed));
            check(written);
        }
        catch (Exception e)
        {
            var sign = Failure.SignOf(e);
            _failures.TryAdd(sign, new Failure(seed, written ?? new FuzzCase(), sign, e.ToString()));
        }
    }

    string Tell(Failure failure)
    {
        var file = Path.Combine(AppContext.BaseDirectory, "found-now", $"{name}-{failure.Seed}.json");
        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        var text = new CaseFile(name, failure.Sign, failure.Case).Write();
        File.WriteAllText(file, text);
        return new StringBuilder()
            .AppendLine(CultureInfo.InvariantCulture, $"== {failure.Sign}")
            .AppendLine(CultureInfo.InvariantCulture, $"seed {failure.Seed}; the smallest case found is in {file}; keep it in found/ once the fault is mended:")
            .AppendLine(text.Length > 6000 ? text[..6000] + " …" : text)
            .AppendLine(failure.Detail.Length > 3000 ? failure.Detail[..3000] + " …" : failure.Detail)
            .ToString();
    }
}
