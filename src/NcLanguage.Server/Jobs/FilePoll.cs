namespace NcLanguage.Server.Jobs;

/// <summary>For clients that can't watch files: looks at the files in use itself, once a second.</summary>
static class FilePoll
{
    static readonly TimeSpan Interval = TimeSpan.FromSeconds(1);

    /// <summary>Calls <paramref name="onChanged"/> with the paths that changed, came or went, until cancelled. The files are looked at
    /// here, off the queue: on a network drive that may take its time.</summary>
    public static async Task RunAsync(Func<Task<IReadOnlyList<LoadedJob>>> jobsInUse, Func<IReadOnlyCollection<string>, Task> onChanged, CancellationToken cancellationToken)
    {
        using var timer = new PeriodicTimer(Interval);
        try
        {
            while (await timer.WaitForNextTickAsync(cancellationToken).ConfigureAwait(false))
            {
                var jobs = await jobsInUse().ConfigureAwait(false);
                List<string> changed = [.. jobs.SelectMany(job => job.Outdated()).Distinct()];
                if (changed.Count > 0)
                    await onChanged(changed).ConfigureAwait(false);
            }
        }
        catch (OperationCanceledException)
        {
            // The session is over.
        }
    }
}
