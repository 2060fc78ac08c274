using NcLanguage.Cli.Common;
using Spectre.Console;

namespace NcLanguage.Cli.Check;

/// <summary>Shows on standard error how far a check of many files is; only where somebody looks at a terminal.</summary>
sealed class CheckProgress : IDisposable
{
    readonly TaskCompletionSource _done = new();
    readonly Task? _shown;
    ProgressTask? _task;

    public CheckProgress(int files)
    {
        if (Console.IsErrorRedirected || files < 2)
            return;
        var console = Screen.Ansi(Console.Error);
        if (!console.Profile.Capabilities.Ansi)
            return;
        _shown = console.Progress()
            .AutoClear(true)
            .Columns(new TaskDescriptionColumn(), new ProgressBarColumn(), new PercentageColumn())
            .StartAsync(async context =>
            {
                _task = context.AddTask("checking programs", maxValue: files);
                await _done.Task.ConfigureAwait(false);
            });
    }

    public void Advance() => _task?.Increment(1);

    public void Dispose()
    {
        _done.TrySetResult();
        _shown?.GetAwaiter().GetResult();
    }
}
