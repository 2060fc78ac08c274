using System.Globalization;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Flow;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Checks.Rules;

/// <summary>A called program that does not go back.</summary>
public sealed class SubprogramReturnMissing : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC6031",
        Name = "subprogram-return-missing",
        Severity = Severity.Error,
        Title = "The called program does not return",
        Finds = "A program that was called and whose blocks come to their end without M99, or end with M2 or M30.",
        AtTheMachine = "The control reads on into whatever comes next, or stops with an alarm; at M2 or M30 the rest of the calling program never runs.",
        Example = """
            G21 G90 G17 G54
            G0 X0 Y0 Z50
            M98 P200
            G0 X50
            M30
            O200
            G0 X20 Y20
            ~      ^^^
            """,
        Instead = """
            G21 G90 G17 G54
            G0 X0 Y0 Z50
            M98 P200
            G0 X50
            M30
            O200
            G0 X20 Y20
            M99
            """,
        FixSafety = FixSafety.Choice,
        Fix = "Adds a line with M99 behind the block, numbered as the blocks before it are; behind an M2 or M30 nothing is offered, nor where the run leaves the block for elsewhere.",
        NotFound = "Programs that nothing calls.",
        Source = "Common practice.",
    };

    public override StepEvents Interest => StepEvents.Faults;

    public override void CheckStep(in StepContext step)
    {
        foreach (ref readonly var fault in step.Step.Faults.Items)
            if (fault.Kind == FaultKind.ReturnMissing)
                step.Report(this, fault.Token, fault.B == 1
                    ? $"Program {Say.Number(fault.A)} was called and ends the whole run here: the blocks behind the call never run."
                    : $"Program {Say.Number(fault.A)} was called and has no M99 at its end: the control does not go back to the call.", value: fault.B, text: Say.Number(fault.A));
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(analysis);
        if (finding.Value == 1 || LeadsOut(finding, analysis.Main))
            return [];
        // What stands behind a closing % is not read.
        if (analysis.Main.BlockAt(finding.Line).Tokens is [{ Kind: TokenKind.Percent }, ..])
            return [new Fix("Return with M99 before this %", FixSafety.Choice, [WordEdits.BlockBefore(analysis.Text, finding.Line, "M99")])];
        var end = analysis.Text.Line(finding.Line).Length;
        var text = LineEnding.Of(analysis.Text, finding.Line) + BlockNumbering.NumberAfter(analysis.Main, finding.Line) + "M99";
        return [new Fix("Return with M99 behind this block", FixSafety.Choice, [new Edit(finding.Line, end, end, text)])];
    }

    /// <summary>Whether the run does not come to the block behind: the last one that ran stands in another program, returns from what was called last or ends the run, calls the very program that it stands in, may be skipped though it pairs with another, ends or branches
    /// what began outside the program called, or begins another that is passed by.</summary>
    static bool LeadsOut(Finding finding, ProgramRun run)
    {
        if (CallsItself(finding, run) || (run.BlockAt(finding.Line) is { IsSkippable: true, HasStatement: true }))
            return true;
        if (run.StepAt(finding.Line).Words is var words && (words.HasCode('M', 990) || words.HasCode('M', 20) || words.HasCode('M', 300)))
            return true;
        if (run.Flow?.Text is not { } text)
            return false;
        var called = int.TryParse(finding.Text, CultureInfo.InvariantCulture, out var number) ? text.LinesOfProgram(number) : null;
        if (IsOutside(called, finding.Line))
            return true;
        return text.PartnerOf(finding.Line) is { Line: >= 0 and var partner } pair && (pair.Statement == StatementKind.EndSub || IsOutside(called, partner));
    }

    /// <summary>What stands behind such a call is come to at the end of the deepest run only, and that one lacks its return.</summary>
    static bool CallsItself(Finding finding, ProgramRun run) =>
        int.TryParse(finding.Text, CultureInfo.InvariantCulture, out var number)
        && run.StepAt(finding.Line).Transfer is var transfer
        && transfer.Number == number
        && (transfer.Kind is TransferKind.CallProgram or TransferKind.CallWithArguments || transfer.Statement == StatementKind.Call);

    static bool IsOutside((int First, int End)? lines, int line) => lines is var (first, end) && (line < first || line >= end);
}
