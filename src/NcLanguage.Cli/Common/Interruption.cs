using System.Runtime.InteropServices;

namespace NcLanguage.Cli.Common;

/// <summary>Ctrl-C, and the request to end that other processes send. The first asks the command to end, which leaves no half of anything; where
/// nothing comes of it for long (<see cref="Patience"/>), or it waits for others meanwhile (<see cref="Waiting"/>), or at a second one, the process ends at once.</summary>
sealed class Interruption : IDisposable
{
    static readonly TimeSpan Look = TimeSpan.FromMilliseconds(10);

    /// <summary>How long the last line may take; standard error may be what nobody reads.</summary>
    static readonly TimeSpan LastWord = TimeSpan.FromMilliseconds(100);

    readonly CancellationTokenSource _stop = new();
    readonly PosixSignalRegistration[] _registered;
    readonly Lock _gate = new();
    Timer? _watch;
    Patience? _patience;
    int _exitCode;
    bool _isOver;

    public Interruption() => _registered = [Register(PosixSignal.SIGINT, 2), Register(PosixSignal.SIGTERM, 15)];

    /// <summary>Cancelled by the first.</summary>
    public CancellationToken Token => _stop.Token;

    /// <summary>What a process ends with that was asked to end, as shells count: 130 after Ctrl-C.</summary>
    public int ExitCode => _exitCode == 0 ? Common.ExitCode.Interrupted : _exitCode;

    PosixSignalRegistration Register(PosixSignal signal, int number) => PosixSignalRegistration.Create(signal, context =>
    {
        if (Interlocked.CompareExchange(ref _exitCode, 128 + number, 0) != 0)
            return;
        context.Cancel = true;
        _patience = new Patience(Environment.TickCount64, Worked);
        _watch = new Timer(_ => EndWhereItMust(), null, TimeSpan.Zero, Look);
        _ = _stop.CancelAsync();
    });

    /// <summary>How long the threads of this process have worked, together, in milliseconds.</summary>
    static long Worked => (long)Environment.CpuUsage.TotalTime.TotalMilliseconds;

    void EndWhereItMust()
    {
        lock (_gate)
        {
            if (_isOver || !(Waiting.IsStuck() || _patience!.IsOver(Environment.TickCount64, Worked, Waiting.LastTaken)))
                return;
            _isOver = true;
        }
        var telling = new Thread(() => Application.Tell(StoppedException.Usual)) { IsBackground = true };
        telling.Start();
        telling.Join(LastWord);
        Environment.Exit(ExitCode);
    }

    public void Dispose()
    {
        lock (_gate)
            _isOver = true;
        foreach (var registration in _registered)
            registration.Dispose();
        _watch?.Dispose();
        _stop.Dispose();
    }
}
