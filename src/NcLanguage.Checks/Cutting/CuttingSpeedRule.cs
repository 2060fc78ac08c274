using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Cutting;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Machine.Cutting;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>A spindle speed that brings the tool's edge far outside the cutting speeds of the table.</summary>
public sealed class CuttingSpeedRule : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC5003",
        Name = "cutting-speed",
        Severity = Severity.Warning,
        Title = "A cutting speed far outside what the table gives",
        Finds = "A spindle speed, given or started with the tool in the spindle, that makes the cutting speed more than twice the greatest or less than half the least that the cutting data give "
            + "for the setup's material and the tool's material, kind and diameter.",
        AtTheMachine = "Much too fast, the edge burns off within seconds. Much too slow, it rubs and tears, and at a feed per minute bites off too much with each turn.",
        Setup = """
            { "material": "stainless steel",
              "tools": [ { "number": 3, "kind": "drill", "diameter": 8, "material": "HSS", "pointAngle": 118, "fluteLength": 40, "length": 90 } ] }
            """,
        Example = """
            G21 G90 G17 G54
            T3 M6
            S2000 M3
            ~^^^^
            G0 X20 Y30
            G43 H3 Z40 M8
            G99 G81 X20 Y30 R2 Z-12 F120
            X60
            G80
            G0 Z60 M9
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T3 M6
            S450 M3
            G0 X20 Y30
            G43 H3 Z40 M8
            G99 G81 X20 Y30 R2 Z-12 F60
            X60
            G80
            G0 Z60 M9
            M5
            M30
            """,
        FixSafety = FixSafety.Choice,
        Fix = "Writes the speed at the nearer end of the table's range, within the spindle's limits. The feed stays as it is: look at it too.",
        NotFound = "The low speed at which a drill goes into a hole that was drilled before, until another S comes, or at which it leaves its holes. Materials and tools that the table does not have, taps and tools that cut with another diameter than their greatest. Speeds that the spindle does not have (speed-over-machine). A low speed is not reported where the spindle "
            + "cannot reach the table's least. Coatings, coolant and the machine's power are not looked at; your tool maker's data in nc.cutting.json come first.",
        Source = "Speed = π·D·n: open textbook Machining 1, chapter 8; the message names the table row's source. That twice and half are far outside is common practice.",
    };

    public override StepEvents Interest => StepEvents.News;

    public override void CheckStep(in StepContext step)
    {
        ref readonly var state = ref step.Step.After;
        if ((step.Step.Sets & (Slot.Speed | Slot.Spindle)) == 0 || state.Spindle is not (SpindleState.Clockwise or SpindleState.Counterclockwise) || !(state.Speed > 0)
            || step.Job.Setup.FindTool(state.Tool) is not { } tool || ToolRange.Speed(step.Job.Setup, tool) is not { } range)
            return;
        var side = SideOf(state.Speed, tool, range, step.Job);
        if (side == 0)
            return;
        var speed = CuttingSpeed.AtDiameter(state.Speed, tool.Diameter!.Value);
        var message = $"S{Say.Number(state.Speed)} makes a cutting speed of {CuttingSay.Speed(speed, step.Say)}, far {(side < 0 ? "below" : "above")} the "
            + $"{CuttingSay.Speeds(range, step.Say)} for {range.Material} with this tool, {ToolRange.Describe(tool, step.Say)} ({range.Source}).";
        if (step.Step.Words.Has('S'))
            step.Report(this, step.Step.Words.TokenOf('S'), message, value: side);
        else
            step.ReportBlock(this, message, Slot.Speed, "The speed was given here.", value: side);
    }

    /// <summary>Whether a spindle speed of a tool is told as far below (−1) or far above (1) the table's; 0 where it is not told here.</summary>
    internal static int SideOf(double turns, Tool tool, in CuttingRange range, Job job)
    {
        var diameter = tool.Diameter!.Value;
        var side = ToolRange.FarOutside(CuttingSpeed.AtDiameter(turns, diameter), range);
        return side != 0 && job.Machine.Spindle is { } limits && IsTheSpindles(limits, turns, side, CuttingSpeed.SpindleSpeed(range.Least, diameter)) ? 0 : side;
    }

    /// <summary>Whether the spindle is the cause: a speed that it does not have is told by speed-over-machine, and one below the table's least may be all it has.</summary>
    static bool IsTheSpindles(Limits limits, double speed, int side, double least) =>
        speed > limits.Max || speed < limits.Min || (side < 0 && limits.Max < least);

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(analysis);
        var state = analysis.Main.StepAt(finding.Line).After;
        if (analysis.Setup.FindTool(state.Tool) is not { } tool || ToolRange.Speed(analysis.Setup, tool) is not { } range
            || Turns(range, tool, finding.Value < 0, analysis) is not { } turns)
            yield break;
        var word = "S" + Say.Number(turns);
        var say = new LengthText(state.Units);
        yield return new Fix(
            $"{word}: {CuttingSay.Speed(CuttingSpeed.AtDiameter(turns, tool.Diameter!.Value), say)}", FixSafety.Choice, [CycleWords.Set(analysis.Main, finding.Line, word)]);
    }

    /// <summary>The speed at the nearer end of the range, rounded into it; null where the spindle cannot turn at any speed near it.</summary>
    static double? Turns(in CuttingRange range, Tool tool, bool isLow, ProgramAnalysis analysis)
    {
        var exact = CuttingSpeed.SpindleSpeed(isLow ? range.Least : range.Greatest, tool.Diameter!.Value);
        var grain = exact >= 200 ? 10 : 1;
        var turns = isLow ? Math.Ceiling(exact / grain) * grain : Math.Floor(exact / grain) * grain;
        if (analysis.Machine.Spindle is { } limits)
            turns = Math.Clamp(turns, limits.Min, limits.Max);
        return turns > 0 && ToolRange.FarOutside(CuttingSpeed.AtDiameter(turns, tool.Diameter!.Value), range) == 0 ? turns : null;
    }
}
