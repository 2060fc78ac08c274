using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.Analysis;

/// <summary>A rule that throws takes no other finding away, and says that it did not do its work. Every rule that throws here is asked before and after sound ones.</summary>
public sealed class RuleFaultTests
{
    const string Straight = "G21 G90 G17\nT1 M6\nG1 X1\nG1 X2 F100\nG81 X1 Y1 Z-3 R2\nX5\nM30\n";
    const string Looping = "G21 G90 G17\n#1=0\nWHILE [#1 LT 3] DO1\nG1 X#1 Q\n#1=#1+1\nEND1\nM30\n";

    [Theory]
    [InlineData(Straight, Looks.Text)]
    [InlineData(Straight, Looks.Step)]
    [InlineData(Straight, Looks.File)]
    [InlineData(Looping, Looks.Text)]
    [InlineData(Looping, Looks.Step)]
    [InlineData(Looping, Looks.File)]
    public void All_other_findings_stand(string program, Looks looks)
    {
        var broken = new BrokenRule(looks);
        var sound = Analyse(program, RuleSet.All);
        var faulty = Analyse(program, new RuleSet([broken, .. RuleList.All, broken]));
        Assert.NotEmpty(sound.Findings);
        Assert.Equal(sound.Findings.Select(Shown), faulty.Findings.Where(finding => finding.Rule != broken).Select(Shown));
        Assert.All(faulty.Findings.Where(finding => finding.Rule == broken), finding =>
        {
            Assert.IsType<InvalidCastException>(finding.Fault);
            Assert.Equal(Severity.Warning, finding.Severity);
            Assert.Contains("broken-on-purpose", finding.Message, StringComparison.Ordinal);
            Assert.Contains("InvalidCastException", finding.Message, StringComparison.Ordinal);
            Assert.Empty(faulty.FixesOf(finding));
        });
        Assert.Contains(faulty.Findings, finding => finding.Rule == broken);
    }

    [Fact]
    public void A_rule_that_throws_at_every_block_is_told_once_a_part()
    {
        var broken = new BrokenRule(Looks.Step);
        var faulty = Analyse(string.Concat(Enumerable.Repeat("G1 X1\n", 10_000)), new RuleSet([broken]));
        Assert.InRange(faulty.Findings.Length, 1, 10_000 / 64);
        Assert.InRange(broken.Calls, 1, 10_000 / 64);
    }

    [Fact]
    public void After_an_edit_it_is_as_from_scratch()
    {
        var rules = new RuleSet([new BrokenRule(Looks.Step), .. RuleList.All]);
        var text = SourceText.From(string.Concat(Enumerable.Repeat(Straight[..^4], 100)));
        var before = ProgramAnalysis.Create(text, Setup.None, MachineProfile.IsoMill, new AnalysisOptions(Rules: rules));
        var changed = text.WithChange(text.OffsetOf(300, 0), text.OffsetOf(301, 0), "G1 X7 Y9 Q\nG4\n"u8);
        Assert.Equal(
            ProgramAnalysis.Create(changed, Setup.None, MachineProfile.IsoMill, new AnalysisOptions(Rules: rules)).Findings.Select(Shown),
            before.WithText(changed).Findings.Select(Shown));
    }

    [Fact]
    public void To_cancel_is_no_fault() =>
        Assert.Throws<OperationCanceledException>(() => Analyse(Straight, new RuleSet([new CancellingRule()])));

    static ProgramAnalysis Analyse(string program, RuleSet rules) =>
        ProgramAnalysis.Create(SourceText.From(program), Setup.None, MachineProfile.IsoMill, new AnalysisOptions(Rules: rules));

    static string Shown(Finding finding) => $"{finding.Id} {finding.Line}:{finding.StartColumn}-{finding.EndColumn} {finding.Message}";

    public enum Looks
    {
        Text,
        Step,
        File,
    }

    static readonly RuleInfo s_info = new()
    {
        Id = "NC2999",
        Name = "broken-on-purpose",
        Severity = Severity.Error,
        Title = "Broken on purpose",
        Finds = "Nothing.",
        AtTheMachine = "Nothing.",
        Example = "",
        Instead = "",
        NotFound = "",
        Source = "",
    };

    sealed class BrokenRule(Looks looks) : Rule
    {
        public int Calls { get; private set; }

        public override RuleInfo Info => s_info;

        public override bool ReadsText => looks == Looks.Text;

        public override bool ReadsFile => looks == Looks.File;

        public override StepEvents Interest => looks == Looks.Step ? StepEvents.Words : StepEvents.None;

        public override void CheckText(in BlockContext block) => Throw();

        public override void CheckStep(in StepContext step) => Throw();

        public override void CheckFile(in FileContext file) => Throw();

        public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis) => throw new InvalidCastException("broken on purpose");

        void Throw()
        {
            Calls++;
            throw new InvalidCastException("broken on purpose");
        }
    }

    sealed class CancellingRule : Rule
    {
        public override RuleInfo Info => s_info;

        public override StepEvents Interest => StepEvents.Words;

        public override void CheckStep(in StepContext step) => throw new OperationCanceledException();
    }
}
