using System.Collections.Immutable;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Analysis;

/// <summary>A program, its setup and its machine, run and checked: an immutable snapshot that every feature answers from.</summary>
public sealed class ProgramAnalysis
{
    readonly Lock _gate = new();
    volatile FindingAssembly? _assembly;
    ImmutableArray<Finding> _carried = [];
    ImmutableArray<RelatedPlace> _explainedAtFirst = [];
    ProgramAnalysis? _otherSkip;

    ProgramAnalysis(AnalysisRuns runs, AnalysisOptions options)
    {
        Runs = runs;
        Options = options;
    }

    /// <summary>The runs under the readings that the analysis looks at.</summary>
    public AnalysisRuns Runs { get; }

    public AnalysisOptions Options { get; }

    /// <summary>The run under the reading in force.</summary>
    public ProgramRun Main => Runs.Main;

    public SourceText Text => Main.Text;

    public Setup Setup => Main.Job.Setup;

    public MachineProfile Machine => Main.Job.Machine;

    /// <summary>All findings in the order of the text, those silenced by comments left out. What compares distant places is compared when first asked for.</summary>
    public ImmutableArray<Finding> Findings => FindAll(CancellationToken.None);

    /// <summary>The same; a search that is cancelled is made anew when asked for again.</summary>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public ImmutableArray<Finding> FindAll(CancellationToken cancel)
    {
        if (_assembly is { } made)
            return made.Told.Findings;
        if (!Main.IsWhole)
            throw new NotYetRunException();
        lock (_gate)
            return (_assembly ??= FindingAssembly.Of(Runs, Options, cancel)).Told.Findings;
    }

    /// <summary>The analysis as far as its run has come, where <see cref="WithText"/> handed it out on the way: it answers what hangs on no block behind that as the whole will, and throws
    /// <see cref="NotYetRunException"/> for all else.</summary>
    public ProgramAnalysis AsFarAsRun() => new(Runs with { Main = Main.AsFarAsRun() }, Options);

    /// <summary>Findings for a first look at a large program that has just been edited: those of its blocks as they are now, and of what compares distant places those of the
    /// version before, moved with their lines.</summary>
    public ImmutableArray<Finding> FirstLook(ProgramAnalysis before)
    {
        ArgumentNullException.ThrowIfNull(before);
        if (_assembly is { } made)
            return made.Told.Findings;
        var lines = new LineMap(before.Text, Text);
        _carried = [.. before.OfTheWhole().Select(lines.Move).OfType<Finding>()];
        var (findings, explained) = FindingAssembly.FirstLook(Runs, _carried);
        _explainedAtFirst = explained;
        return findings;
    }

    /// <summary>Findings of an edited text that can be told at once, where it is large and its run, since it leaves the order of the text, has to be followed from its beginning: those told last,
    /// at their lines in it, and what the new lines show as they meet the state known there. Default where this is no such program.</summary>
    /// <param name="toldText">The text that <paramref name="told"/> is about.</param>
    public ImmutableArray<Finding> GlanceAt(SourceText text, SourceText toldText, ImmutableArray<Finding> told)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(toldText);
        return IsLarge && Main.Flow is not null && !told.IsDefault ? Glance.At(this, toldText, told, text) : default;
    }

    /// <summary>Whether the whole program is so large that comparing its distant places may take longer than a key does.</summary>
    public bool IsLarge => Text.LineCount > LinesOfALargeProgram;

    const int LinesOfALargeProgram = 2_000;

    /// <summary>Blocks that had to be run, over all readings, to make this from what it was made from.</summary>
    public int BlocksRun => Runs.BlocksRun;

    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static ProgramAnalysis Create(
        SourceText text, Setup setup, MachineProfile machine, AnalysisOptions? options = null, CancellationToken cancel = default)
    {
        options ??= AnalysisOptions.Default;
        return new ProgramAnalysis(AnalysisRuns.Create(text, setup, machine, options, options.RulesInForce.Step, options.RulesInForce.Text, cancel), options);
    }

    /// <summary>The analysis of a new version of the text; what the edit left as it was is reused.</summary>
    /// <param name="onTheWay">Called once where much has to run again: with an analysis that is new from the edit on as far as the run has come, and
    /// behind that as it was before. It serves for a first look.</param>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public ProgramAnalysis WithText(SourceText text, Action<ProgramAnalysis>? onTheWay = null, CancellationToken cancel = default) =>
        new(Runs.WithText(text, Options, Options.RulesInForce.Step, Options.RulesInForce.Text, onTheWay is null ? null : runs => onTheWay(new ProgramAnalysis(runs, Options)), cancel), Options);

    /// <summary>What was found by comparing distant places; where that has not been done, what was taken over from the version before.</summary>
    ImmutableArray<Finding> OfTheWhole() => _assembly?.OfTheWhole ?? _carried;

    /// <summary>The places that a finding refers to beside its own.</summary>
    public IEnumerable<RelatedPlace> Related(Finding finding) => Related(finding, new SetterLines(Main));

    /// <summary>The same, where the lines of what findings concern are asked for in turn.</summary>
    public IEnumerable<RelatedPlace> Related(Finding finding, SetterLines setters)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(setters);
        if (finding.Related is { } place)
            yield return place;
        if (finding.Rule.PutsFixesInDoubt)
            foreach (var explained in _assembly?.Told.Explained ?? _explainedAtFirst)
                yield return explained;
        var line = setters.Of(finding);
        if (line < 0)
            yield break;
        var (start, end) = StepContext.WordsOf(Main.BlockAt(line));
        yield return new RelatedPlace(line, start, end, finding.ConcernsMessage);
    }

    /// <summary>The fixes offered for a finding, best first: none where the fault lies in another file, and none that leaves the text as it is, makes a block longer than the control takes or runs too early.</summary>
    public IEnumerable<Fix> FixesOf(Finding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        if (finding.Fault is not null || finding.IsElsewhere)
            return [];
        var longest = Machine.Readings.ProgramMarks.LongestBlock;
        var fixes = finding.Rule.Fixes(finding, finding.IsOfOtherSkip ? OtherSkip : this);
        // What is right where the blocks with / are left out may be wrong where they run, and what is right at one run of a block wrong at another.
        if (finding.IsOfOtherSkip || (finding.IsOfSomeRuns && !finding.Rule.MendsAllRuns) || (_assembly?.AreFixesInDoubt ?? FindingAssembly.PutFixesInDoubt(_carried)))
            fixes = fixes.Select(fix => fix with { Safety = FixSafety.Choice });
        return fixes.Where(fix => TextEdits.Change(fix.Edits, Text) && TextEdits.FitIn(fix.Edits, Text, longest) && !RunsTooEarly(fix, finding)).Select(fix => LetterCase.AsBeside(fix, this));
    }

    /// <summary>Whether a fix puts a block before a loop for what only some runs of the loop's head show: the end of the loop leads past it.</summary>
    bool RunsTooEarly(Fix fix, Finding finding) =>
        finding.IsOfSomeRuns
        && fix.Edits.Any(edit => edit.Line == finding.Line && edit.NewText is [.., '\n' or '\r'])
        && Main.Flow?.Text.PartnerOf(finding.Line) is { Line: var end, Statement: StatementKind.End or StatementKind.EndWhile or StatementKind.EndRepeat or StatementKind.While } && end > finding.Line;

    /// <summary>The program as it runs with the block skip switch the other way.</summary>
    ProgramAnalysis OtherSkip => _otherSkip ??= new(Runs with { Main = Runs.OtherSkip!, OtherSkip = Main }, Options);
}
