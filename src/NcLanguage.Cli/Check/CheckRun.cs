using System.Collections.Immutable;
using NcLanguage.Checks.Analysis;
using NcLanguage.Cli.Common;
using NcLanguage.Cli.Files;
using NcLanguage.Machine.Files;
using NcLanguage.Machine.Loading;
using NcLanguage.Reports.Findings;

namespace NcLanguage.Cli.Check;

/// <summary>What becomes of the fixes that are certain.</summary>
enum FixUse
{
    /// <summary>They are offered.</summary>
    None,

    /// <summary>They are made and shown; nothing is written.</summary>
    Preview,

    /// <summary>They are made and written.</summary>
    Write,
}

/// <summary>Checks programs side by side, and the setup and machine files that go with them. Nothing of a program is kept once it was told.</summary>
sealed class CheckRun
{
    public required JobOptions Options { get; init; }

    public required AnalysisOptions Analysis { get; init; }

    /// <summary>The folders that the command line names, by themselves or by a setup, machine or cutting file in them: full paths.</summary>
    public ImmutableArray<string> Folders { get; init; } = [];

    public FixUse Fixes { get; init; }

    public CancellationToken Cancel { get; init; }

    sealed record Outcome(ReportedFile? File, ImmutableArray<SetupProblem> Problems, UnreadFile? Failed, int Bytes);

    /// <summary>Tells the programs in the order of their names as they are done, then the setup and machine files with mistakes.</summary>
    /// <exception cref="CannotRunException">An option cannot be followed.</exception>
    public CheckTotals Check(ProgramSearch search, ICheckWriter writer)
    {
        var totals = new CheckTotals();
        totals.NotRead.AddRange(search.NotRead);
        var problems = new HashSet<SetupProblem>();
        using var progress = new CheckProgress(search.Paths.Length);
        var tellsAll = writer is not CheckText;
        var isAlone = search.Paths.Length == 1;
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(Cancel);
        var pieces = new InOrder<Outcome>(
            search.Paths.Length,
            number => Check(search.Paths[number], isAlone, progress, stop.Token),
            outcome => 1 + (outcome.File?.Findings.Length ?? 0),
            outcome => progress.While(isWriting: tellsAll || outcome.File is { HasNews: true }, () => TellOrStop(outcome)));
        var told = pieces.Run(stop.Token);
        if (told < search.Paths.Length)
            totals.LeftOut = search.Paths.Length - told;
        progress.While(isWriting: true, () =>
        {
            foreach (var setup in SetupReport.Of(problems, search.Paths.Any(Path.IsPathRooted), [.. Folders, .. JobFence.Named(Options)]).OrderBy(file => file.Path, StringComparer.Ordinal))
                Add(setup);
            writer.End(totals);
        });
        return totals;

        void TellOrStop(Outcome outcome)
        {
            try
            {
                Tell(outcome);
            }
            catch (ReaderGoneException)
            {
                // What the other processors are at is for nobody either.
                stop.Cancel();
                throw;
            }
        }

        void Tell(Outcome outcome)
        {
            problems.UnionWith(outcome.Problems);
            if (outcome.Failed is { } failed)
                totals.NotRead.Add(failed);
            if (outcome.File is { } file)
                Add(file);
        }

        void Add(ReportedFile file)
        {
            totals.Add(file);
            writer.Write(file);
        }
    }

    /// <summary>Checks a program; what goes wrong with it must not keep the others from being checked.</summary>
    Outcome Check(string path, bool isAlone, CheckProgress progress, CancellationToken cancel)
    {
        Outcome outcome;
        try
        {
            outcome = CheckOne(path, isAlone, cancel);
        }
        catch (ProgramFailedException e)
        {
            outcome = Failed(e.Message);
        }
#pragma warning disable CA1031 // A fault of ours in one program; the user is told which.
        catch (Exception e) when (e is not (CannotRunException or OperationCanceledException))
#pragma warning restore CA1031
        {
            outcome = Failed($"{path} met an internal error, {e.GetType().Name}: {e.Message}; please report it with that file");
        }
        progress.Advance(outcome.Bytes);
        return outcome;

        Outcome Failed(string reason) => new(null, [], new UnreadFile(path, reason), 0);
    }

    Outcome CheckOne(string path, bool isAlone, CancellationToken cancel)
    {
        // A pattern of the shell names them together with their programs.
        if (JobFileName.IsJobFile(path))
            return new Outcome(null, JobResolver.Mistakes(path, Folders), null, 0);
        var program = ProgramFile.Read(path);
        var job = JobResolver.Resolve(program, Options, Folders);
        var options = Analysis with { Programs = JobResolver.ProgramsBeside(program), WithTwoHands = isAlone, Once = Fixes == FixUse.None };
        var analysis = ProgramAnalysis.Create(program.Text, job.Setup, job.Machine, options, cancel);
        var (applied, left) = (ImmutableArray<AppliedFix>.Empty, ImmutableArray<LeftFix>.Empty);
        // Read for another machine than the setup names, what is certain may not be what was meant.
        var unread = Fixes == FixUse.None ? null : job.Problems.FirstOrDefault(problem => problem.Kind == ProblemKind.Malformed && !JobFileName.IsCutting(problem.Path));
        if (Fixes != FixUse.None && unread is null)
        {
            (analysis, applied, left) = SafeFixes.Apply(program, analysis, cancel);
            if (Fixes == FixUse.Write && !applied.IsEmpty)
                Put(program, analysis);
        }
        return new Outcome(FindingReader.Read(path, analysis) with { Fixed = applied, NotFixed = left, Remark = unread is null ? program.Remark : $"{Path.GetFileName(unread.Path)} cannot be read: nothing is fixed in this program." }, job.Problems, null, program.Text.Length);
    }

    static void Put(ProgramFile program, ProgramAnalysis analysis)
    {
        try
        {
            program.Replace(analysis.Text);
        }
        catch (CannotRunException e)
        {
            throw new ProgramFailedException(e.Message);
        }
    }
}
