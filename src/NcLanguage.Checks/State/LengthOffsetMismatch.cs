using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>A length offset that belongs to another tool, or that is taken away instead of added.</summary>
public sealed class LengthOffsetMismatch : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC2008",
        Name = "length-offset-mismatch",
        Severity = Severity.Warning,
        Title = "The length offset is another tool's, or is taken away",
        Finds = "G43 or G44 with an H that is not the one of the tool in the spindle: the lengthOffset of the setup's tool list, else the tool's number. "
            + "As an error, where both lengths are known and the tool is the longer one, and G44 with an H whose length the setup or the program gives above 0. "
            + "Also G43 with the tool's own H into which G10 has written another length than the setup's, by more than 1 mm: as an error where the tool is the longer one; and, as an error, any tool's H behind T0 M6, with which the spindle is empty.",
        AtTheMachine = "Z counts with another tool's length: a longer tool goes too deep by the difference, at rapid. Under G44 it goes too deep by twice its length.",
        Example = """
            G21 G90 G17 G54
            T2 M6
            G0 X10 Y10
            G43 H1 Z50
            ~   ^^
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T2 M6
            G0 X10 Y10
            G43 H2 Z50
            M30
            """,
        FixSafety = FixSafety.Safe,
        Fix =
            "Writes the H of the tool in the spindle; where the H is that of a tool that is called and not changed to, as a choice, or M6; for G44, as a choice, G43; for a length that G10 writes none. Where the setup lists it, it can be trusted; where only the tool's number speaks for it, the wrong "
            + "word may as well be the T. Where the D that follows is the same other tool's, the T is: as choices, writes that, or the H.",
        NotFound = "G44 with a length that is not known. Lengths that G10 writes within 1 mm of the setup's, and what it writes as wear. H0, which is no length at all: that is length-offset-missing. What is said of Z behind it holds for the right length. Shops that number H differently from T say so with lengthOffset in the setup's tool list.",
        Source = "NISTIR 6556 §3.5.11; H equal to T, and G44 for lists that hold lengths below 0, are common practice, as is that a tool wears by tenths.",
    };

    public override StepEvents Interest => StepEvents.News;

    public override void CheckStep(in StepContext step)
    {
        ref readonly var after = ref step.Step.After;
        if ((step.Step.Sets & (Slot.LengthOffset | Slot.OffsetData)) == 0 || after.H < 0 || !step.IsRun)
            return;
        CheckWritten(step);
        if ((step.Step.Sets & Slot.LengthOffset) == 0)
            return;
        CheckSign(step);
        if (after.Tool < 0)
            return;
        if (after.LengthOffset is not (LengthOffsetMode.Plus or LengthOffsetMode.Minus) || !step.Step.Words.Has('H'))
            return;
        if (after.Tool == 0)
        {
            if (after.H > 0)
                step.Report(this, step.Step.Words.TokenOf('H'), $"H{after.H} is a tool's length, and the spindle is empty: T0 is no tool.", Slot.Tool, "T0 is changed in here.", text: NoTool, severity: Severity.Error);
            return;
        }
        var expected = LengthOffsets.Of(after.Tool, step.Job.Setup);
        if (after.H == expected || after.H == 0)
            return;
        // A tool that the setup's list lacks is told where it is called: tool-not-in-setup.
        if (!step.Job.Setup.Tools.IsEmpty && step.Job.Setup.FindTool(after.Tool) is null)
            return;
        var isListed = step.Job.Setup.FindTool(after.Tool) is not null;
        // How much lower than the program says the tip runs: the tool is longer by as much.
        var lower = Offsets.LengthOf(expected, after, step.Job.Setup) - Offsets.LengthOf(after.H, after, step.Job.Setup);
        if (IsCalledNext(after, step.Job.Setup))
        {
            step.Report(this, step.Step.Words.TokenOf('H'),
                $"H{after.H} is applied to tool {after.Tool}, whose length stands in H{expected}: T{after.SelectedTool} is called, but no M6 has changed to it{(isListed ? ", and " + Off(lower, after, step.Say) : ".")}",
                Slot.SelectedTool, $"T{after.SelectedTool} is called here.", expected, text: NotChanged, severity: isListed && IsLower(lower, after) ? Severity.Error : Severity.Warning);
            return;
        }
        var message = isListed
            ? $"H{after.H} is applied to tool {after.Tool}, whose length stands in H{expected}: {Off(lower, after, step.Say)}"
            : $"H{after.H} is applied to tool {after.Tool}, whose length by custom stands in H{expected}: if it does here, Z is off by the difference of the two lengths.";
        step.Report(this, step.Step.Words.TokenOf('H'), message,
            Slot.Tool, $"Tool {after.Tool} is changed in here.", expected, severity: isListed && IsLower(lower, after) ? Severity.Error : Severity.Warning);
    }

    /// <summary>Whether the length is that of the tool that is called and has not been changed to.</summary>
    static bool IsCalledNext(in ControlState state, Setup setup) =>
        state.SelectedTool > 0 && state.SelectedTool != state.Tool && LengthOffsets.Of(state.SelectedTool, setup) == state.H;

    const string NotChanged = "M6";
    const string NoTool = "T0";

    /// <summary>Lengths nearer to each other than this are alike, mm.</summary>
    const double Equal = 0.0005;

    /// <summary>A tool wears, or is measured anew, by less than this, mm (common practice).</summary>
    const double MostWear = 1;

    static bool IsLower(double lower, in ControlState state) => state.LengthOffset == LengthOffsetMode.Plus && lower > Equal;

    static string Off(double lower, in ControlState state, LengthText say) => state.LengthOffset switch
    {
        LengthOffsetMode.Plus when Math.Abs(lower) <= Equal => "both are as long in the setup, so that Z is right as long as they stay so.",
        LengthOffsetMode.Plus when lower > 0 => $"the tip runs {say.Length(lower)} lower than the program says. What is said of Z here and behind it holds for the right length.",
        LengthOffsetMode.Plus when lower < 0 => $"the tip runs {say.Length(-lower)} higher than the program says. What is said of Z here and behind it holds for the right length.",
        _ => "Z is off by the difference of the two lengths.",
    };

    /// <summary>A length that G10 has written for the tool in the spindle, held against the setup's; told where it comes into force.</summary>
    void CheckWritten(in StepContext step)
    {
        ref readonly var after = ref step.Step.After;
        if (after.Tool <= 0 || after.LengthOffset != LengthOffsetMode.Plus || after.H != LengthOffsets.Of(after.Tool, step.Job.Setup) || step.Job.Setup.FindTool(after.Tool)?.Length is not { } length)
            return;
        if (after.OffsetData is not { IsLost: false } data || data.Length(after.H) is not { } written)
            return;
        var lower = length - written.Size;
        var isNew = (step.Step.Sets & Slot.LengthOffset) != 0 || step.Step.Before.OffsetData is not { IsLost: false } old || old.Length(after.H)?.Size.Equals(written.Size) != true;
        if (!isNew || !(Math.Abs(lower) > MostWear))
            return;
        step.ReportBlock(this, $"The program has written {step.Say.Length(written.Size)} into H{after.H}, and the setup gives tool {after.Tool} a length of {step.Say.Length(length)}: {Off(lower, after, step.Say)}",
            text: WrittenLength, severity: lower > 0 ? Severity.Error : Severity.Warning);
    }

    const string WrittenLength = "G10";

    void CheckSign(in StepContext step)
    {
        ref readonly var after = ref step.Step.After;
        var token = step.Step.Words.TokenOfCode('G', 440);
        var length = -Offsets.LengthValue(after, step.Job.Setup);
        if (token < 0 || after.LengthOffset != LengthOffsetMode.Minus || !(length > 0))
            return;
        step.Report(this, token, $"G44 takes the length in H{after.H}, {step.Say.Length(length)}, away instead of adding it: the tip runs {step.Say.Length(2 * length)} lower than with G43.",
            text: AddingCode, severity: Severity.Error);
    }

    const string AddingCode = "G43";

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        if (finding.Text is WrittenLength or NoTool)
            return [];
        if (finding.Text == AddingCode)
            return [new Fix($"Write {AddingCode}", FixSafety.Choice, [new Edit(finding.Line, finding.StartColumn, finding.EndColumn, AddingCode)])];
        var tool = analysis.Main.StepAt(finding.Line).After.Tool;
        var isListed = analysis.Setup.FindTool(tool)?.LengthOffset is not null;
        var word = "H" + Say.Number(finding.Value);
        if (finding.Text == NotChanged)
            return WhereNotChanged(finding, analysis, word);
        if (ToolMeant.At(finding.Line, analysis) is { } meant)
            return [.. ToolMeant.Fixes(meant, finding.Line, analysis), new Fix($"Write {word}", FixSafety.Choice, [new Edit(finding.Line, finding.StartColumn, finding.EndColumn, word)])];
        return [new Fix($"Write {word}", isListed ? FixSafety.Safe : FixSafety.Choice, [new Edit(finding.Line, finding.StartColumn, finding.EndColumn, word)])];
    }

    /// <summary>A change that was forgotten, or the length of a tool that is only called for later.</summary>
    static IEnumerable<Fix> WhereNotChanged(Finding finding, ProgramAnalysis analysis, string word)
    {
        var run = analysis.Main;
        var call = run.StepAt(finding.Line).Words.Has('T') ? finding.Line : run.LastSetterBefore(Slot.SelectedTool, finding.Line);
        if (call >= 0 && !run.StepAt(call).Words.HasCode('M', 60))
            yield return new Fix($"Change to the tool with M6 in line {call + 1}", FixSafety.Choice, [Inserts.Behind(analysis, call, "M6")]);
        yield return new Fix($"Write {word}", FixSafety.Choice, [new Edit(finding.Line, finding.StartColumn, finding.EndColumn, word)]);
    }
}
