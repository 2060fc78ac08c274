using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Profiles;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing.Refactorings;

/// <summary>Which words of the blocks of a run change nothing, because what they say was said before under the same tool and in the same program.</summary>
sealed class IdleWords(Readings readings)
{
    /// <summary>Only blocks that move, drill or set modes are looked into: with any of these codes axis words mean something else.</summary>
    static readonly ModalGroup[] Foreign = [ModalGroup.NonModal, ModalGroup.MacroCall, ModalGroup.Scaling, ModalGroup.Rotation, ModalGroup.Mirror, ModalGroup.Polar, ModalGroup.LengthOffset, ModalGroup.Subprogram];

    Slot _said;
    int _depth;
    int _cycle;

    /// <summary>The tokens of a block, as bits, that change nothing.</summary>
    /// <param name="step">What the block did.</param>
    /// <param name="depth">Calls it ran within.</param>
    public ulong In(in Block block, Step step, int depth)
    {
        if (depth != _depth || (step.Events & StepEvents.ToolChange) != 0)
            _said = Slot.None;
        // A word that ends a cycle, or begins another, does more than it says.
        _depth = depth;
        var isForeign = block.HasStatement || Array.Exists(Foreign, group => step.Words.Find(group) is not null);
        ulong idle = 0;
        if (!isForeign)
            for (var i = 0; i < block.Tokens.Length && i < 64; i++)
                if (block.Tokens[i].Kind == TokenKind.Word && !block.Tokens[i].IsExpression && !block.Tokens[i].IsMalformed && IsIdle(step, block.Tokens[i], i))
                    idle |= 1UL << i;
        _said |= step.Sets;
        if (step.After.Cycle != _cycle)
            _said &= ~(Slot.CycleR | Slot.CycleBottom | Slot.CycleDwell | Slot.CyclePeck);
        _cycle = step.After.Cycle;
        if (step.After.Cycle > 0)
            _said |= step.Sets & (Slot.CycleR | Slot.CycleBottom | Slot.CycleDwell | Slot.CyclePeck);
        return idle;
    }

    bool Said(Slot slot) => (_said & slot) == slot;

    bool IsIdle(Step step, in Token token, int index)
    {
        ref readonly var before = ref step.Before;
        ref readonly var after = ref step.After;
        var drills = step.Holes.Count > 0 && before.Cycle == after.Cycle && after.Cycle > 0;
        switch ((char)token.Letter)
        {
            case 'G' or 'M':
                return IsIdleCode(step, index);
            case 'F':
                return Said(Slot.Feed) && before.FeedMode == after.FeedMode && after.FeedMode is FeedMode.PerMinute or FeedMode.PerTurn
                    && before.Feed == after.Feed && after.Motion != MotionMode.Thread && !step.Words.HasCode('G', 330);
            case 'S':
                return Said(Slot.Speed) && before.Speed == after.Speed && !after.SurfaceSpeed;
            case 'R':
                return drills && Said(Slot.CycleR) && before.RLevel == after.RLevel && MovesAcross(step);
            case 'P':
                return drills && Said(Slot.CycleDwell) && before.DwellNumber == after.DwellNumber && before.DwellHasPoint == after.DwellHasPoint;
            case 'Q':
                return drills && Said(Slot.CyclePeck) && before.Peck == after.Peck;
            case 'X' or 'Y' or 'Z':
                var axis = token.Letter - 'X';
                return drills ? IsIdleBottom(step, axis) : IsIdlePlace(step, axis);
            default:
                return false;
        }
    }

    bool IsIdleCode(Step step, int index)
    {
        ref readonly var before = ref step.Before;
        ref readonly var after = ref step.After;
        foreach (ref readonly var word in step.Words.Codes)
        {
            if (word.Token != index)
                continue;
            return word.Code.Group switch
            {
                ModalGroup.Motion => Said(Slot.Motion) && before.Motion == after.Motion && before.Cycle == 0 && step.Words.Find(ModalGroup.Cycle) is null
                    && after.Motion is MotionMode.Rapid or MotionMode.Linear or MotionMode.ArcClockwise or MotionMode.ArcCounterclockwise,
                ModalGroup.Cycle => word.Code.Tenths != 800 && Said(Slot.Cycle) && before.Cycle == after.Cycle && step.Holes.Count > 0,
                ModalGroup.Plane => Said(Slot.Plane) && before.Plane == after.Plane,
                ModalGroup.Distance => Said(Slot.Distance) && before.Distance == after.Distance,
                ModalGroup.FeedMode => Said(Slot.FeedMode) && before.FeedMode == after.FeedMode,
                ModalGroup.Units => Said(Slot.Units) && before.Units == after.Units,
                ModalGroup.WorkOffset => word.Code.Tenths != 541 && Said(Slot.WorkOffset) && before.WorkOffset == after.WorkOffset,
                ModalGroup.ReturnLevel => Said(Slot.ReturnLevel) && before.ReturnLevel == after.ReturnLevel,
                ModalGroup.PathControl => Said(Slot.PathControl) && before.PathControl == after.PathControl && !step.Words.Has('P'),
                ModalGroup.Spindle => Said(Slot.Spindle) && before.Spindle == after.Spindle && before.Cycle == 0,
                ModalGroup.Coolant => Said(Slot.Coolant) && before.Coolant == after.Coolant,
                _ => false,
            };
        }
        return false;
    }

    /// <summary>Z of a cycle that goes as deep as the hole before, in a block that names a place.</summary>
    bool IsIdleBottom(Step step, int axis) =>
        axis == Arcs.Axes(step.After.Plane).Third && Said(Slot.CycleBottom) && step.Before.Bottom == step.After.Bottom && MovesAcross(step);

    static bool MovesAcross(Step step)
    {
        var depth = Arcs.Axes(step.After.Plane).Third;
        for (var axis = 0; axis < 3; axis++)
            if (axis != depth && step.Words.Has((char)('X' + axis)))
                return true;
        return false;
    }

    /// <summary>A straight move along an axis to where the tool stands.</summary>
    bool IsIdlePlace(Step step, int axis)
    {
        ref readonly var before = ref step.Before;
        ref readonly var after = ref step.After;
        if (!Said(axis switch { 0 => Slot.X, 1 => Slot.Y, _ => Slot.Z }) || before.Cycle != 0 || after.Cycle != 0 || after.Motion is not (MotionMode.Rapid or MotionMode.Linear) || before.ProgramFrame is not null
            || before.Compensation != CompensationSide.Off || after.Compensation != CompensationSide.Off || before.WorkOffset != after.WorkOffset)
            return false;
        var value = step.Words[(char)('X' + axis)];
        if (after.Distance == DistanceMode.Incremental)
            return value == 0;
        return after.Distance == DistanceMode.Absolute && readings.Integers == IntegerReading.Whole
            && before.Position[axis] == value * UnitLength.Of(after.Units);
    }
}
