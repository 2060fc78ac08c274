using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Machine.Profiles;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Checks.Rules;

/// <summary>A length without a decimal point where the control counts such numbers in its smallest steps.</summary>
public sealed class NumberWithoutPoint : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC1004",
        Name = "number-without-point",
        Severity = Severity.Warning,
        Title = "A length without a decimal point is read in thousandths",
        Finds =
            "Where the machine reads lengths without a point in increments (0.001 mm or 0.0001 in): a whole number other than 0, below 1000 increments, "
            + "without a point in a word that gives a length.",
        AtTheMachine = "The control moves a thousandth of what the number seems to say: X15 goes to 0.015 mm, and a depth of 3 barely scratches the work.",
        Example = """
            G21 G90 G17 G54
            G0 X15 Y10.
            ~  ^^^
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            G0 X15. Y10.
            M30
            """,
        Readings = "integers=increments",
        FixSafety = FixSafety.Choice,
        Fix = "Adds the decimal point, so that the number means whole millimetres or inches. A choice to be looked at: where increments were meant, the move would be a thousand times as long.",
        NotFound =
            "Numbers of 1000 increments and more, which programs for such controls write on purpose; numbers meant in increments that are smaller are "
            + "reported wrongly.",
        Source = "ISO 6983-1 leaves the place of the point to the format of the machine (from memory); the reading integers of the machine profile.",
    };

    const string Lengths = "XYZIJKRQ";
    internal const double MostIncrements = 1000;

    public override StepEvents Interest => StepEvents.Words;

    public override bool Concerns(Job job) => job.Readings.Integers == IntegerReading.Increments;

    public override void CheckStep(in StepContext step)
    {
        if (step.Job.Readings.Integers != IntegerReading.Increments || !step.IsRun || !GivesLengths(step))
            return;
        var tokens = step.Block.Tokens;
        for (var i = 0; i < tokens.Length; i++)
        {
            ref readonly var token = ref tokens[i];
            if (token.Kind != TokenKind.Word || token.HasPoint || token.IsExpression || !Lengths.Contains((char)token.Letter, StringComparison.Ordinal))
                continue;
            if (!(Math.Abs(token.Value) is > 0 and < MostIncrements) || CountsRepeats(step, (char)token.Letter))
                continue;
            var word = Quote.Word(step.Block, token);
            var isInch = step.Step.After.Units == LengthUnit.Inch;
            var read = isInch ? Say.Number(token.Value / 10_000, 4) + " in" : Say.Mm(token.Value / 1000);
            step.Report(this, i, $"{word} without a point is {read} on this control; {word}. would be {Say.Number(token.Value)} {(isInch ? "in" : "mm")}.");
        }
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis) =>
        [new Fix("Add the decimal point", FixSafety.Choice, [new Edit(finding.Line, finding.EndColumn, finding.EndColumn, ".")])];

    // In these blocks X is a time, R an angle, I J K factors, or letters are arguments.
    static bool GivesLengths(in StepContext step)
    {
        foreach (var code in step.Step.Words.Codes)
            if (code.Code is { Letter: 'G', Tenths: 40 or 510 or 650 or 680 } or { Letter: 'M', Tenths: 190 })
                return false;
        return true;
    }

    static bool CountsRepeats(in StepContext step, char letter) =>
        letter == 'K' && step.Job.Readings.Repeats == RepeatReading.K && step.Step.After.Cycle is > 0 and not 87;
}
