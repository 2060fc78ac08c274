using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Checks.Rules;

/// <summary>A word without which a code cannot act.</summary>
public sealed class WordMissing : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2030",
        Name = "word-missing",
        Severity = Severity.Error,
        Title = "A code lacks a word it needs",
        Finds =
            "G4 without P, G43 or G44 without H, an arc without centre and radius or, with R, without its end, G92, G52 or a probe move without an axis, G10 without L, P, R or an axis, "
            + "G51 without a factor, G51.1 without an axis, G68 without R, G54.1 without P, G33 without a lead, M6 before any T of the program. What a cycle lacks is cycle-word-missing. "
            + "As a note, once, G41 or G42 without D, which the published specification takes for the tool in the spindle: only where no machine was chosen, or when portability is asked for.",
        AtTheMachine = "The control stops at the block with an alarm, or takes the number of an earlier block.",
        Example = """
            G21 G90 G17 G54
            T1 M6
            G0 X10 Y10
            G43 Z50
            ~^^
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T1 M6
            G0 X10 Y10
            G43 Z50 H1
            M30
            """,
        FixSafety = FixSafety.Safe,
        Fix =
            "Adds the H of the tool in the spindle to G43. A choice where the setup does not list the tool (by custom H has the tool's number) and where a "
            + "comment that is not closed may hold the H. The other words only the programmer knows.",
        NotFound = "Controls that take H from an earlier block.",
        Source = "NISTIR 6556 §3.5.3, §3.5.4, §3.5.5, §3.5.9, §3.5.10, §3.5.11, §3.5.18 and §3.6.3; common practice.",
    };

    public override StepEvents Interest => StepEvents.Faults | StepEvents.News;

    public override void CheckStep(in StepContext step)
    {
        foreach (ref readonly var fault in step.Step.Faults.Items)
            if (fault.Kind == FaultKind.WordMissing && Message(step, fault) is { } message)
                step.Report(this, fault.Token, message, text: fault.Letter.ToString());
        if (step.Job.TellsOtherReadings && step.HasHappened(Happened.CompensatedWithoutD) && !step.Step.After.IsCalled && step.Step.Words.Find(ModalGroup.RadiusCompensation) is { } word)
            step.Report(this, word.Token, CompensationMessage(step, word.Code.Text), text: "D", severity: Severity.Note);
    }

    static string CompensationMessage(in StepContext step, string code)
    {
        ref readonly var after = ref step.Step.After;
        var taken = after.Tool <= 0 ? "the tool in the spindle" : double.IsNaN(after.CompensationRadius) ? $"tool {after.Tool}" : $"tool {after.Tool} ({step.Say.Length(after.CompensationRadius)})";
        return $"{code} has no D, and the radius of {taken} is what is taken here: a control that wants D takes that of an earlier block or none, and cuts beside the contour, or stops with an alarm.";
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        var tool = analysis.Main.StepAt(finding.Line).After.Tool;
        // A length that G44 takes away is no tool's own, or the code is the wrong one: only the programmer knows.
        if (finding.Text != "H" || tool <= 0 || WordEdits.IndexOfCode(analysis.Main.BlockAt(finding.Line), 'G', 43) < 0)
            return [];
        var word = $"H{LengthOffsets.Of(tool, analysis.Setup)}";
        var isCertain = analysis.Setup.FindTool(tool)?.LengthOffset is not null && !HasOpenComment(analysis.Main.BlockAt(finding.Line));
        return [new Fix($"Add {word}", isCertain ? FixSafety.Safe : FixSafety.Choice, [Inserts.Behind(analysis, finding.Line, word)])];
    }

    static bool HasOpenComment(in Block block)
    {
        foreach (ref readonly var token in block.Tokens)
            if (token.Kind == TokenKind.UnclosedComment)
                return true;
        return false;
    }

    static string? Message(in StepContext step, in Fault fault)
    {
        ref readonly var token = ref step.Block.Tokens[fault.Token];
        if (token.IsWord('M') && fault.Letter == 'T')
            return "M6 changes the tool, but no T before it says to which: the tool that the program before has chosen comes, or none.";
        if (fault.Letter == 'P' && (token.IsWord('M') || token.Value == 65))
            return $"{Quote.Word(step.Block, token)} needs P, the number of the program to call: the control stops with an alarm.";
        if (!token.IsWord('G'))
            return step.Step.After.Cycle == 0 && !IsOfOtherPlane(step) ? ArcMessage : null;
        var word = Quote.Word(step.Block, token);
        return token.Value switch
        {
            2 or 3 when IsOfOtherPlane(step) => null,
            2 or 3 => fault.Letter == 'X' ? $"{word} with R, but no axis word says where the arc ends: the control stops with an alarm." : ArcMessage,
            4 => "G4 waits, but neither P nor X says how long: the control stops with an alarm.",
            43 or 44 => $"{word} applies a tool length, but H does not say which: the control stops with an alarm, or takes the one of the tool before.",
            92 => "G92 sets the position, but no X, Y or Z says to what: the control stops with an alarm.",
            52 => "G52 shifts the datum, but no X, Y or Z says by how much: the control stops with an alarm.",
            10 when fault.Letter == 'X' => "G10 sets a work offset, but no X, Y or Z says to what: it stays as it is, or the control stops with an alarm.",
            10 => $"G10 writes an offset, but {fault.Letter} does not say {(fault.Letter switch { 'L' => "which kind", 'P' => "which", _ => "its value" })}: the control stops with an alarm.",
            33 => "G33 cuts a thread, but neither K nor F gives its lead: the control stops with an alarm, or takes the lead of an earlier block.",
            51 => "G51 scales the path, but neither P nor I, J, K gives a factor: the control stops with an alarm, or takes a factor of its own.",
            51.1 => "G51.1 mirrors the path, but no X, Y or Z says about what: the control stops with an alarm.",
            68 => "G68 turns the path, but R does not say by how much: the control stops with an alarm, or takes an angle of its own.",
            54.1 => $"{word} counts from a further work offset, but P does not say which: the control stops with an alarm.",
            31 or 38.2 or 38.3 or 38.4 or 38.5 => $"{word} moves until contact, but no X, Y or Z says where to: the control stops with an alarm.",
            _ => null,
        };
    }

    // What such an arc lacks is told by arc-plane.
    static bool IsOfOtherPlane(in StepContext step) => ArcWords.OfOtherPlane(step) >= 0;

    const string ArcMessage = "The arc has neither a centre (I, J, K of its plane) nor a radius (R): the control stops with an alarm.";
}
