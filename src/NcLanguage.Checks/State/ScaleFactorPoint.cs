using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;

namespace NcLanguage.Checks.Rules;

/// <summary>A scaling factor of a hundred and more that is written without a point.</summary>
public sealed class ScaleFactorPoint : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2043",
        Name = "scale-factor-point",
        Severity = Severity.Warning,
        Title = "A scaling factor without its point",
        Finds = "G51 with a factor P of 100 or more that is a whole number without a point.",
        AtTheMachine = "The path is stretched a thousandfold and the control stops at the end of its travel, or crashes on the way; a control that counts P in thousandths scales as it was meant.",
        Example = """
            G21 G90 G17 G54
            G51 X0 Y0 P1013
            ~         ^^^^^
            G0 X20 Y30
            G50
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            G51 X0 Y0 P1.013
            G0 X20 Y30
            G50
            M30
            """,
        FixSafety = FixSafety.Choice,
        Fix = "Writes a thousandth of the factor, with a point.",
        NotFound = "Factors of each axis (I, J, K); factors from an expression.",
        Source = "That some controls count P without a point in thousandths, and others take it as it stands: common practice, from memory.",
    };

    const double LeastDoubted = 100;
    const double Thousandths = 1000;

    public override StepEvents Interest => StepEvents.Codes;

    public override void CheckStep(in StepContext step)
    {
        var words = step.Step.Words;
        if (!words.HasCode('G', 510) || !words.Has('P') || step.Block.Tokens[words.TokenOf('P')] is not { HasPoint: false, IsExpression: false, Value: >= LeastDoubted and var factor })
            return;
        step.Report(this, words.TokenOf('P'), $"{Quote.Word(step.Block, step.Block.Tokens[words.TokenOf('P')])} stretches the path {Say.Number(factor)} times here; a control that counts in thousandths takes it as {Say.Number(factor / Thousandths, 4)}.", value: factor);
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(finding);
        var word = "P" + Say.WithPoint(Say.Number(finding.Value / Thousandths, 6));
        return [new Fix($"Write {word}", FixSafety.Choice, [new Edit(finding.Line, finding.StartColumn, finding.EndColumn, word)])];
    }
}
