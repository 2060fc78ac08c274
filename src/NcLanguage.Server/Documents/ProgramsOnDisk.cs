using NcLanguage.Checks.Analysis;
using NcLanguage.Server.Features;
using NcLanguage.Server.Jobs;
using NcLanguage.Server.Rpc;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Server.Documents;

/// <summary>Programs that are not open: read, run and checked when somebody asks. May be used by several workers at once.</summary>
sealed class ProgramsOnDisk(JobLoader jobs, ServerSettings settings, DiagnosticPublisher publisher, PositionMapper positions, ClientProfile client)
{
    /// <summary>A program as it stands on disk, with its setup and machine; null where it cannot be read.</summary>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public FeatureContext? Read(string path, CancellationToken cancel)
    {
        if (jobs.TextOf(path) is not { } text)
            return null;
        var job = jobs.Load(path);
        var analysis = ProgramAnalysis.Create(text, job.Inputs.Setup, job.Inputs.Machine, settings.Analysis with { Programs = job.Programs }, cancel);
        // A document of the client's has a version from 0 up.
        var snapshot = new DocumentSnapshot(jobs.UriOf(path), -1, text, Look.Past, Task.FromResult(new AnalysedProgram(analysis, job)), CancellationToken.None);
        return new FeatureContext(snapshot, analysis, client, positions, publisher, jobs, job, cancel);
    }
}
