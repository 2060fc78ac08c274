using System.Globalization;
using NcLanguage.Control.Flow;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Analysis;

/// <summary>The findings of a run that comes to its blocks more than once: each place once, with how many runs showed it.</summary>
sealed class FlowFindings(SourceText text)
{
    readonly Dictionary<(Rule Rule, int Line, int Start, int End), int> _known = [];
    readonly List<(Finding Finding, int First, int Runs, long LastStep, bool Changes)> _findings = [];
    FlowRunner? _elsewhere;
    int _line;
    int _run;
    long _step;

    /// <summary>Begins a block of a run.</summary>
    /// <param name="run">Which of its runs this is, from 1.</param>
    public void Begin(FlowRunner runner, int run)
    {
        Begin(runner.OwnLine, run);
        _elsewhere = runner.Text.Name is null ? null : runner;
    }

    /// <summary>Begins a block on a line (0-based) of the program itself, for instance one that the run has not come to.</summary>
    /// <param name="run">Which of its runs this is, from 1.</param>
    public void Begin(int line, int run = 1)
    {
        _step++;
        _line = line;
        _run = run;
        _elsewhere = null;
    }

    /// <summary>A finding of the block, where it stands in the whole text.</summary>
    public Finding Place(Finding finding) => _elsewhere is { } runner ? AtCall(finding, runner) : finding with { Line = _line };

    /// <summary>Adds a finding of the block that stands where it is told.</summary>
    public void Add(Finding placed)
    {
        var key = (placed.Rule, placed.Line, placed.StartColumn, placed.EndColumn);
        if (!_known.TryGetValue(key, out var index))
        {
            _known.Add(key, _findings.Count);
            _findings.Add((placed, _run, 1, _step, false));
        }
        else if (_findings[index].LastStep != _step)
            _findings[index] = _findings[index] with { Runs = _findings[index].Runs + 1, LastStep = _step, Changes = _findings[index].Changes || !IsSame(_findings[index].Finding, placed) };
        else if (_elsewhere is null)
            // Two of one block, such as two moves that meet something: both are told at its first run, and only then.
            AddSecond(placed, index);
    }

    void AddSecond(Finding finding, int index)
    {
        if (_findings[index].Runs == 1 && _findings[index].Finding.Message != finding.Message)
            _findings.Add((finding, _run, 1, _step, false));
    }

    /// <summary>Whether a run of a block shows the same as another, so that what mends the one mends the other.</summary>
    static bool IsSame(Finding one, Finding other) => one.Message == other.Message && one.Value.Equals(other.Value) && one.Text == other.Text;

    /// <summary>What goes wrong in another file is told at the call that leads there.</summary>
    Finding AtCall(Finding finding, FlowRunner runner)
    {
        var (start, end) = StepContext.WordsOf(text.BlockAt(_line));
        return finding with
        {
            Line = _line,
            StartColumn = start,
            EndColumn = end,
            Message = $"In {runner.Text.Name}, line {runner.Line + 1}: {finding.Message}",
            Concerns = default,
            ConcernsMessage = "",
            IsElsewhere = true,
        };
    }

    public Finding[] Collect(int[] runs)
    {
        var collected = new Finding[_findings.Count];
        for (var i = 0; i < collected.Length; i++)
        {
            var (finding, first, found, _, changes) = _findings[i];
            var all = runs[finding.Line];
            if (first > 1)
                finding = finding with { Run = first - 1 };
            collected[i] = all < 2 || finding.IsElsewhere || !finding.Rule.CountsRuns ? finding
                : finding with { Message = finding.Message + Times(first, found, all), IsOfSomeRuns = found < all || changes };
        }
        return collected;
    }

    /// <summary>What many rules tell once, they tell at the first run: nothing is added there.</summary>
    static string Times(int first, int found, int all) => (first, found) switch
    {
        (1, 1) => "",
        (_, 1) => $" (At run {Count(first)} of {Count(all)} of this block.)",
        _ when found == all => $" (At each of the {Count(all)} runs of this block.)",
        _ => $" (At {Count(found)} of the {Count(all)} runs of this block, first at run {Count(first)}.)",
    };

    static string Count(int number) => number.ToString("N0", CultureInfo.InvariantCulture);
}
