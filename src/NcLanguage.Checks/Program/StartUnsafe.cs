using System.Globalization;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Checks.Rules;

/// <summary>A program without a block that puts the modes right at its start.</summary>
public sealed class StartUnsafe : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC6012",
        Name = "start-unsafe",
        Severity = Severity.Warning,
        Title = "No block at the start sets the modes",
        Finds =
            "The first move in work coordinates while no block has set any of the plane (G17), radius compensation (G40), length offset (G49), cycle (G80) and "
            + "feed mode (G94). One of them is enough to be silent. Units, G90 and the work offset have findings of their own.",
        AtTheMachine =
            "After a program that was broken off, its modes are still on: the first move is shifted by a tool's radius or length, or drills a hole at its end.",
        Example = """
            G21 G90 G54
            G0 X10 Y10
            ~^^^^^^^^^
            M30
            """,
        Instead = """
            G21 G90 G54
            G17 G40 G49 G80
            G0 X10 Y10
            M30
            """,
        FixSafety = FixSafety.Choice,
        Fix =
            "Adds G17 G40 G49 G80 to the first block, or before it where it moves: what the end of a program sets on most controls. A choice, since the "
            + "program may be meant to go on from another one.",
        NotFound = "Starts that set some of the modes and leave others out; modes that only one make of machine has.",
        Source = "NISTIR 6556 §3.6.1 (what the end of a program sets; not every control does); a block that sets all modes at the start is common practice.",
    };

    const string Modes = "G17 G40 G49 G80";

    const Slot Any = Slot.Plane | Slot.Compensation | Slot.LengthOffset | Slot.Cycle | Slot.FeedMode;

    public override StepEvents Interest => StepEvents.News;

    public override void CheckStep(in StepContext step)
    {
        ref readonly var after = ref step.Step.After;
        if (!step.HasHappened(Happened.WorkMove) || (step.Step.Before.Set & Any) != 0 || after.IsCalled)
            return;
        // A cycle that begins with the first move puts nothing right; a G80 beside it does.
        if ((step.Step.Sets & Any & ~Slot.Cycle) != 0 || step.Step.Words.HasCode('G', 800))
            return;
        step.ReportBlock(this, "No block before this first move sets plane, compensation, length offset and cycle (G17 G40 G49 G80): they are as the program before has left them.");
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        var line = Inserts.FirstBlock(analysis);
        if (line < 0)
            return [];
        if (Inserts.RunsBefore(analysis.Main, finding.Line, line))
            return [new Fix($"Add {Modes} in a block before this one", FixSafety.Choice, [Inserts.BlockBefore(analysis, finding.Line, Modes)])];
        if (Moves(analysis.Main.BlockAt(line)))
            return [new Fix($"Add {Modes} at the start", FixSafety.Choice, [Inserts.BlockBeforeFirst(analysis, line, Modes)])];
        var missing = Missing(analysis.Main.StepAt(line).Words);
        return missing.Length == 0 ? [] : [new Fix($"Add {missing} at the start", FixSafety.Choice, [Inserts.Before(analysis, line, missing)])];
    }

    /// <summary>The modes that the block itself does not choose.</summary>
    static string Missing(BlockWords words)
    {
        var missing = Modes.Split(' ').Where(mode => CodeTable.Find('G', int.Parse(mode.AsSpan(1), CultureInfo.InvariantCulture) * 10) is { } code && words.Find(code.Group) is null);
        return string.Join(' ', missing);
    }

    /// <summary>True for a block that G80 could not share on every control: cycles and motion codes are one group there (NISTIR 6556 table 4).</summary>
    static bool Moves(in Block block)
    {
        foreach (ref readonly var token in block.Tokens)
            if (token.IsWord('X') || token.IsWord('Y') || token.IsWord('Z') || (token.IsWord('G') && token.Value is >= 0 and < 4 or 28 or 30))
                return true;
        return false;
    }
}
