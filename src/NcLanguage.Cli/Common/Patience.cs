namespace NcLanguage.Cli.Common;

/// <summary>How long a command goes on that was asked to end. What counts is the time in which it works or rests: on a busy machine it does neither for most of the time, since it waits
/// for a processor, and would be ended amid what it does. Asked by one thread at a time, every few milliseconds; times are milliseconds from any beginning.</summary>
/// <param name="asked">When it was asked to end.</param>
/// <param name="worked">How long its threads had worked until then, together.</param>
sealed class Patience(long asked, long worked)
{
    /// <summary>How long it may work, or rest.</summary>
    const long Longest = 2_000;

    /// <summary>However busy the machine is.</summary>
    const long LongestInAll = 10_000;

    /// <summary>Stretches of time that are told apart: threads that share a processor with many others come to run several times in one.</summary>
    const long Window = 500;

    /// <summary>A look that comes later behind the one before had to wait itself.</summary>
    const long LateLook = 50;

    /// <summary>The part of a stretch up to which a process counts as one that rests: it looks at the time.</summary>
    const double Rest = 0.02;

    long _since = asked;
    long _last = asked;
    long _worked = worked;
    long _window;
    long _spent;

    /// <param name="now">The time.</param>
    /// <param name="worked">How long its threads have worked, together.</param>
    /// <param name="lastTaken">When somebody last took a piece of its output: whoever does gets the rest, so that all counts from there.</param>
    public bool IsOver(long now, long worked, long lastTaken)
    {
        if (lastTaken > _since)
            (_since, _window, _spent, _worked) = (lastTaken, 0, 0, worked);
        _window += Math.Min(now - _last, LateLook);
        _last = now;
        if (_window >= Window)
        {
            var work = worked - _worked;
            _spent += work > _window * Rest ? Math.Min(work, _window) : _window;
            (_window, _worked) = (0, worked);
        }
        return _spent >= Longest || now - _since >= LongestInAll;
    }
}
