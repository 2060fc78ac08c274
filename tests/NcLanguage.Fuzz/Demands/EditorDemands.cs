using System.Text.Unicode;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Editing;
using NcLanguage.Editing.Formatting;
using NcLanguage.Editing.Refactorings;
using NcLanguage.Fuzz.Cases;
using NcLanguage.Fuzz.Running;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Fuzz.Demands;

/// <summary>Every question an editor asks has an answer, and answers lie in the text.</summary>
static class EditorDemands
{
    /// <summary>Lines of a text that are asked about, and columns of each.</summary>
    const int MostLines = 10, MostColumns = 5;

    public static void Answers(CaseJob job, ProgramAnalysis analysis, Dice dice)
    {
        OfWhole(job, analysis);
        var lines = analysis.Text.LineCount;
        for (var times = Math.Min(MostLines, lines); times > 0; times--)
        {
            var line = dice.Below(lines);
            var length = analysis.Text.Line(line).Length;
            for (var columns = MostColumns; columns > 0; columns--)
                At(job, analysis, line, dice.Below(Math.Min(length, 400) + 1), length, dice);
            OfLine(analysis, line);
        }
        foreach (var (line, column) in new[] { (-1, 0), (lines, 0), (int.MaxValue, int.MaxValue), (0, -1), (0, int.MaxValue), (int.MinValue, 5) })
        {
            Hover.At(analysis, line, column);
            Completion.At(analysis, line, column, true);
            Signatures.At(analysis, line, column);
            StateAt.Line(analysis, line);
        }
    }

    static void At(CaseJob job, ProgramAnalysis analysis, int line, int column, int length, Dice dice)
    {
        if (Hover.At(analysis, line, column) is { } hover)
        {
            Demand.That(hover.Line == line && hover.StartColumn <= column && column <= hover.EndColumn && hover.EndColumn <= length, "a hover is about its place", () => hover.ToString());
            Demand.That(!string.IsNullOrWhiteSpace(hover.Markdown) && !FindingDemands.HoldsNoNumber(hover.Markdown), "a hover says something", () => hover.Markdown);
        }
        var offer = Completion.At(analysis, line, column, dice.OneIn(2));
        Demand.That(offer.Entries.IsEmpty || (offer.StartColumn <= column && column <= offer.EndColumn && offer.EndColumn <= length), "an offer takes the place of what is at the cursor",
            () => $"{offer.StartColumn} to {offer.EndColumn} at {column} of {length}");
        foreach (var entry in offer.Entries)
            Demand.That(entry.NewText.Length > 0 && !FindingDemands.HoldsNoNumber(entry.Label + entry.NewText + entry.Detail), "an offer says what it writes", () => entry.ToString());
        if (Signatures.At(analysis, line, column) is { } signatures)
            FindingDemands.Said(signatures.Lines[signatures.Active].Label, "a signature");
        foreach (var place in Definition.Of(analysis, line, column))
            if (place.Path is null)
                FindingDemands.InText(analysis, place.Line, place.StartColumn, place.EndColumn, "definition");
        foreach (var place in References.Of(analysis, line, column, true, CaseJob.ProgramPath, job))
            if (place.Path is null)
                FindingDemands.InText(analysis, place.Line, place.StartColumn, place.EndColumn, "reference");
        foreach (var use in References.Highlights(analysis, line, column).Concat(Twins.At(analysis, line, column)))
            FindingDemands.InText(analysis, use.Line, use.Start, use.End, "highlight");
        var renaming = new Renaming(analysis, CaseJob.ProgramPath, job);
        if (renaming.Prepare(line, column) is not null)
        {
            var renamed = renaming.Rename(line, column, dice.Of(["7", "4711", "O88", "#130", "depth", "", "N5", "99999999999"]));
            Demand.That(renamed.Refusal is not null || renamed.Edits.Count > 0, "a renaming renames or says why not");
            foreach (var edit in renamed.Edits)
                if (edit.Path is null)
                    FindingDemands.InText(analysis, edit.Edit.Line, edit.Edit.StartColumn, edit.Edit.EndColumn, "renaming");
        }
        var calls = new Calls(analysis, CaseJob.ProgramPath, job);
        if (calls.At(line, column) is { } program)
            _ = (calls.To(program), calls.From(program));
        var within = new TextStretch(line, column, line, column);
        foreach (var stretch in SelectionRanges.At(analysis, Outline.Of(analysis), line, column))
        {
            Demand.That((stretch.StartLine, stretch.StartColumn).CompareTo((within.StartLine, within.StartColumn)) <= 0
                && (stretch.EndLine, stretch.EndColumn).CompareTo((within.EndLine, within.EndColumn)) >= 0, "a selection grows", () => $"{within} to {stretch}");
            within = stretch;
        }
    }

    static void OfLine(ProgramAnalysis analysis, int line)
    {
        Demand.That(StateAt.Line(analysis, line) is not null, "every line has a state");
        foreach (var edit in FormatEdits.OfLine(analysis.Text, line))
            InText(analysis.Text, edit.Stretch, "tidying of a line");
        foreach (var _ in RefactoringList.For(analysis, Lines.At(line)))
        {
        }
    }

    static void OfWhole(CaseJob job, ProgramAnalysis analysis)
    {
        var last = analysis.Text.LineCount - 1;
        foreach (var hint in InlayHints.In(analysis, 0, int.MaxValue))
        {
            FindingDemands.InText(analysis, hint.Line, hint.Column, hint.Column, "hint");
            FindingDemands.Said(hint.Text, "a hint");
            Demand.That(hint.Text.Length <= InlayHints.LongestText, "a hint is short", () => hint.Text);
        }
        var at = (Line: 0, Column: 0);
        foreach (var token in SemanticTokens.In(analysis, 0, int.MaxValue))
        {
            FindingDemands.InText(analysis, token.Line, token.Start, token.End, "coloured token");
            Demand.That((token.Line, token.Start).CompareTo(at) >= 0, "coloured tokens lie apart", () => token.ToString());
            at = (token.Line, token.End);
        }
        foreach (var fold in Foldings.Of(analysis))
            Demand.That(fold.FirstLine >= 0 && fold.FirstLine < fold.LastLine && fold.LastLine <= last, "a fold lies in the text", () => fold.ToString());
        Nested(Outline.Of(analysis), 0, last);
        foreach (var value in InlineValues.In(analysis, 0, Math.Min(last, 60)))
            FindingDemands.InText(analysis, value.Line, value.Start, value.End, "value of a variable");
        foreach (var link in ProgramLinks.Of(analysis))
            FindingDemands.InText(analysis, link.Line, link.StartColumn, link.EndColumn, "link");
        var operations = Lenses.Operations(analysis, default);
        foreach (var place in Lenses.Of(analysis))
            FindingDemands.Said(Lenses.TextOf(analysis, operations, place), "a lens");
        HoleAnswers.Of(analysis);
        foreach (var edit in Fixes.AllSafe(analysis))
            FindingDemands.InText(analysis, edit.Line, edit.StartColumn, edit.EndColumn, "all fixes");
        Tidy(job, analysis);
    }

    /// <summary>What is tidy stays as it is; edits line by line come to the same as the whole.</summary>
    static void Tidy(CaseJob job, ProgramAnalysis analysis)
    {
        foreach (var step in new[] { 0, 10 })
        {
            var tidy = ProgramFormat.Of(analysis.Text, analysis.Main.Job, new FormatOptions(step), default);
            Demand.That(tidy.Refusal?.Contains("please report it", StringComparison.Ordinal) != true, $"a tidy program moves the same, numbers by {step}", () => tidy.Refusal!);
            if (tidy.Refusal is not null)
                continue;
            var again = ProgramFormat.Of(tidy.Text, analysis.Main.Job, new FormatOptions(step), default);
            Demand.That(again.Refusal is null && again.Text.ToBytes().AsSpan().SequenceEqual(tidy.Text.ToBytes()), $"a tidy program is tidy, numbers by {step}",
                () => $"{again.Refusal}\n{tidy.Text}\nbecame\n{again.Text}");
            TextDemands.Lossless(tidy.Text, tidy.Text.ToBytes());
            // An editor has no bytes that are no characters, and makes one kind of line end of several.
            if (step == 0 && Utf8.IsValid(job.Case.Program) && !job.Case.Program.Contains((byte)'\r'))
            {
                var edits = FormatEdits.Of(analysis, 0, analysis.Text.LineCount - 1, default).Edits;
                foreach (var edit in edits)
                    InText(analysis.Text, edit.Stretch, "tidying");
                var edited = Draft.Apply(analysis.Text, edits);
                Demand.That(edited.ToBytes().AsSpan().SequenceEqual(tidy.Text.ToBytes()), "tidying by edits comes to the same", () => $"{tidy.Text}\nand\n{edited}");
            }
        }
    }

    static void Nested(IReadOnlyList<OutlineItem> items, int first, int last)
    {
        foreach (var item in items)
        {
            Demand.That(item.FirstLine >= first && item.FirstLine <= item.LastLine && item.LastLine <= last, "the outline nests", () => item.ToString());
            FindingDemands.Said(item.Name, "an entry of the outline");
            Nested(item.Children, item.FirstLine, item.LastLine);
        }
    }

    static void InText(SourceText text, TextStretch stretch, string what)
    {
        var holds = stretch.StartLine >= 0 && (stretch.StartLine, stretch.StartColumn).CompareTo((stretch.EndLine, stretch.EndColumn)) <= 0 && stretch.EndLine < text.LineCount
            && stretch.StartColumn >= 0 && stretch.StartColumn <= text.Line(stretch.StartLine).Length && stretch.EndColumn <= text.Line(stretch.EndLine).Length;
        Demand.That(holds, $"a place lies in the text: {what}", () => stretch.ToString());
    }
}
