using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Cutting;
using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>A feed that makes each tooth, or each turn of a drill, bite far more or less than the table gives.</summary>
public sealed class FeedPerTooth : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC5004",
        Name = "feed-per-tooth",
        Severity = Severity.Warning,
        Title = "A feed per tooth or turn far outside what the table gives",
        Finds = "An F word in a block that cuts, where the feed per tooth, for drills and reamers the feed per turn, is more than twice the greatest or less than half the least that the cutting "
            + "data give for the setup's material and the tool's material, kind and diameter. Under G93 only a feed that is far too much, and would be a usual one per minute.",
        AtTheMachine = "Much too much, the tool breaks or pulls the work from the clamps. Much too little, the edges rub instead of cutting, and are blunt soon.",
        Setup = """
            { "material": "aluminium",
              "tools": [ { "number": 3, "kind": "drill", "diameter": 8, "material": "HSS", "flutes": 2, "pointAngle": 118, "fluteLength": 40, "length": 90 } ] }
            """,
        Example = """
            G21 G90 G17 G54
            T3 M6
            S3000 M3
            G0 X20 Y30
            G43 H3 Z40 M8
            G99 G81 X20 Y30 R2 Z-12 F3000
            ~                       ^^^^^
            X60
            G80
            G0 Z60 M9
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T3 M6
            S3000 M3
            G0 X20 Y30
            G43 H3 Z40 M8
            G99 G81 X20 Y30 R2 Z-12 F400
            X60
            G80
            G0 Z60 M9
            M5
            M30
            """,
        FixSafety = FixSafety.Choice,
        Fix = "Writes the feed at the nearer end of the table's range for the speed in force; where the number would be a usual one per turn, or per minute, and the feed given next as well, adds G95 or G94, or writes it in place of the other.",
        NotFound = "The feed at which a drill goes down in a hole that was drilled before. Feeds given in a block that does not cut, feeds of a mill going straight down, feeds of full turns that are far too little (those in bores and down a helix are small on purpose), tapping, and tools and materials that the table does not have. The width of the cut is not "
            + "looked at: a thin side cut bears more feed, a full slot less. A feed or speed that the machine does not have is told by feed-over-machine or speed-over-machine alone, and a feed that it cannot reach is not asked for. Where it is the speed "
            + "that is far outside, and the feed would be a usual one at a speed of the table, cutting-speed alone speaks.",
        Source = "Feed = speed · teeth · feed per tooth (textbook, from memory); the message names the table row's source. That twice and half are far outside is common practice.",
    };

    public override StepEvents Interest => StepEvents.FeedGiven;

    public override void CheckStep(in StepContext step)
    {
        ref readonly var state = ref step.Step.After;
        if ((step.Step.Events & StepEvents.Cut) == 0 || (step.Step.Sets & Slot.Feed) == 0 || !step.Step.Words.Has('F') || state.Cycle is 84 or 74 || !(state.Speed > 0) || !(state.Feed > 0)
            || step.Job.Setup.FindTool(state.Tool) is not { } tool || ToolRange.Feed(step.Job.Setup, tool) is not { } feed)
            return;
        var isItsWay = IsItsWay(tool, step.Step);
        if (!isItsWay && !HasFullTurn(step.Step))
            return;
        // One cause, one finding: a speed or feed beyond the machine is told by its own rule.
        var speed = state.Speed;
        if ((step.Job.Machine.Spindle is { } limits && (speed > limits.Max || speed < limits.Min))
            || (state.FeedMode == FeedMode.PerTurn ? state.Feed * speed : state.Feed) > step.Job.Machine.MaxFeed)
            return;
        var perTurn = state.FeedMode switch { FeedMode.PerMinute => state.Feed / state.Speed, FeedMode.PerTurn => state.Feed, FeedMode.InverseTime => FastestCut(step.Step) / state.Speed, _ => double.NaN };
        var each = perTurn / feed.Teeth;
        var side = ToolRange.FarOutside(each, feed.Range);
        if (side == 0 || (side < 0 && !isItsWay) || (side < 0 && step.Job.Machine.MaxFeed < feed.Range.Least * feed.Teeth * state.Speed) || IsTheSpeeds(step, tool, feed))
            return;
        var other = OtherMode(state, feed);
        if (state.FeedMode == FeedMode.InverseTime && (side < 0 || other is null))
            return;
        step.Report(
            this, step.Step.Words.TokenOf('F'), $"This feed at S{Say.Number(state.Speed)} is {CuttingSay.Fine(each, step.Say)} {feed.Per}, far {(side < 0 ? "below" : "above")} the "
                + $"{CuttingSay.Fines(feed.Range, step.Say)} for {feed.Range.Material} with this tool, {ToolRange.Describe(tool, step.Say)} ({feed.Range.Source})."
                + (other is null ? "" : $" {other} would make {CuttingSay.Fine(OtherPerTurn(state) / feed.Teeth, step.Say)} of it."), value: side, text: other ?? "");
    }

    /// <summary>Whether the speed is the cause, of which cutting-speed speaks: at a speed of the table the feed is none to be told.</summary>
    static bool IsTheSpeeds(in StepContext step, Tool tool, in FeedRange feed)
    {
        ref readonly var state = ref step.Step.After;
        if (state.FeedMode != FeedMode.PerMinute || ToolRange.Speed(step.Job.Setup, tool) is not { } speeds || CuttingSpeedRule.SideOf(state.Speed, tool, speeds, step.Job) == 0)
            return false;
        var each = state.Feed / feed.Teeth;
        var (slow, fast) = (each / CuttingSpeed.SpindleSpeed(speeds.Least, tool.Diameter!.Value), each / CuttingSpeed.SpindleSpeed(speeds.Greatest, tool.Diameter!.Value));
        return slow >= feed.Range.Least / ToolRange.Far && fast <= feed.Range.Greatest * ToolRange.Far;
    }

    /// <summary>The code under which the number of the F word would be a feed of the table, where the one in force is not it; null where it would not.</summary>
    static string? OtherMode(in ControlState state, in FeedRange feed) =>
        ToolRange.FarOutside(OtherPerTurn(state) / feed.Teeth, feed.Range) == 0 ? state.FeedMode == FeedMode.PerMinute ? "G95" : "G94" : null;

    /// <summary>Feed per turn with the number read the other way: per turn where it is per minute, else per minute.</summary>
    static double OtherPerTurn(in ControlState state) => state.FeedMode == FeedMode.PerMinute ? state.Feed : state.Feed / state.Speed;

    /// <summary>Whether the feed given next, where the way of reading feeds stays until then, would be one of the table too if it were read the other way.</summary>
    static bool NextIsRightToo(int line, ProgramAnalysis analysis)
    {
        var next = analysis.Main.FirstSetter(Slot.Feed | Slot.FeedMode, line);
        if (next < 0 || (analysis.Main.SetsOf(next) & Slot.FeedMode) != 0)
            return true;
        var state = analysis.Main.StepAt(next).After;
        return analysis.Setup.FindTool(state.Tool) is not { } tool || ToolRange.Feed(analysis.Setup, tool) is not { } feed || !(state.Feed > 0) || !(state.Speed > 0)
            || ToolRange.FarOutside(OtherPerTurn(state) / feed.Teeth, feed.Range) == 0;
    }

    /// <summary>The greatest feed of a step's cuts, mm/min; NaN where it has none.</summary>
    static double FastestCut(Step step)
    {
        var fastest = double.NaN;
        foreach (ref readonly var move in step.Moves.Items)
            if (move.IsCut && !(move.Feed <= fastest))
                fastest = move.Feed;
        return fastest;
    }

    /// <summary>Whether the tool moves the way its feed is given for: drills along their axis, mills across it.</summary>
    static bool IsItsWay(Tool tool, Step step)
    {
        if (!tool.IsMill)
            return true;
        if (step.Holes.Count > 0)
            return false;
        foreach (ref readonly var move in step.Moves.Items)
            if (move.IsCut && Math.Abs(move.From.X - move.To.X) + Math.Abs(move.From.Y - move.To.Y) > Math.Abs(move.From.Z - move.To.Z))
                return true;
        return false;
    }

    /// <summary>A turn ends where it began. It is looked at for a feed that is far too much alone: within a bore, and down a helix, the feed of the tool's middle is far less on purpose.</summary>
    static bool HasFullTurn(Step step)
    {
        if (step.Holes.Count > 0)
            return false;
        foreach (ref readonly var move in step.Moves.Items)
            if (move.Kind == MoveKind.Arc && move.Length > Math.Abs(move.From.Z - move.To.Z))
                return true;
        return false;
    }

    public override IEnumerable<Fix> Fixes(Finding finding, ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(analysis);
        var step = analysis.Main.StepAt(finding.Line);
        var (state, mode) = (step.After, step.Words.Find(ModalGroup.FeedMode));
        if (finding.Text.Length > 0 && NextIsRightToo(finding.Line, analysis))
            yield return mode is { } given
                ? new Fix($"Write {finding.Text} in place of {given.Code.Text}", FixSafety.Choice, [WordEdits.Replace(finding.Line, analysis.Main.BlockAt(finding.Line), given.Token, finding.Text)])
                : new Fix($"Add {finding.Text}", FixSafety.Choice, [new Edit(finding.Line, finding.StartColumn, finding.StartColumn, finding.Text + " ")]);
        if (state.FeedMode == FeedMode.InverseTime || state.Units == LengthUnit.Unknown || analysis.Setup.FindTool(state.Tool) is not { } tool || ToolRange.Feed(analysis.Setup, tool) is not { } feed)
            yield break;
        var isLow = finding.Value < 0;
        var perTurn = (isLow ? feed.Range.Least : feed.Range.Greatest) * feed.Teeth;
        var value = (state.FeedMode == FeedMode.PerTurn ? perTurn : perTurn * state.Speed) / (state.Units == LengthUnit.Inch ? UnitLength.MmPerInch : 1);
        // Figures that an F word has: whole millimetres or tenths of an inch a minute, thousandths or finer a turn.
        var grain = (state.FeedMode == FeedMode.PerTurn, state.Units == LengthUnit.Inch) switch { (false, false) => 1, (false, true) => 0.1, (true, false) => 0.001, _ => 0.0001 };
        value = (isLow ? Math.Ceiling(value / grain) : Math.Floor(value / grain)) * grain;
        if (!(value > 0))
            yield break;
        var word = "F" + Say.Number(value, 4);
        yield return new Fix($"{word}: {CuttingSay.Fine(isLow ? feed.Range.Least : feed.Range.Greatest, new LengthText(state.Units))} {feed.Per}", FixSafety.Choice,
            [CycleWords.Set(analysis.Main, finding.Line, word)]);
    }
}
