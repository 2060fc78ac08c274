using System.Collections.Immutable;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Editing;
using NcLanguage.Fuzz.Cases;
using NcLanguage.Fuzz.Running;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Fuzz.Demands;

/// <summary>A text that is edited is, after each edit, the text that would be read anew, and so is all that is known of it; taking the edits back gives everything back.</summary>
static class EditDemands
{
    /// <summary>Lines of which the state and the step are held against those from scratch.</summary>
    const int Lines = 12;

    public static void Check(FuzzCase of)
    {
        var job = new CaseJob(of);
        var (text, analysis) = (job.Text, job.Analyse());
        // What is asked of one version is kept for the next: some are asked nothing.
        var asksEach = of.Program.Length % 3 != 0;
        var done = new Stack<(int At, int End, byte[] Old, byte[] Bytes, ImmutableArray<Finding> Findings)>();
        foreach (var edit in of.Edits)
        {
            var at = edit.At % (text.Length + 1);
            var end = Math.Min(text.Length, at + edit.Length);
            var bytes = text.ToBytes();
            done.Push((at, at + edit.Text.Length, bytes[at..end], bytes, asksEach ? analysis.Findings : []));
            text = text.WithChange(at, end, edit.Text);
            Demand.That(text.ToBytes().AsSpan().SequenceEqual<byte>([.. bytes.AsSpan(0, at), .. edit.Text, .. bytes.AsSpan(end)]), "an edit changes its bytes and no other");
            analysis = Edited(analysis, text);
            if (asksEach)
                AsFresh(job, analysis, new Dice(text.Length));
        }
        AsFresh(job, analysis, new Dice(text.Length));
        while (done.TryPop(out var step))
        {
            text = text.WithChange(step.At, step.End, step.Old);
            analysis = Edited(analysis, text);
            Demand.That(text.ToBytes().AsSpan().SequenceEqual(step.Bytes), "taking an edit back gives the bytes back");
            if (asksEach)
                Demand.Same(step.Findings, analysis.Findings, "taking an edit back gives the findings back");
        }
        AsFresh(job, analysis, new Dice(text.Length));
    }

    /// <summary>The analysis of the new text; what is shown of a large one on the way lies in it too.</summary>
    static ProgramAnalysis Edited(ProgramAnalysis before, SourceText text)
    {
        var glance = before.GlanceAt(text, before.Text, before.Findings);
        foreach (var finding in glance.IsDefault ? [] : glance)
        {
            var isIn = finding.Line < text.LineCount && finding.StartColumn <= finding.EndColumn && finding.EndColumn <= text.Line(finding.Line).Length;
            Demand.That(isIn, "a glance tells of what is there", () => finding.ToString());
        }
        return Followed(before, text);
    }

    static ProgramAnalysis Followed(ProgramAnalysis before, SourceText text) => before.WithText(text, onTheWay: first =>
    {
        foreach (var finding in first.FirstLook(before))
            FindingDemands.InText(first, finding.Line, finding.StartColumn, finding.EndColumn, "first look, " + finding.Name);
        foreach (var line in new[] { 0, text.LineCount / 2, text.LineCount - 1 })
            Hover.At(first, line, 1);
    });

    static void AsFresh(CaseJob job, ProgramAnalysis analysis, Dice dice)
    {
        var text = analysis.Text;
        var fresh = job.Analyse(SourceText.From(text.ToBytes()), withTwoHands: true);
        TextDemands.Lossless(text, text.ToBytes());
        for (var line = 0; line < text.LineCount; line++)
            Demand.That(text.BlockAt(line).Tokens.SequenceEqual(fresh.Text.BlockAt(line).Tokens), "tokens as from scratch");
        Demand.Same(fresh.Findings, analysis.Findings, "findings as from scratch");
        Demand.Same([.. HoleTable.Of(fresh.Main)], [.. HoleTable.Of(analysis.Main)], "holes as from scratch");
        Demand.Equal(fresh.Main.Exit, analysis.Main.Exit, "the state at the end as from scratch");
        Demand.Same(fresh.Main.Flow?.Runs ?? [], analysis.Main.Flow?.Runs ?? [], "runs of blocks as from scratch");
        for (var times = Lines; times > 0; times--)
            StepAsFresh(fresh, analysis, dice.Below(text.LineCount));
        foreach (var finding in fresh.Findings.Take(4))
        {
            Demand.Same([.. fresh.Related(finding)], [.. analysis.Related(finding)], "related places as from scratch");
            Demand.Same([.. fresh.FixesOf(finding).Select(Shown)], [.. analysis.FixesOf(finding).Select(Shown)], "fixes as from scratch");
        }
        Demand.Same([.. InlayHints.In(fresh, 0, 60)], [.. InlayHints.In(analysis, 0, 60)], "hints as from scratch");
        Demand.Same(SemanticTokens.In(fresh, 0, int.MaxValue), SemanticTokens.In(analysis, 0, int.MaxValue), "colours as from scratch");
        Demand.Same([.. Foldings.Of(fresh)], [.. Foldings.Of(analysis)], "folds as from scratch");
        Demand.Same([.. Flat(Outline.Of(fresh))], [.. Flat(Outline.Of(analysis))], "the outline as from scratch");
        Demand.Same([.. Lenses.Of(fresh)], [.. Lenses.Of(analysis)], "lenses as from scratch");
    }

    static void StepAsFresh(ProgramAnalysis fresh, ProgramAnalysis analysis, int line)
    {
        Demand.Equal(fresh.Main.StateBefore(line), analysis.Main.StateBefore(line), "the state before a block as from scratch");
        Demand.Equal(fresh.Main.SetsOf(line), analysis.Main.SetsOf(line), "what a block sets as from scratch");
        var (expected, found) = (fresh.Main.StepAt(line), analysis.Main.StepAt(line));
        Demand.Equal(expected.After, found.After, "the state behind a block as from scratch");
        Demand.Same(expected.Moves.Items.ToArray(), found.Moves.Items.ToArray(), "moves of a block as from scratch");
        Demand.Equal(Hover.At(fresh, line, 1), Hover.At(analysis, line, 1), "a hover as from scratch");
    }

    static string Shown(Fix fix) => $"{fix.Title} {fix.Safety} {string.Join("; ", fix.Edits)}";

    static IEnumerable<(string, string, int, int)> Flat(IEnumerable<OutlineItem> items) =>
        items.SelectMany(item => Flat(item.Children).Prepend((item.Name, item.Detail, item.FirstLine, item.LastLine)));
}
