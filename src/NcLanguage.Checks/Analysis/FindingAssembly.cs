using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.InteropServices;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Analysis;

/// <summary>Puts the findings of the parts together: absolute lines, both ways of block skip, whole-file rules, comments that ask for silence.</summary>
sealed class FindingAssembly
{
    FindingAssembly(FindingsTold told, ImmutableArray<Finding> ofTheWhole) =>
        (Told, OfTheWhole, AreFixesInDoubt) = (told, ofTheWhole, PutFixesInDoubt(ofTheWhole));

    /// <summary>All findings in the order of the text, and what is told with one of them.</summary>
    public FindingsTold Told { get; }

    /// <summary>What rules on the whole file have found, before comments silence it, with all names of coordinates marked.</summary>
    public ImmutableArray<Finding> OfTheWhole { get; }

    /// <summary>Whether something in the whole file leaves no fix sure.</summary>
    public bool AreFixesInDoubt { get; }

    /// <summary>The same of what has been found in the whole file.</summary>
    public static bool PutFixesInDoubt(ImmutableArray<Finding> ofTheWhole) => ofTheWhole.Any(finding => finding.Rule.PutsFixesInDoubt);

    public static FindingAssembly Of(AnalysisRuns runs, AnalysisOptions options, CancellationToken cancel)
    {
        var ofBlocks = OfBlocks(runs.Main);
        var others = new List<Finding>();
        var file = new FileContext(runs, options, ofBlocks, others, cancel);
        foreach (var rule in options.RulesInForce.File)
        {
            cancel.ThrowIfCancellationRequested();
            try
            {
                rule.CheckFile(file);
            }
            catch (Exception e) when (RuleFault.IsFault(e))
            {
                others.Add(RuleFault.InFile(rule, e));
            }
        }
        if (runs.Main.Flow is { } flow)
            JoinRuns(others, flow);
        ImmutableArray<Finding> ofTheWhole = [.. others];
        Name(CollectionsMarshal.AsSpan(others), runs.Main);
        return new FindingAssembly(Finish(runs, ofBlocks, others), ofTheWhole);
    }

    /// <summary>Findings without a new look at the whole file.</summary>
    /// <param name="ofTheWhole">What was found there in the version before, at its lines in this one.</param>
    public static FindingsTold FirstLook(AnalysisRuns runs, ImmutableArray<Finding> ofTheWhole)
    {
        List<Finding> others = [.. ofTheWhole];
        Name(CollectionsMarshal.AsSpan(others), runs.Main);
        return Finish(runs, OfBlocks(runs.Main), others);
    }

    /// <summary>Tells the coordinates of places in findings, where the run wants them told.</summary>
    static void Name(Span<Finding> findings, ProgramRun run)
    {
        foreach (ref var finding in findings)
            finding = PlaceNames.Told(finding, run.PlainCoordinates);
    }

    /// <param name="ofBlocks">What <see cref="OfBlocks"/> gives for the main run.</param>
    /// <param name="others">Those of rules on the whole file.</param>
    static FindingsTold Finish(AnalysisRuns runs, Finding[] ofBlocks, List<Finding> others)
    {
        var kinds = KindsOf(runs.Main) | FindingKindsOf.All(CollectionsMarshal.AsSpan(others));
        if (kinds is FindingKinds.None or FindingKinds.Any && runs is { OtherSkip: null, Main.Flow: null } && !runs.Main.TextFacts.All.HasAllow)
            return new(Merged(ofBlocks, others), []);
        var findings = new List<Finding>(ofBlocks.Length + others.Count);
        findings.AddRange(ofBlocks);
        findings.AddRange(others);
        if (runs.OtherSkip is { } other)
        {
            kinds |= KindsOf(other);
            AddOtherSkip(other, findings);
        }
        Allows.Apply(runs.Main, findings);
        if (Has(FindingKinds.Pilot))
            PilotFindings.TakeOut(runs.Main, findings);
        if (Has(FindingKinds.Misplaced))
            MisplacedFindings.TakeOut(runs.Main, findings);
        if (Has(FindingKinds.Hole))
            HoleFindings.Join(runs.Main, findings);
        if (Has(FindingKinds.Setting))
            SettingFindings.Join(runs.Main, findings);
        if (Has(FindingKinds.Depth))
            DepthFindings.Join(runs.Main, findings);
        if (Has(FindingKinds.MissingProgram))
            MissingPrograms.Join(findings);
        if (Has(FindingKinds.EndlessLoop))
            EndlessLoops.TakeOut(findings);
        var explained = Has(FindingKinds.Explaining) ? ExplainedFindings.TakeOut(findings) : [];
        Order(findings);
        return new([.. findings], explained);

        bool Has(FindingKinds kind) => (kinds & kind) != 0;
    }

    /// <summary>Findings in the order of the text, with a few others put in.</summary>
    static ImmutableArray<Finding> Merged(Finding[] ordered, List<Finding> others)
    {
        if (others.Count == 0)
            return ImmutableCollectionsMarshal.AsImmutableArray(ordered);
        others.Sort(Comparer);
        var merged = new Finding[ordered.Length + others.Count];
        var taken = 0;
        for (var i = 0; i < others.Count; i++)
        {
            var at = ordered.AsSpan(taken).BinarySearch(others[i], Comparer);
            var before = at < 0 ? ~at : at;
            ordered.AsSpan(taken, before).CopyTo(merged.AsSpan(taken + i));
            taken += before;
            merged[taken + i] = others[i];
        }
        ordered.AsSpan(taken).CopyTo(merged.AsSpan(taken + others.Count));
        return ImmutableCollectionsMarshal.AsImmutableArray(merged);
    }

    /// <summary>Brings findings into the order of the text. All but a few at the end are in order already, however many there are.</summary>
    static void Order(List<Finding> findings)
    {
        var ordered = 1;
        while (ordered < findings.Count && ByPlace(findings[ordered - 1], findings[ordered]) <= 0)
            ordered++;
        if (ordered >= findings.Count)
            return;
        var others = findings[ordered..];
        others.Sort(Comparer);
        // From the end on, so that none is overwritten that still has to move.
        var (left, other) = (ordered - 1, others.Count - 1);
        for (var to = findings.Count - 1; other >= 0; to--)
            findings[to] = left >= 0 && ByPlace(findings[left], others[other]) > 0 ? findings[left--] : others[other--];
    }

    public static readonly Comparer<Finding> Comparer = Comparer<Finding>.Create(ByPlace);

    /// <summary>The findings of a run's blocks, where it keeps to the order of the text in that order; not to be changed.</summary>
    static Finding[] OfBlocks(ProgramRun run)
    {
        if (run.Flow is not { } flow)
            return run.BlockFindings.All;
        Finding[] findings = [.. run.BlockFindings.All, .. flow.Findings];
        Name(findings.AsSpan(run.BlockFindings.All.Length), run);
        return findings;
    }

    static FindingKinds KindsOf(ProgramRun run) => run.BlockFindings.Kinds | FindingKindsOf.All((run.Flow?.Findings ?? []).AsSpan());

    /// <summary>What a whole-file rule finds at several runs of a block is told once: the first of the worst, with how many times.</summary>
    static void JoinRuns(List<Finding> findings, FlowRun flow)
    {
        var known = new Dictionary<(Rule Rule, int Line, int Start, int End), int>();
        var times = new List<int>();
        var kept = 0;
        for (var i = 0; i < findings.Count; i++)
        {
            var finding = findings[i];
            var key = (finding.Rule, finding.Line, finding.StartColumn, finding.EndColumn);
            if (finding.Rule.CountsRuns && flow.RunsOf(finding.Line) > 1 && !known.TryAdd(key, kept))
            {
                var first = known[key];
                times[first]++;
                if (finding.Severity < findings[first].Severity)
                    findings[first] = finding;
                continue;
            }
            findings[kept++] = finding;
            times.Add(1);
        }
        findings.RemoveRange(kept, findings.Count - kept);
        for (var i = 0; i < kept; i++)
            if (times[i] is > 1 and var found)
                findings[i] = findings[i] with
                {
                    Message = findings[i].Message
                        + string.Create(CultureInfo.InvariantCulture, $" ({found:N0} times in the {flow.RunsOf(findings[i].Line):N0} runs of this block.)"),
                };
    }

    /// <summary>Adds what only goes wrong with the block skip switch the other way.</summary>
    static void AddOtherSkip(ProgramRun other, List<Finding> findings)
    {
        var known = findings.Select(finding => (finding.Rule, finding.Line, finding.StartColumn)).ToHashSet();
        var skipping = other.Job.Executor.SkipBlocks;
        foreach (var finding in OfBlocks(other))
        {
            if (known.Contains((finding.Rule, finding.Line, finding.StartColumn)))
                continue;
            findings.Add(finding with
            {
                IsOfOtherSkip = true,
                Message = finding.Message + (skipping ? " (When blocks with / are skipped.)" : " (When blocks with / run.)"),
            });
        }
    }

    /// <summary>The order of the text. No two that differ are equal in it: what is found does not hang on how a text is held.</summary>
    public static int ByPlace(Finding a, Finding b)
    {
        var line = a.Line.CompareTo(b.Line);
        if (line != 0)
            return line;
        var column = a.StartColumn.CompareTo(b.StartColumn);
        if (column != 0)
            return column;
        var id = string.CompareOrdinal(a.Id, b.Id);
        if (id != 0)
            return id;
        var end = a.EndColumn.CompareTo(b.EndColumn);
        return end != 0 ? end : string.CompareOrdinal(a.Message, b.Message);
    }
}
