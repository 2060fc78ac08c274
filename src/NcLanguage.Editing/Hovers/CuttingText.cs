using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Cutting;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Machine.Cutting;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Editing;

/// <summary>Feed and speed, and what they come to at the tool's edge.</summary>
static class CuttingText
{
    const double InchesPerFoot = 12;

    /// <summary>Feed per minute, per turn and per tooth; for taps the feed that the pitch asks for.</summary>
    public static string Feed(ProgramAnalysis analysis, Step step)
    {
        ref readonly var state = ref step.After;
        var parts = new List<string>();
        var lengths = Lengths.Of(state);
        // Feed per turn is feed over speed, per tooth that over the teeth (open textbook Machining 1, chapter 8).
        var perTurn = double.NaN;
        switch (state.FeedMode)
        {
            case FeedMode.PerMinute:
                parts.Add(lengths.Feed(state.Feed));
                perTurn = state.Feed / state.Speed;
                if (double.IsFinite(perTurn))
                    parts.Add($"{lengths.Fine(perTurn)} per rev at S{Say.Number(state.Speed)}");
                break;
            case FeedMode.PerTurn:
                perTurn = state.Feed;
                parts.Add($"{lengths.Fine(perTurn)} per rev");
                if (double.IsFinite(perTurn * state.Speed))
                    parts.Add($"{lengths.Feed(perTurn * state.Speed)} at S{Say.Number(state.Speed)}");
                break;
            case FeedMode.InverseTime:
                return state.Feed > 0 ? $"The block's move takes {Times.Of(60 / state.Feed)}." : $"The time of the block's move is {Lengths.NotKnown}.";
            default:
                return $"The feed mode is {Lengths.NotKnown}.";
        }
        var tool = analysis.Setup.FindTool(state.Tool);
        if (tool?.Flutes is > 1 and var flutes && tool.Pitch is null && double.IsFinite(perTurn))
            parts.Add($"{lengths.Fine(perTurn / flutes)} per tooth ({flutes} teeth)");
        if (state.Speed == 0)
            parts.Add("the spindle speed is S0");
        return string.Join(" · ", parts) + "." + Thread(analysis, step, perTurn) + FeedRange(analysis, step) + " Stays in force until replaced.";
    }

    /// <summary>While tapping, one turn must feed one pitch (NISTIR 6556 §3.5.16.5).</summary>
    static string Thread(ProgramAnalysis analysis, Step step, double perTurn)
    {
        if (StepFacts.CycleOf(step) is not (84 or 74) || analysis.Setup.FindTool(step.After.Tool)?.Pitch is not { } pitch || !double.IsFinite(perTurn))
            return "";
        var lengths = Lengths.Of(step.After);
        if (Math.Abs(perTurn - pitch) < 0.0005)
            return $" That is the pitch of T{step.After.Tool}, {lengths.Fine(pitch)}.";
        var asked = step.After.FeedMode == FeedMode.PerTurn ? lengths.Fine(pitch) + " per rev" : lengths.Feed(pitch * step.After.Speed);
        return $" **The pitch of T{step.After.Tool}, {lengths.Fine(pitch)}, asks for {asked}.**";
    }

    /// <summary>What the cutting data give for the tool's feed; empty where they do not have it, and while tapping.</summary>
    static string FeedRange(ProgramAnalysis analysis, Step step)
    {
        if (StepFacts.CycleOf(step) is 84 or 74 || analysis.Setup.FindTool(step.After.Tool) is not { } tool || ToolRange.Feed(analysis.Setup, tool) is not { } feed)
            return "";
        return $" The cutting data give {CuttingSay.Fines(feed.Range, new LengthText(step.After.Units))} {feed.Per} for {For(feed.Range, tool)}.";
    }

    /// <summary>What the cutting data give for the tool's speed; empty where they do not have it.</summary>
    static string SpeedRange(ProgramAnalysis analysis, Step step) =>
        analysis.Setup.FindTool(step.After.Tool) is { } tool && ToolRange.Speed(analysis.Setup, tool) is { } range
            ? $" The cutting data give {CuttingSay.Speeds(range, new LengthText(step.After.Units))} for {For(range, tool)}."
            : "";

    static string For(in CuttingRange range, Tool tool) =>
        $"{Markdown.Plain(range.Material)}{(tool.Material is { } edge ? $" with an edge of {Markdown.Plain(edge)}" : "")} ({string.Join("; ", range.Source.Split("; ").Select(Markdown.Plain))})";

    /// <summary>Turns per minute and the cutting speed at the tool's diameter: π·D·n.</summary>
    public static string Speed(ProgramAnalysis analysis, Step step)
    {
        ref readonly var state = ref step.After;
        if (double.IsNaN(state.Speed))
            return state.SurfaceSpeed
                ? $"A cutting speed in {(state.Units == LengthUnit.Inch ? "ft/min" : "m/min")} under G96: it sets the spindle by the diameter turned, which a mill does not have, "
                    + $"so that the spindle speed in rev/min is {Lengths.NotKnown} until G97."
                : $"Its value is {Lengths.NotKnown}.";
        var text = $"{Say.Number(state.Speed)} rev/min";
        if (analysis.Setup.FindTool(state.Tool)?.Diameter is { } diameter)
        {
            var mmPerMinute = Math.PI * diameter * state.Speed;
            text += state.Units == LengthUnit.Inch
                ? $" · {Say.Number(mmPerMinute / UnitLength.MmPerInch / InchesPerFoot, 0)} ft/min"
                : $" · {Say.Number(mmPerMinute / 1000, 1)} m/min";
            text += $" at diameter {Say.Mm(diameter)} (T{state.Tool})";
        }
        else
            text += " · cutting speed " + Lengths.NotKnown + (analysis.Setup.IsPresent ? "" : ", no setup file");
        return text + "." + SpeedRange(analysis, step) + " Stays in force until replaced.";
    }
}
