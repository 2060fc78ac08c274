using System.Globalization;
using System.Runtime.CompilerServices;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Flow;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Checks.Rules;

/// <summary>What the control does but this product does not follow.</summary>
public sealed class PathNotKnown : Rule
{
    /// <summary>How the text of a finding about a work offset begins; its number follows.</summary>
    public const string Mark = "offset ";

    public override RuleInfo Info { get; } = new()
    {
        Id = "NC4012",
        Name = "path-not-known",
        Severity = Severity.Note,
        Title = "From here on the path is not known",
        Finds =
            "A code or statement that is read but whose effect on the path is not followed: radius compensation by a radius that is not known and G10 with another kind "
            + "of data than offsets; a jump, loop or call whose condition, number or count is not known; also a cycle that asks for more moves in one block than are followed, and an arc of more than "
            + "1 km radius. Also the first move "
            + "under a work offset whose place in the setup's frame the setup does not give, and the first move across behind an offset that has changed by an amount "
            + "not known, while the place along its axis has not been written again.",
        AtTheMachine =
            "The machine does what the program says. But places behind this block are not known here, so that clearance, travel and holes are not checked "
            + "until they are known again.",
        Example = """
            G21 G90 G17 G54
            G10 L3 P1 R5
            ~^^
            G0 X10 Y10
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            G0 X10 Y10
            M30
            """,
        NotFound = "Whatever would be found behind it.",
        Source = "NISTIR 6556 §3.5; common practice.",
    };

    /// <summary>Work offsets of the setup that are named; nobody takes one of many for another.</summary>
    const int MostOthers = 4;

    public override StepEvents Interest => StepEvents.Faults | StepEvents.News | StepEvents.OddArc;

    public override void CheckStep(in StepContext step)
    {
        if (IsFirstOffFrame(step.Step))
            step.ReportBlock(this, OffFrame(step), Slot.WorkOffset, "The work offset was set here.", text: Mark + step.Step.After.WorkOffset.ToString(CultureInfo.InvariantCulture));
        if ((step.Step.After.Happened & ~step.Step.Before.Happened & Happened.MovedLost) != 0)
            step.ReportBlock(this, Lost(step));
        foreach (ref readonly var move in step.Step.Moves.Items)
            if (move.Kind == MoveKind.Arc && Arcs.IsTooLarge(move))
            {
                var text = new LengthText(step.Step.After.Units);
                step.ReportBlock(this, $"This arc has a radius of {text.Length(Arcs.GreatestOf(move))}: it is not followed, and neither its clearance nor what it cuts is checked.");
                break;
            }
        foreach (ref readonly var fault in step.Step.Faults.Items)
        {
            if (fault.Kind == FaultKind.TooManyMoves)
                step.Report(this, fault.Token, fault.A < MoveBudget.OfBlock
                    ? $"The blocks before have made {Say.Number(MoveBudget.OfLongBlocks)} moves by repeats and pecks: of the more than {Say.Number(fault.A)} of this one, what goes beyond is not followed and not checked."
                    : $"This block makes more than {Say.Number(fault.A)} moves: what goes beyond is not followed and not checked.");
            else if (fault.Kind == FaultKind.WayNotKnown && !step.Step.Before.IsCalled)
                step.Report(this, fault.Token, WayNotKnown(step, fault.A == 1));
            else if (fault.Kind == FaultKind.NotFollowed && !step.Step.Before.IsCalled)
                step.Report(this, fault.Token, IsCompensation(step.Step) ? Compensation(step, fault) : NotFollowed(step.Block, step.Block.Tokens[fault.Token]));
            else
                continue;
            return;
        }
    }

    // A block that sets another offset and moves begins a stretch of its own.
    static bool IsFirstOffFrame(Step step) =>
        (step.After.Happened & Happened.MovedOffFrame) != 0
        && ((step.Before.Happened & Happened.MovedOffFrame) == 0
            || (step.Before.WorkOffset != step.After.WorkOffset && (step.Events & StepEvents.ProgramEnd) == 0));

    static string OffFrame(in StepContext step)
    {
        var setup = step.Job.Setup;
        var here = step.Step.After.WorkOffset;
        var what = here < 0 ? "The place of this work offset is not in the setup"
            : setup.WorkOffsets.ContainsKey(here)
                ? $"{WorkOffsetName.Format(setup.Frame)}, in which the setup is measured, is not in its workOffsets, so that the place of {WorkOffsetName.Format(here)} there is not known"
            : $"{WorkOffsetName.Format(here)} is not in the setup's workOffsets{Others(setup)}";
        return what + ": clearance is not checked from here on.";
    }

    /// <summary>, but G54 and G55 are: a digit may be wrong.</summary>
    static string Others(Setup setup)
    {
        string[] names = [.. setup.WorkOffsets.Keys.Order().Take(MostOthers + 1).Select(WorkOffsetName.Format)];
        return names.Length switch { 0 or > MostOthers => "", 1 => $", but {names[0]} is", _ => $", but {string.Join(", ", names[..^1])} and {names[^1]} are" };
    }

    static string Lost(in StepContext step)
    {
        ref readonly var after = ref step.Step.After;
        var lost = step.Step.Before.LostAxes | after.LostAxes;
        var axis = (lost & 1) != 0 ? 'X' : (lost & 2) != 0 ? 'Y' : 'Z';
        var isLength = axis == 'Z' && after.H > 0 && double.IsNaN(step.Job.Setup.FindLengthOffset(after.H)?.Length ?? double.NaN);
        var why = isLength ? $"The setup gives no length for H{after.H}" : "An offset has changed by an amount that is not known here";
        return $"{why}: where the tool stands along {axis} is not known, and clearance is not checked until it has moved to a new {axis}.";
    }

    static bool IsCompensation(Step step) =>
        (step.After.NotFollowed & ~step.Before.NotFollowed & Control.State.NotFollowed.Compensation) != 0;

    static string Compensation(in StepContext step, in Fault fault)
    {
        const string Until = "until G40 it is not known where the tool's centre runs, and nothing that depends on it is checked.";
        ref readonly var after = ref step.Step.After;
        if (!double.IsNaN(after.CompensationRadius))
            return $"Where the path goes on here is not known: {Until}";
        var word = Quote.Word(step.Block, step.Block.Tokens[fault.Token]);
        var why = after.D > 0 ? $"the setup gives no diameter for D{after.D}{Own(step.Job.Setup, after)}"
            : step.Step.Words.Has('D') ? "the number of its D is not known"
            : after.Tool > 0 ? $"the setup gives no diameter for tool {after.Tool}"
            : "the tool in the spindle is not known";
        return $"The radius that {word} keeps off the path is not known, because {why}: {Until}";
    }

    /// <summary>Where the radius of the tool in the spindle stands, for a D that is no tool's.</summary>
    static string Own(Setup setup, in ControlState state) =>
        state.Tool > 0 && setup.FindTool(state.Tool) is { } tool && setup.FindRadiusOffset(state.D) is null
            ? $", and that of tool {state.Tool} stands in D{tool.RadiusOffset ?? state.Tool}" : "";

    static string NotFollowed(in Block block, in Token token) => token.Kind switch
    {
        TokenKind.Excess => "The rest of this block is not read: from here on it is not known where the tool is, and nothing that depends on it is checked.",
        _ => $"What {Quote.Word(block, token)} does to the path is not followed: {Until(token.Value)}.",
    };

    /// <param name="isLost">Nothing is known behind it; else both ways are run.</param>
    static string WayNotKnown(in StepContext step, bool isLost)
    {
        var transfer = step.Step.Transfer;
        var value = Refused(step, double.IsNaN(transfer.Number) ? 'P' : 'L') is { } word ? $" is not known, because {word} is not allowed: " : " depends on a value that is not known here: ";
        const string behind = "behind it places and modes are not known until they are set again.";
        var isCall = transfer.Kind is TransferKind.CallProgram or TransferKind.CallWithArguments || transfer.Statement == StatementKind.Call;
        if (double.IsNaN(transfer.Number) || transfer.Kind == TransferKind.Return)
            return (isCall ? "Which program this calls" : transfer.Kind switch
            {
                TransferKind.Jump => "Where this jumps to",
                TransferKind.Return => "Where this goes back to",
                _ => "Which statement belongs to this one",
            }) + value + behind;
        if (isCall)
            return "How many times this runs the program" + value + "it is checked once, and " + behind;
        if (transfer.Kind == TransferKind.Jump || transfer.Statement is StatementKind.If or StatementKind.ElseIf)
            return isLost
                ? "How often this jumps back" + value + behind
                : "Which way this goes" + value + "both ways are checked, and where they meet only what is the same on both is known.";
        return "How often this loop runs" + value + "its blocks are checked once with nothing known, and " + behind;
    }

    /// <summary>The word of a letter, where its value is not allowed in this block.</summary>
    static string? Refused(in StepContext step, char letter)
    {
        foreach (ref readonly var fault in step.Step.Faults.Items)
            if (fault.Kind == FaultKind.ValueNotAllowed && fault.Letter == letter)
                return Quote.Word(step.Block, step.Block.Tokens[fault.Token]);
        return null;
    }

    static string Until(double code) => code switch
    {
        10 => "which offset it changes is not known, and places in the setup and in the machine are not checked from here on",
        _ => "places behind it are not checked until they are known again",
    };
}
