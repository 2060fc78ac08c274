using System.Collections.Immutable;
using NcLanguage.Checks.Analysis;
using NcLanguage.Cli.Common;
using NcLanguage.Cli.Files;
using NcLanguage.Machine.Files;
using NcLanguage.Machine.Loading;
using NcLanguage.Reports.Findings;

namespace NcLanguage.Cli.Check;

/// <summary>Checks programs side by side, and the setup and machine files that go with them.</summary>
sealed class CheckRun
{
    public required JobOptions Options { get; init; }

    public required AnalysisOptions Analysis { get; init; }

    /// <summary>Whether the fixes that are certain are made.</summary>
    public bool Fix { get; init; }

    /// <summary>Whether what was fixed is written.</summary>
    public bool Write { get; init; }

    public CancellationToken Cancel { get; init; }

    sealed record Outcome(ReportedFile? File, ImmutableArray<SetupProblem> Problems, UnreadFile? NotRead);

    public CheckReport Check(ProgramSearch search)
    {
        if (search.Paths is [var single] && search.NotRead.IsEmpty)
            return Report(search, [CheckOne(single)]);
        var outcomes = new Outcome[search.Paths.Length];
        using var progress = new CheckProgress(outcomes.Length);
        var parallel = new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount, CancellationToken = Cancel };
        try
        {
            Parallel.For(0, outcomes.Length, parallel, i =>
            {
                try
                {
                    outcomes[i] = CheckOne(search.Paths[i]);
                }
                catch (UnreadableProgramException e)
                {
                    outcomes[i] = new Outcome(null, [], new UnreadFile(search.Paths[i], e.Message));
                }
                progress.Advance();
            });
        }
        catch (AggregateException e) when (e.InnerExceptions.OfType<CannotRunException>().FirstOrDefault() is { } first)
        {
            throw new CannotRunException(first.Message);
        }
        return Report(search, outcomes);
    }

    Outcome CheckOne(string path)
    {
        var program = ProgramFile.Read(path);
        var job = JobResolver.Resolve(program, Options);
        var analysis = ProgramAnalysis.Create(program.Text, job.Setup, job.Machine, Analysis with { Programs = JobResolver.ProgramsBeside(program) }, Cancel);
        var applied = ImmutableArray<AppliedFix>.Empty;
        if (Fix)
        {
            (analysis, applied) = SafeFixes.Apply(program, analysis, Cancel);
            if (Write && !applied.IsEmpty)
                SafeFixes.Write(program, analysis.Text);
        }
        return new Outcome(FindingReader.Read(path, analysis) with { Fixed = applied }, job.Problems, null);
    }

    static CheckReport Report(ProgramSearch search, Outcome[] outcomes)
    {
        var setups = SetupReport.Of(outcomes.SelectMany(outcome => outcome.Problems), search.Paths.Any(Path.IsPathRooted));
        var files = outcomes.Select(outcome => outcome.File).OfType<ReportedFile>().Concat(setups);
        return new CheckReport([.. files.OrderBy(file => file.Path, StringComparer.Ordinal)])
        {
            NotRead = [.. search.NotRead, .. outcomes.Select(outcome => outcome.NotRead).OfType<UnreadFile>()],
        };
    }
}
