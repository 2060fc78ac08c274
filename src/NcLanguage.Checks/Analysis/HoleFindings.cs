using System.Globalization;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Analysis;

/// <summary>What a rule tells of one hole after another of an uninterrupted run has one cause, mostly the depth: it is told at the first of them, with the number
/// of the others that are like it. A hole that meets something else, or much deeper, is told by itself.</summary>
static class HoleFindings
{
    const string Mark = "hole ";

    /// <summary>Depths in one obstacle are alike that differ by less, mm, or by less than this part of the one that is told.</summary>
    const double AlikeDepth = 1, AlikePart = 0.5;

    /// <summary>The text of a finding that tells what a block's way to its holes costs; its value is the seconds.</summary>
    public const string SecondsMark = "seconds of holes";

    /// <summary>The text of a finding that is told of a hole which meets an obstacle; the finding's value is how many holes of its block it is true of.</summary>
    /// <param name="all">What the obstacle is one of.</param>
    /// <param name="depth">How deep the tool goes into it, mm.</param>
    public static string MarkOf(Obstacle obstacle, ReadOnlySpan<Obstacle> all, double depth)
    {
        var index = 0;
        while (index < all.Length && !ReferenceEquals(all[index], obstacle))
            index++;
        return string.Create(CultureInfo.InvariantCulture, $"{Mark}{index} {depth:R}");
    }

    /// <summary>The text of a finding that is told of a hole for what has one cause whatever it measures; its value as with an obstacle.</summary>
    /// <param name="what">One word, of which findings that are alike have the same.</param>
    public static string MarkOf(string what) => $"{Mark}{what} 0";

    /// <summary>Which obstacle is met, and how deep.</summary>
    /// <param name="last">What was met last: of a run of holes it is the same for most, and not made anew for each.</param>
    static (string Met, double Depth) Read(string text, string last)
    {
        if (!text.StartsWith(Mark, StringComparison.Ordinal) || text.IndexOf(' ', Mark.Length) is not (> 0 and var end))
            return (text, 0);
        var met = text.AsSpan(0, end);
        return (met.SequenceEqual(last) ? last : met.ToString(), double.Parse(text.AsSpan(end + 1), CultureInfo.InvariantCulture));
    }

    /// <summary>Whether a finding is one of those that are told of one hole after another.</summary>
    public static bool IsMarked(Finding finding) => finding.Text.StartsWith(Mark, StringComparison.Ordinal) || finding.Text == SecondsMark;

    /// <summary>Joins them. What a comment has silenced is gone by then: it takes no others with it.</summary>
    /// <param name="findings">Those of each rule in the order of the text.</param>
    public static void Join(ProgramRun run, List<Finding> findings)
    {
        HoleTable? table = null;
        var met = "";
        Dictionary<(Rule Rule, string Met), List<Open>> open = [];
        var kept = 0;
        for (var i = 0; i < findings.Count; i++)
        {
            var finding = findings[i];
            if (!MayBeJoined(finding) || finding.IsElsewhere || finding.IsOfOtherSkip || !IsMore(finding, kept))
                findings[kept++] = finding;
        }
        findings.RemoveRange(kept, findings.Count - kept);
        foreach (var firsts in open.Values)
            SayAll(firsts);

        // How long the runs of a block take is no sum over its holes.
        bool MayBeJoined(Finding finding) => IsMarked(finding) && (finding.Text != SecondsMark || !(run.Flow?.RunsOf(finding.Line) > 1));

        // True for a finding that the first of its run stands for.
        bool IsMore(Finding finding, int place)
        {
            table ??= HoleTable.Of(run);
            var (hole, count) = table.At(finding.Line);
            if (count == 0)
                return false;
            (met, var depth) = Read(finding.Text, met);
            if (!open.TryGetValue((finding.Rule, met), out var firsts))
                open.Add((finding.Rule, met), firsts = []);
            if (firsts.Count > 0 && !(hole >= firsts[0].First && hole < firsts[0].End))
                SayAll(firsts);
            for (var i = 0; i < firsts.Count; i++)
                if (firsts[i].IsLike(depth))
                {
                    firsts[i] = firsts[i] with { Findings = firsts[i].Findings + 1, Sum = firsts[i].Sum + finding.Value };
                    return true;
                }
            var (start, end) = table.RunOf(hole);
            firsts.Add(new Open(place, start, end, depth, 1, finding.Value));
            return false;
        }

        void SayAll(List<Open> firsts)
        {
            foreach (var first in firsts)
                Say(findings, first);
            firsts.Clear();
        }
    }

    static void Say(List<Finding> findings, in Open open)
    {
        var finding = findings[open.Index];
        if (finding.Text.StartsWith(Mark, StringComparison.Ordinal) && open.Sum > 1)
            findings[open.Index] = finding with { Message = $"{finding.Message} The same goes for {Checks.Say.Count((int)open.Sum - 1, "more hole")} of this run." };
        else if (finding.Text == SecondsMark && open.Findings > 1)
            findings[open.Index] = finding with
            {
                Value = open.Sum,
                Message = $"{finding.Message.TrimEnd('.')}, and with that of {Checks.Say.Count(open.Findings - 1, "more block")} of this run {Checks.Say.Seconds(open.Sum)}.",
            };
    }

    /// <summary>The first finding of its kind in a run of holes.</summary>
    /// <param name="Index">Its place in the list.</param>
    /// <param name="First">Index of the run's first hole.</param>
    /// <param name="End">Index of the one after its last.</param>
    /// <param name="Depth">How deep it says that the tool goes, mm.</param>
    /// <param name="Findings">How many findings like it there are of the run so far.</param>
    /// <param name="Sum">Sum of their values.</param>
    readonly record struct Open(int Index, int First, int End, double Depth, int Findings, double Sum)
    {
        public bool IsLike(double depth) => Math.Abs(depth - Depth) <= Math.Max(AlikeDepth, AlikePart * Depth);
    }
}
