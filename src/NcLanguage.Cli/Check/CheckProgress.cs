using System.Globalization;

namespace NcLanguage.Cli.Check;

/// <summary>Shows on standard error how far a check of many programs is: only where somebody looks at a terminal, and only once it takes long enough
/// to be asked. One line, which goes away again.</summary>
sealed class CheckProgress : IDisposable
{
    static readonly TimeSpan Silent = TimeSpan.FromSeconds(1);
    static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(100);

    readonly Lock _gate = new();
    readonly int _programs;
    readonly Timer? _timer;
    int _done;
    long _bytes;
    int _shown;
    string _line = "";
    bool _isHidden;

    public CheckProgress(int programs)
    {
        _programs = programs;
        if (programs > 1 && !Console.IsErrorRedirected)
            _timer = new Timer(_ => Show(), null, Silent, Pause);
    }

    public void Advance(int bytes)
    {
        Interlocked.Increment(ref _done);
        Interlocked.Add(ref _bytes, bytes);
    }

    /// <summary>Does something that may write to standard output; where it does and that is the terminal too, the line gets out of its way.</summary>
    public void While(bool isWriting, Action write)
    {
        if (_timer is null || !isWriting || Console.IsOutputRedirected)
        {
            write();
            return;
        }
        lock (_gate)
        {
            Hide();
            _isHidden = true;
        }
        try
        {
            write();
        }
        finally
        {
            lock (_gate)
                _isHidden = false;
        }
    }

    public void Dispose()
    {
        if (_timer is null)
            return;
        _timer.Dispose();
        lock (_gate)
        {
            Hide();
            _isHidden = true;
        }
    }

    void Show()
    {
        lock (_gate)
        {
            if (_isHidden)
                return;
            var line = Line(Volatile.Read(ref _done), _programs, Interlocked.Read(ref _bytes));
            if (line == _line && _shown > 0)
                return;
            Console.Error.Write('\r' + line.PadRight(_shown));
            (_shown, _line) = (line.Length, line);
        }
    }

    void Hide()
    {
        if (_shown > 0)
            Console.Error.Write('\r' + new string(' ', _shown) + '\r');
        _shown = 0;
    }

    static string Line(int done, int programs, long bytes) =>
        string.Create(CultureInfo.InvariantCulture, $"{done:N0} of {programs:N0} programs, {bytes / 1e6:N1} MB checked");
}
