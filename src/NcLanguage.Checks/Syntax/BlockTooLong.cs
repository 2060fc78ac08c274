using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Checks.Rules;

/// <summary>A block longer than the control reads.</summary>
public sealed class BlockTooLong : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC1010",
        Name = "block-too-long",
        Severity = Severity.Warning,
        Title = "A block is longer than the control takes",
        Finds =
            "A line with more characters than the machine profile says its control takes in one block; and lines so long that they were not read to their "
            + "end here.",
        AtTheMachine = "The control cuts the block off, so that its last words are lost, or refuses the file.",
        Example = """
            G21 G90 G17 G54
            G0 X10 Y10 (left front corner of the plate, clear of the clamp)
            ~                                                           ^^^
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            G0 X10 Y10
            (left front corner of the plate, clear of the clamp)
            M30
            """,
        Machine = """
            { "base": "iso-mill", "readings": { "programMarks": { "longestBlock": 60 } } }
            """,
        NotFound = "How the control counts blanks: here every character counts.",
        Source = "NISTIR 6556 §3.3 (256 characters); the profile's programMarks.longestBlock.",
    };

    public override StepEvents Interest => StepEvents.OddText;

    public override void CheckStep(in StepContext step)
    {
        var longest = step.Job.Readings.ProgramMarks.LongestBlock;
        if (!step.IsRun || step.Block.Line.Length <= longest)
            return;
        var length = step.Block.Line.Length;
        var message = $"This block has {length} characters and the control takes {longest}: what stands behind may be lost.";
        if (length > BlockLexer.LongestRead)
            message += $" Only the first {BlockLexer.LongestRead} were read here.";
        step.Report(this, (longest, length), message);
    }
}
