using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Comparison;
using NcLanguage.Editing;
using NcLanguage.Fuzz.Cases;
using NcLanguage.Fuzz.Running;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Fuzz.Demands;

/// <summary>A fix brings no new error or warning; making all fixes that are certain again and again comes to an end.</summary>
/// <remarks>In a program with several faults a fix that changes what the machine does may bring to light what another fault has hidden: a depth that was too small by a thousand, once it is right, is
/// deep enough to meet a clamp. That no fix brings anything new where its fault is the only one is tested with the corpus.</remarks>
static class FixDemands
{
    const int MostFixes = 30, MostRounds = 25, MostTimes = 6;

    public static void Check(FuzzCase of)
    {
        var job = new CaseJob(of);
        var analysis = job.Analyse();
        var before = Counts(analysis);
        var left = MostFixes;
        foreach (var finding in analysis.Findings)
            foreach (var fix in analysis.FixesOf(finding))
            {
                if (left-- <= 0)
                    break;
                ComesToAnEnd(analysis, Mends(analysis, before, finding, fix), finding, fix);
            }
        ComesToAnEnd(analysis);
        MadeByTheCommand(analysis);
    }

    /// <returns>The program with the fix.</returns>
    static ProgramAnalysis Mends(ProgramAnalysis analysis, Dictionary<string, int> before, Finding finding, Fix fix)
    {
        var edited = TextEdits.Apply(analysis.Text, fix.Edits);
        Demand.That(!edited.ToBytes().AsSpan().SequenceEqual(analysis.Text.ToBytes()), $"a fix changes the text: {finding.Name}", () => fix.ToString());
        var mended = analysis.WithText(edited);
        var after = Counts(mended);
        // Few fixes bring anything that hangs on it, and some programs make a million moves.
        var movesTheSame = new Lazy<bool>(() => MovesTheSame(analysis, edited));
        foreach (var other in mended.Findings)
            Demand.That(
                other.Severity == Severity.Note || after[other.Name] <= before.GetValueOrDefault(other.Name) || !MustNotCome(finding, other, fix.Safety, movesTheSame, before),
                $"a fix of {finding.Name} brings no {other.Name}",
                () => $"line {finding.Line + 1}: {finding.Message}\n\"{fix.Title}\" brings, in line {other.Line + 1}: {other.Message}\n{analysis.Text}\nbecame\n{mended.Text}");
        return mended;
    }

    static bool MovesTheSame(ProgramAnalysis analysis, SourceText edited)
    {
        var (old, made) = (MotionList.Of(analysis.Text, analysis.Main.Job, default), MotionList.Of(edited, analysis.Main.Job, default));
        return old.NotKnown == 0 && MotionComparison.Of(old, made, tolerance: 0).IsSame;
    }

    /// <summary>Whether a finding is one that no fix may bring. A certain one brings none of syntax or structure, and none at all where nothing moves otherwise. One that is a choice may lead the run
    /// to blocks that it did not reach: of that only what the text alone shows is held against it.</summary>
    static bool MustNotCome(Finding mended, Finding other, FixSafety safety, Lazy<bool> movesTheSame, Dictionary<string, int> before)
    {
        // With the block skip switch the other way the program is another one, what a later run of a block lacks was hidden by the first; and a comment that allowed what is mended is idle then.
        if (other.IsOfOtherSkip || other.Message.Contains("(At run ", StringComparison.Ordinal) || other.Name.StartsWith("allow-", StringComparison.Ordinal))
            return false;
        // With another length the tip stands elsewhere, perhaps where a probe is to go to.
        if (mended.Name.StartsWith("length-offset-", StringComparison.Ordinal) && other.Message.StartsWith("The probe stands", StringComparison.Ordinal))
            return false;
        // What comes back higher goes down again, there where it was low already.
        if (mended.Name == "clearance-small" && other.Name == mended.Name && safety == FixSafety.Choice && other.Message.StartsWith("The rapid down", StringComparison.Ordinal))
            return false;
        // One that stands for others, which may come of the same setting or meet the same obstacle at another place: what does not come of it is told by itself then.
        if (other.Name == mended.Name)
            return safety == FixSafety.Safe || (other.Line - mended.Line is 0 or 1 && !mended.Message.Contains(" not told by ", StringComparison.Ordinal));
        // Of the signs in a block the first is told: where a block is parted, each part tells its own.
        if (other.Name == "character-not-sendable" && before.ContainsKey(other.Name))
            return false;
        // A way up that drills no more: the cycle that is told again behind it lacks what the one before lacked, and what was drilled there is not drilled.
        if (mended.Name == "depth-changed-in-cycle" && other.Name is ("cycle-word-missing" or "hole-missing"))
            return false;
        // A jump that leads somewhere comes to blocks that did not run, whatever they hold, and a return to further runs of them.
        if (mended.Name is ("jump-missing" or "subprogram-return-missing") && safety == FixSafety.Choice)
            return other.Name is "number-repeated" or "number-order" || (other.Name == "number-malformed" && other.Line == mended.Line);
        // Where a control takes a cycle's numbers as distances in G90 as well, what another would make of them is told of G90 alone.
        if (mended.Name == "incremental-left-on" && other.Name == "positions-read-differently")
            return false;
        // A number of the program behind a word that cannot be read counts as long as none stands before it that can.
        if (mended.Name == "start-unsafe" && other.Name == "mark-missing" && before.ContainsKey("number-malformed"))
            return false;
        // What was text is a block, with the number that it begins with; and the control that stopped there goes on to what stands behind.
        if (mended.Name == "word-without-number" && other.Name is ("number-repeated" or "not-allowed-here"))
            return false;
        // The numbers that fall and those that stand twice may be the same ones: several of a stretch are told as one, which a number in its midst parts.
        if (mended.Name == "number-order" && other.Name == "number-repeated" && before.ContainsKey(other.Name))
            return false;
        // The words of the block that ends a cycle were the cycle's as long as it was on, which moved the tool too.
        if (mended.Name == "cycle-not-cancelled" && other.Name is ("word-without-effect" or "motion-not-set"))
            return false;
        // The plane that an arc's words are meant for may not be that of a block further down.
        if (mended.Name == "arc-plane" && other.Name == "not-allowed-here" && other.Line > mended.Line)
            return false;
        // With positions for distances a loop goes over the same places again and again; with the tool's length it does so where it cuts.
        if (mended.Name is ("incremental-left-on" or "word-missing" or "length-offset-mismatch" or "length-offset-missing") && other.Name == "loop-repeats-cut")
            return false;
        // A hole of a block that may hold other words than can be read is not held against the drawing until it can be read.
        if (mended.Name == "comment-not-closed" && other.Name.StartsWith("hole-", StringComparison.Ordinal) && other.Line == mended.Line)
            return false;
        // What was comment runs, whatever it is.
        if (mended.Name == "comment-not-closed" && safety == FixSafety.Choice)
            return other.Name == "address-repeated";
        var isOfText = other.Id.StartsWith("NC1", StringComparison.Ordinal);
        return safety == FixSafety.Safe
            ? movesTheSame.Value || isOfText || other.Id.StartsWith("NC6", StringComparison.Ordinal)
            : (isOfText && other.Name != "after-program-end") || other.Name is "number-repeated" or "number-order" or "codes-conflict" or "not-allowed-here";
    }

    static void ComesToAnEnd(ProgramAnalysis analysis)
    {
        var seen = new List<string>();
        for (var round = 0; round < MostRounds; round++)
        {
            var edits = Fixes.AllSafe(analysis);
            var edited = TextEdits.Apply(analysis.Text, edits);
            if (edits.IsEmpty || edited.ToBytes().AsSpan().SequenceEqual(analysis.Text.ToBytes()))
                return;
            analysis = analysis.WithText(edited);
            seen.Add(edited.ToString());
        }
        throw new FuzzFault("all fixes come to an end", string.Join("\n---\n", seen.TakeLast(3)));
    }

    static void MadeByTheCommand(ProgramAnalysis analysis)
    {
        var made = CertainFixes.MakeAll(analysis);
        Demand.That(made.HasEnded, "the fixes that the command makes come to an end", () => made.Analysis.Text.ToString());
        if (made.Left is [var left, ..])
            throw new FuzzFault($"a certain fix mends what it is for: {left.Finding.Name}", $"line {left.Finding.Line + 1}: {left.Finding.Message}\n\"{left.Fix.Title}\"\n{left.Text}");
    }

    /// <summary>Who takes the same fix again as long as its finding stands there sees it go.</summary>
    static void ComesToAnEnd(ProgramAnalysis before, ProgramAnalysis edited, Finding finding, Fix fix)
    {
        for (var times = 1; ; times++)
        {
            var added = edited.Text.LineCount - before.Text.LineCount;
            var again = edited.Findings.FirstOrDefault(other => other.Name == finding.Name && other.Message == finding.Message && other.Line >= finding.Line && other.Line <= finding.Line + added);
            if (again is null || edited.FixesOf(again).FirstOrDefault(other => other.Title == fix.Title) is not { } same)
                return;
            if (times == MostTimes)
                throw new FuzzFault($"a fix taken again and again comes to an end: {finding.Name}", $"line {again.Line + 1}: {again.Message}\n\"{fix.Title}\"\n{before.Text}\n---\n{edited.Text}");
            (before, finding, fix) = (edited, again, same);
            edited = edited.WithText(TextEdits.Apply(edited.Text, fix.Edits));
        }
    }

    static Dictionary<string, int> Counts(ProgramAnalysis analysis) => analysis.Findings
        .Where(finding => finding.Severity != Severity.Note)
        .GroupBy(finding => finding.Name).ToDictionary(group => group.Key, group => group.Count());
}
