namespace NcLanguage.Cli.Common;

/// <summary>What the command waits for at this moment and cannot go on without: others who give input or take output. It may be ended amid that, for
/// nothing is half done then that it could still finish.</summary>
static class Waiting
{
    /// <summary>Milliseconds that a reader takes at most to take a piece of the output, if it reads at all; on a busy machine it may not come to run for some tenths of a second.</summary>
    const long SlowReader = 400;

    /// <summary>How often a watch has to find the same piece on its way: where it comes to look but seldom, the machine is busy, and a reader comes to run as seldom.</summary>
    const int LooksAtSlowReader = 30;

    static int _inputs;

    /// <summary>When the piece that is being written to standard output, and that to standard error, was begun, in milliseconds; 0 where none is.</summary>
    static readonly long[] _since = new long[2];

    static readonly int[] _looks = new int[2];

    static long _lastTaken;

    static int _files;

    /// <summary>When a piece of output was last taken, in milliseconds; 0 where none was yet.</summary>
    public static long LastTaken => Volatile.Read(ref _lastTaken);

    public static void BeginInput() => Interlocked.Increment(ref _inputs);

    public static void EndInput() => Interlocked.Decrement(ref _inputs);

    public static void BeginOutput(bool isError = false)
    {
        Volatile.Write(ref _looks[isError ? 1 : 0], 0);
        Volatile.Write(ref _since[isError ? 1 : 0], Math.Max(1, Environment.TickCount64));
    }

    public static void EndOutput(bool isError = false)
    {
        Volatile.Write(ref _since[isError ? 1 : 0], 0);
        Volatile.Write(ref _lastTaken, Environment.TickCount64);
    }

    /// <summary>A file is being written: where the process ended now, half of it would be left beside the old one.</summary>
    public static void BeginFile() => Interlocked.Increment(ref _files);

    public static void EndFile() => Interlocked.Decrement(ref _files);

    /// <summary>Whether the command waits for others, and would not end by itself. Asked by one watch, each time it looks.</summary>
    public static bool IsStuck()
    {
        var (isOutputSlow, areErrorsSlow) = (IsSlow(0), IsSlow(1));
        return Volatile.Read(ref _files) == 0 && (Volatile.Read(ref _inputs) > 0 || isOutputSlow || areErrorsSlow);
    }

    static bool IsSlow(int output) => Volatile.Read(ref _since[output]) is > 0 and var begun
        && Interlocked.Increment(ref _looks[output]) >= LooksAtSlowReader && Environment.TickCount64 - begun >= SlowReader;
}
