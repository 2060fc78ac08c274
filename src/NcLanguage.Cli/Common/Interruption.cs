using System.Runtime.InteropServices;

namespace NcLanguage.Cli.Common;

/// <summary>Ctrl-C, and the request to end that other processes send. The first asks the command to end, which leaves no half of anything; where it does
/// not within <see cref="Patience"/>, or at a second one, the process ends at once.</summary>
sealed class Interruption : IDisposable
{
    static readonly TimeSpan Patience = TimeSpan.FromSeconds(2);

    readonly CancellationTokenSource _stop = new();
    readonly PosixSignalRegistration[] _registered;
    Timer? _end;
    int _exitCode;

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
        _end = new Timer(_ => Environment.Exit(ExitCode), null, Patience, Timeout.InfiniteTimeSpan);
        _ = _stop.CancelAsync();
    });

    public void Dispose()
    {
        foreach (var registration in _registered)
            registration.Dispose();
        _end?.Dispose();
        _stop.Dispose();
    }
}
