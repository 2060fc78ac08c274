using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Rules;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Checks.Clearance;

/// <summary>The traverse between two holes that comes nearest to something, of those that lead to the holes of one block.</summary>
/// <param name="Move">Index of the traverse in its step.</param>
/// <param name="Hole">Index of the hole it leads to.</param>
/// <param name="Distance">Least distance, mm; 0 or less is contact.</param>
/// <param name="Approach">What it comes near to; <see cref="Approach.None"/> where only the clamp height is known.</param>
readonly record struct BlockHop(int Move, int Hole, double Distance, Approach Approach)
{
    /// <summary>The text of a finding about a traverse between holes, in rules that speak of other moves too.</summary>
    public const string Mark = "hop";

    /// <summary>False where the block has no traverse that can be judged.</summary>
    public static bool TryFindNearest(in StepContext step, out BlockHop nearest)
    {
        nearest = new BlockHop(-1, -1, double.PositiveInfinity, Approach.None);
        if (!HopClearance.CanJudge(step.Job) || (!step.Job.Obstacles.IsEmpty && !step.ComesNear))
            return false;
        var holes = step.Step.Holes;
        for (var i = 0; i < holes.Count; i++)
        {
            if (!holes[i].IsHop)
                continue;
            var end = i + 1 < holes.Count ? holes[i + 1].FirstMove : step.Step.Moves.Count;
            for (var move = holes[i].FirstMove; move < end; move++)
                if (step.Step.Moves[move].Role == MoveRole.Hop && At(step, i, move) is var hop && hop.Distance < nearest.Distance)
                    nearest = hop;
        }
        return nearest.Move >= 0;
    }

    static BlockHop At(in StepContext step, int hole, int move)
    {
        if (!step.Job.Obstacles.IsEmpty)
        {
            var approach = step.ApproachOf(move);
            return new BlockHop(move, hole, approach.Distance, approach);
        }
        var level = step.Step.After.Plane == WorkPlane.XY ? step.Step.Moves[move].From.Z + step.Step.ToFrame.Z : double.NaN;
        return new BlockHop(move, hole, level - step.Job.Setup.ClampHeight ?? double.NaN, Approach.None);
    }

    /// <summary>Reports the traverse with what it meets, the level that clears and whether the initial level does.</summary>
    public void Report(Rule rule, in StepContext step, string text = "")
    {
        var (concerns, message) = ReturnSetter(step);
        step.ReportBlock(rule, Message(step), concerns, message, text: text, asMet: true);
    }

    /// <summary>The block before that set the return level; none where the traverse's own block did.</summary>
    (Slot, string) ReturnSetter(in StepContext step)
    {
        var ownBlock = Hole > 0 || step.Job.Readings.ReturnLevel == ReturnLevelReading.BeforeMove;
        return ownBlock && (step.Step.Sets & Slot.ReturnLevel) != 0
            ? (Slot.None, "")
            : (Slot.ReturnLevel, "The return level was set here.");
    }

    string Message(in StepContext step)
    {
        ref readonly var move = ref step.Step.Moves[Move];
        var plane = step.Step.After.Plane;
        return $"The traverse from {step.Say.Unnamed.Place(move.From, plane)} to {step.Say.Place(move.To, plane)} at "
            + $"{step.Say.Level(move.From[Arcs.Axes(plane).Third], CycleRuns.DepthAxis(plane))} {WhatItMeets(step, move.From.Z)}{WhatClears(step, move)}.";
    }

    string WhatItMeets(in StepContext step, double level)
    {
        var touches = Math.Abs(Distance) <= Sweep.ClearanceTolerance;
        if (Approach.ObstacleIndex >= 0)
        {
            var name = step.Job.Obstacles[Approach.ObstacleIndex].Name;
            var part = ContactWords.With(Approach.Part);
            if (Distance > Sweep.ClearanceTolerance)
                return $"passes {name}{part} at {step.Say.Length(Distance)}, nearer than the clearance of {step.Say.Length(step.Job.Setup.Clearance)}";
            return touches ? $"touches {name}{part}" : $"runs into {name}{part}, {step.Say.Length(-Distance)} deep";
        }
        var top = step.Say.Level(level - Distance);
        if (Distance > Sweep.ClearanceTolerance)
            return $"is only {step.Say.Length(Distance)} above the clamps' top at {top}, less than the clearance of {step.Say.Length(step.Job.Setup.Clearance)}";
        return touches ? $"is level with the clamps' top at {top}" : $"is {step.Say.Length(-Distance)} below the clamps' top at {top}";
    }

    string WhatClears(in StepContext step, in Move move)
    {
        if (step.Step.After.Plane != WorkPlane.XY)
            return "";
        ref readonly var hole = ref step.Step.Holes[Hole];
        var shift = step.Step.ToFrame;
        var (from, to) = (move.From + shift, move.To + shift);
        var least = HopClearance.LeastLevel(step.Job, from, to, hole.Tool, hole.RLevel + shift.Z) - shift.Z;
        if (!double.IsFinite(least))
            return "";
        var clears = $"; it clears from {step.Say.Level(step.Say.Upward(least))} up";
        if (double.IsNaN(hole.InitialLevel))
            return clears + ", and the initial level is not known here";
        var initial = Math.Max(hole.InitialLevel, move.From.Z);
        var distance = HopClearance.DistanceAt(step.Job, from, to, initial + shift.Z, hole.Tool);
        return HopClearance.Of(step.Job, distance) == HopOutcome.Clear
            ? clears + $", and the initial level {step.Say.Level(hole.InitialLevel)} does"
            : clears + $", and the initial level {step.Say.Level(hole.InitialLevel)} is not enough: lift the tool that high before the cycle";
    }
}
