using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Editing.Tests.Support;

namespace NcLanguage.Editing.Tests.FixAnswers;

/// <summary>All certain fixes, made until none is left.</summary>
public sealed class CertainFixesTests
{
    const string Head = "G21 G90 G17 G40 G49 G80 G54\nT1 M6\nS1000 M3\nG43 H1 G0 X0 Y0 Z50\nM5\n";

    /// <summary>Nothing is put into a comment that runs to the end of its line: what stands there is not read.</summary>
    [Theory]
    [InlineData("N10 ( M30", "N10 M30 ( M30")]
    [InlineData("N10 (END", "N10 M30 (END)")]
    [InlineData("N320 ; M30", "N320 M30 ; M30")]
    [InlineData("N10", "N10 M30")]
    [InlineData("N10 (END) ; of it", "N10 M30 (END) ; of it")]
    [InlineData("; M30", "M30\n; M30")]
    public void An_end_is_put_before_a_comment(string last, string mended)
    {
        var analysis = Editor.Analyse(Head + last + "\n");
        var made = CertainFixes.MakeAll(analysis);
        Assert.True(made.HasEnded);
        Assert.Empty(made.Left);
        Assert.Equal(Head + mended + "\n", made.Analysis.Text.ToString());
        Assert.DoesNotContain(made.Analysis.Findings, finding => finding.Name == "program-end-missing");
        // The editor makes one round at a time.
        for (var round = 0; round < 3; round++)
            analysis = analysis.WithText(TextEdits.Apply(analysis.Text, Fixes.AllSafe(analysis)));
        Assert.Equal(Head + mended + "\n", analysis.Text.ToString());
    }

    /// <summary>Words may be put in at one place, but not where another fix ends the line.</summary>
    [Fact]
    public void Fixes_at_one_place_go_together_unless_one_ends_the_line()
    {
        var analysis = Editor.Analyse("G21 G90 G17 G40 G49 G80 G54\nT4 M6\nG43 H4 G0 Z50 M8\nS800 M3\nG99 G81 X10 Y10 Z-3 R2 F100\nM30\n", Editor.PlateSetup);
        Assert.Equal(["coolant-left-on", "cycle-not-cancelled", "spindle-left-on"], analysis.Findings.Where(finding => finding.Line == 5).Select(finding => finding.Name).Order());
        var made = CertainFixes.MakeAll(analysis);
        Assert.True(made.HasEnded);
        Assert.Equal(3, made.Made.Length);
        Assert.EndsWith("\nG80\nM5 M9 M30\n", made.Analysis.Text.ToString(), StringComparison.Ordinal);
    }

    /// <summary>The fix of a rule that does not mend what it tells is taken back; the others are made.</summary>
    [Fact]
    public void A_fix_in_vain_is_left_out_and_told()
    {
        var rules = new RuleSet([new VainRule(), .. RuleList.All]);
        var made = CertainFixes.MakeAll(Editor.Analyse(Head, options: new AnalysisOptions(Rules: rules)));
        Assert.True(made.HasEnded);
        Assert.Equal(Head + "M30\n", made.Analysis.Text.ToString());
        Assert.Equal("Add M30", Assert.Single(made.Made).Fix.Title);
        var left = Assert.Single(made.Left);
        Assert.Equal(("vain-on-purpose", 1, "Add a remark"), (left.Finding.Name, left.Finding.Line, left.Fix.Title));
    }

    sealed class VainRule : Rule
    {
        public override RuleInfo Info { get; } = new()
        {
            Id = "NC2999",
            Name = "vain-on-purpose",
            Severity = Severity.Error,
            Title = "In vain on purpose",
            Finds = "Tool changes.",
            AtTheMachine = "Nothing.",
            Example = "",
            Instead = "",
            FixSafety = FixSafety.Safe,
            Fix = "Adds a remark, which mends nothing.",
            NotFound = "",
            Source = "",
        };

        public override StepEvents Interest => StepEvents.ToolChange;

        public override void CheckStep(in StepContext step) => step.ReportBlock(this, "A tool is changed.");

        public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis) =>
            [new Fix("Add a remark", FixSafety.Safe, [Inserts.Behind(analysis, finding.Line, "(REMARK)")])];
    }
}
