using System.Collections.Immutable;
using System.Globalization;
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
        var findings = WithRoom(runs.Main);
        AddOf(runs.Main, findings);
        var file = new FileContext(runs, options, findings, cancel);
        var firstOfFile = findings.Count;
        foreach (var rule in options.RulesInForce.File)
        {
            cancel.ThrowIfCancellationRequested();
            try
            {
                rule.CheckFile(file);
            }
            catch (Exception e) when (RuleFault.IsFault(e))
            {
                findings.Add(RuleFault.InFile(rule, e));
            }
        }
        if (runs.Main.Flow is { } flow)
            JoinRuns(findings, firstOfFile, flow);
        ImmutableArray<Finding> ofTheWhole = [.. findings[firstOfFile..]];
        Name(findings, firstOfFile, runs.Main);
        return new FindingAssembly(Finish(runs, findings), ofTheWhole);
    }

    /// <summary>Findings without a new look at the whole file.</summary>
    /// <param name="ofTheWhole">What was found there in the version before, at its lines in this one.</param>
    public static FindingsTold FirstLook(AnalysisRuns runs, ImmutableArray<Finding> ofTheWhole)
    {
        var findings = WithRoom(runs.Main);
        AddOf(runs.Main, findings);
        var firstOfFile = findings.Count;
        findings.AddRange(ofTheWhole);
        Name(findings, firstOfFile, runs.Main);
        return Finish(runs, findings);
    }

    /// <summary>Tells the coordinates of places in the findings from one on, where the run wants them told.</summary>
    static void Name(List<Finding> findings, int from, ProgramRun run)
    {
        for (var i = from; i < findings.Count; i++)
            findings[i] = PlaceNames.Told(findings[i], run.PlainCoordinates);
    }

    static FindingsTold Finish(AnalysisRuns runs, List<Finding> findings)
    {
        if (runs.OtherSkip is { } other)
            AddOtherSkip(other, findings);
        Allows.Apply(runs.Main, findings);
        PilotFindings.TakeOut(runs.Main, findings);
        MisplacedFindings.TakeOut(runs.Main, findings);
        HoleFindings.Join(runs.Main, findings);
        SettingFindings.Join(runs.Main, findings);
        DepthFindings.Join(runs.Main, findings);
        MissingPrograms.Join(findings);
        EndlessLoops.TakeOut(findings);
        var explained = ExplainedFindings.TakeOut(findings);
        Order(findings);
        return new([.. findings], explained);
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

    /// <summary>A list for the findings of a run and a few others: grown one by one behind them it would be made twice with each key.</summary>
    static List<Finding> WithRoom(ProgramRun run) => new(run.BlockFindings.All.Length + 64);

    /// <summary>Adds the findings of a run, where it keeps to the order of the text in that order.</summary>
    static void AddOf(ProgramRun run, List<Finding> findings)
    {
        findings.AddRange(run.BlockFindings.All);
        if (run.Flow is not { } flow)
            return;
        var first = findings.Count;
        findings.AddRange(flow.Findings);
        Name(findings, first, run);
    }

    /// <summary>What a whole-file rule finds at several runs of a block is told once: the first of the worst, with how many times.</summary>
    static void JoinRuns(List<Finding> findings, int from, FlowRun flow)
    {
        var known = new Dictionary<(Rule Rule, int Line, int Start, int End), int>();
        var times = new List<int>();
        var kept = from;
        for (var i = from; i < findings.Count; i++)
        {
            var finding = findings[i];
            var key = (finding.Rule, finding.Line, finding.StartColumn, finding.EndColumn);
            if (finding.Rule.CountsRuns && flow.RunsOf(finding.Line) > 1 && !known.TryAdd(key, kept))
            {
                var first = known[key];
                times[first - from]++;
                if (finding.Severity < findings[first].Severity)
                    findings[first] = finding;
                continue;
            }
            findings[kept++] = finding;
            times.Add(1);
        }
        findings.RemoveRange(kept, findings.Count - kept);
        for (var i = from; i < kept; i++)
            if (times[i - from] is > 1 and var found)
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
        var others = new List<Finding>();
        AddOf(other, others);
        foreach (var finding in others)
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
