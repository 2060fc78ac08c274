using System.Collections.Immutable;
using NcLanguage.Control.Execution;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Analysis;

/// <summary>A program, its setup and its machine, run and checked: an immutable snapshot that every feature answers from.</summary>
public sealed class ProgramAnalysis
{
    static readonly Rule[] StepRules = [.. RuleList.All.Where(rule => rule.Interest != StepEvents.None)];
    static readonly Rule[] TextRules = [.. RuleList.All.Where(rule => rule.ReadsText)];

    ProgramAnalysis(AnalysisRuns runs, AnalysisOptions options)
    {
        Runs = runs;
        Options = options;
        Findings = FindingAssembly.Collect(runs, options);
    }

    /// <summary>The runs under the readings that the analysis looks at.</summary>
    public AnalysisRuns Runs { get; }

    public AnalysisOptions Options { get; }

    /// <summary>The run under the reading in force.</summary>
    public ProgramRun Main => Runs.Main;

    public SourceText Text => Main.Text;

    public Setup Setup => Main.Job.Setup;

    public MachineProfile Machine => Main.Job.Machine;

    /// <summary>All findings in the order of the text, those silenced by comments left out.</summary>
    public ImmutableArray<Finding> Findings { get; }

    /// <summary>Blocks that had to be run, over all readings, to make this from what it was made from.</summary>
    public int BlocksRun => Runs.BlocksRun;

    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static ProgramAnalysis Create(
        SourceText text, Setup setup, MachineProfile machine, AnalysisOptions? options = null, CancellationToken cancel = default)
    {
        options ??= AnalysisOptions.Default;
        return new ProgramAnalysis(AnalysisRuns.Create(text, setup, machine, options, StepRules, TextRules, cancel), options);
    }

    /// <summary>The analysis of a new version of the text; what the edit left as it was is reused.</summary>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public ProgramAnalysis WithText(SourceText text, CancellationToken cancel = default) =>
        new(Runs.WithText(text, Options, StepRules, TextRules, cancel), Options);

    /// <summary>The places that a finding refers to beside its own.</summary>
    public IEnumerable<RelatedPlace> Related(Finding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        if (finding.Related is { } place)
            yield return place;
        if (finding.Concerns == 0)
            yield break;
        var line = Main.LastSetterBefore(finding.Concerns, finding.Line);
        if (line < 0)
            yield break;
        var (start, end) = StepContext.WordsOf(Main.BlockAt(line));
        yield return new RelatedPlace(line, start, end, finding.ConcernsMessage);
    }

    /// <summary>The fixes offered for a finding, best first.</summary>
    public IEnumerable<Fix> FixesOf(Finding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return finding.Rule.Fixes(finding, this);
    }
}
