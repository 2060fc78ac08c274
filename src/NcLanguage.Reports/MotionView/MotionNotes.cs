using NcLanguage.Checks;
using NcLanguage.Control.Moves;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Reports.Findings;
using NcLanguage.Reports.Trace;

namespace NcLanguage.Reports.MotionView;

/// <summary>What a picture must say in words: what it leaves out, and under which readings it holds.</summary>
static class MotionNotes
{
    public const string Caution =
        "A picture is no proof. Prove the program at the machine: single block, dry run above the part, a hand on feed hold. "
        + "Local codes and licensed practice come first.";

    /// <summary>The units of what is written into a drawing.</summary>
    public static string Units(LengthText lengths) => $"Lengths in {lengths.UnitWord}. Places are those of the tool tip.";

    /// <summary>The readings in force, as name and choice.</summary>
    public static IEnumerable<(string Name, string Choice, string Meaning)> Readings(MachineProfile machine) =>
        ReadingTable.All.Select(reading => (reading.Name, reading.Of(machine.Readings).Name, reading.Of(machine.Readings).Meaning));

    /// <summary>One sentence each on what is not drawn, not known or not checked.</summary>
    public static IEnumerable<string> Of(MotionRecording recording, MotionScene scene)
    {
        var setup = recording.Job.Setup;
        if (recording.Steps.Count == 0)
            yield return "The program has no block that does anything.";
        else if (!recording.Moves.Any(move => move.Move.IsMotion))
            yield return "The program moves nothing.";
        if (recording.IsCut)
            yield return $"The run has more moves than are kept here: only the first {recording.Moves.Count} are shown"
                + (recording.Drilled.Count < recording.Holes.Count ? $", with the first {recording.Drilled.Count} of {Say.Count(recording.Holes.Count, "hole")}." : ".");
        if (recording.IsCut && !recording.Job.Obstacles.IsEmpty)
            yield return "Contacts and nearest places are those of the whole run, also of moves that are not shown.";
        if (TraceJson.CutShort(recording.Totals.End) is { } cutShort)
            yield return $"The run stops before the program does: {cutShort}.";
        if (scene.MovesWithoutPlace > 0)
            yield return $"{Say.Count(scene.MovesWithoutPlace, "move is", "moves are")} not drawn: where {(scene.MovesWithoutPlace == 1 ? "it starts or ends" : "they start or end")} is not known.";
        if (scene.MovesWithoutLevel > 0)
            yield return $"{Say.Count(scene.MovesWithoutLevel, "move is", "moves are")} drawn in the plan only: the level is not known.";
        if (recording.Totals.UnknownMoves > 0)
            yield return $"{Say.Count(recording.Totals.UnknownMoves, "move")} of unknown length or time not counted.";
        if (recording.Moves.Any(move => move.Move.Role == MoveRole.Probe))
            yield return "A probe move is drawn to its end: contact ends it on the way.";
        if (scene.IsInWorkCoordinates && recording.States.Select(state => state.WorkOffset).Distinct().Count() > 1 && recording.Shifts.Any(shift => !shift.IsKnown))
            yield return "Several work offsets are drawn over each other: where they lie is not known.";
        if (recording.Left is { IsKnown: false } left)
            yield return $"What is left of the stock is not shown: the cut of line {left.UnknownFrom + 1} is not known.";
        else if (recording.Left is { } known)
        {
            if (known.EndsNotGiven is [_, ..] flat)
                yield return $"For what is left of the stock, {Names(flat)} counts as flat at its end: the setup does not give its form.";
            if (known.OpenedAbove is [_, ..] slots)
                yield return $"In what is left of the stock, what stands above the flutes of {Names(slots)} is drawn as cut away: undercuts are not held.";
            if (known.FromBelow is [_, ..] below)
                yield return $"In what is left of the stock, what {Names(below)} takes from below is drawn as still there: undercuts are not held.";
        }
        foreach (var clause in NotChecked.Of(setup))
            yield return $"Not checked: {clause}.";
    }

    static string Names(IEnumerable<int> tools) => string.Join(", ", tools.Select(tool => $"T{tool}"));

    /// <summary>"clamp A, 1 mm deep, line 12"; for one that is not met, how far it is.</summary>
    public static string Of(MotionRecording recording, in RecordedApproach approach)
    {
        var name = approach.Obstacle >= 0 ? recording.Job.Obstacles[approach.Obstacle].Name : "stock that still stands";
        var file = approach.File > 0 ? $" of {recording.Files[approach.File]}" : "";
        var depth = !approach.IsToolKnown ? "even with the tool's axis alone"
            : ContactText.IsContact(approach.Distance) ? ContactText.Depth(approach.Distance, recording.Lengths)
            : recording.Lengths.Length(approach.Distance);
        return $"{name}, {depth}, line {approach.Line + 1}{file}";
    }

    /// <summary>The frame that everything is drawn in.</summary>
    public static string Frame(MotionRecording recording, MotionScene scene) =>
        scene.IsInWorkCoordinates ? "work coordinates"
        : recording.Job.Setup.Frame == Setup.UnknownFrame ? "the setup's frame"
        : WorkOffsetName.Format(recording.Job.Setup.Frame);
}
