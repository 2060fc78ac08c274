using System.Collections.Immutable;
using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Files;
using NcLanguage.Server.Protocol;

namespace NcLanguage.Server.Jobs;

/// <summary>What the editor's settings and the command line choose for all programs. What a setting does not say stays as the command line has it.</summary>
sealed class ServerSettings(JobOptions job, AnalysisOptions analysis)
{
    volatile Choice _current = new(job, analysis);

    sealed record Choice(JobOptions Job, AnalysisOptions Analysis);

    public JobOptions Job => _current.Job;

    /// <summary>The files that the command line names, full paths: they may be read wherever they lie.</summary>
    public IReadOnlyList<string> FilesOfCommandLine { get; } =
        [.. new[] { job.SetupPath, job.Machine is { } machine && machine.EndsWith(".json", StringComparison.OrdinalIgnoreCase) ? machine : null }.Select(path => SetupLocator.FullPath(path)).OfType<string>()];

    public AnalysisOptions Analysis => _current.Analysis;

    /// <summary>Takes new settings; false where nothing is other than before.</summary>
    public bool Take(EditorSettings settings)
    {
        Choice next = new(
            new JobOptions
            {
                SetupPath = Given(settings.Setup) ?? job.SetupPath,
                Machine = Given(settings.Machine) ?? job.Machine,
                Readings = settings.Readings is { Length: > 0 } readings ? [.. readings] : job.Readings,
            },
            analysis with { Portable = settings.Portable ?? analysis.Portable, Skip = settings.SkipBlocks ?? analysis.Skip });
        var before = _current;
        _current = next;
        return before.Analysis != next.Analysis || before.Job.SetupPath != next.Job.SetupPath || before.Job.Machine != next.Job.Machine
            || !before.Job.Readings.AsSpan().SequenceEqual(next.Job.Readings.AsSpan());
    }

    static string? Given(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
