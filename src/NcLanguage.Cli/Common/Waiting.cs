namespace NcLanguage.Cli.Common;

/// <summary>What the command waits for at this moment and cannot go on without: others who give input or take output. It may be ended amid that, for
/// nothing is half done then that it could still finish.</summary>
static class Waiting
{
    /// <summary>Milliseconds that a reader takes at most to take a piece of the output, if it reads at all; on a busy machine it may not come to run for some tenths of a second.</summary>
    const long SlowReader = 400;

    static int _inputs;

    /// <summary>When the piece that is being written to standard output, and that to standard error, was begun, in milliseconds; 0 where none is.</summary>
    static readonly long[] _since = new long[2];

    static long _lastTaken;

    static int _files;

    /// <summary>When a piece of output was last taken, in milliseconds; 0 where none was yet.</summary>
    public static long LastTaken => Volatile.Read(ref _lastTaken);

    public static void BeginInput() => Interlocked.Increment(ref _inputs);

    public static void EndInput() => Interlocked.Decrement(ref _inputs);

    public static void BeginOutput(bool isError = false) => Volatile.Write(ref _since[isError ? 1 : 0], Math.Max(1, Environment.TickCount64));

    public static void EndOutput(bool isError = false)
    {
        Volatile.Write(ref _since[isError ? 1 : 0], 0);
        Volatile.Write(ref _lastTaken, Environment.TickCount64);
    }

    /// <summary>A file is being written: where the process ended now, half of it would be left beside the old one.</summary>
    public static void BeginFile() => Interlocked.Increment(ref _files);

    public static void EndFile() => Interlocked.Decrement(ref _files);

    /// <summary>Whether the command waits for others, and would not end by itself.</summary>
    public static bool IsStuck => Volatile.Read(ref _files) == 0
        && (Volatile.Read(ref _inputs) > 0 || IsSlow(ref _since[0]) || IsSlow(ref _since[1]));

    static bool IsSlow(ref long since) => Volatile.Read(ref since) is > 0 and var begun && Environment.TickCount64 - begun >= SlowReader;
}
