using System.Collections.Immutable;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.State;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Checks.Clearance;

/// <summary>What a plan is for.</summary>
public enum HopAim
{
    /// <summary>The initial level where a traverse at R does not clear and one at the initial level does.</summary>
    Clear,

    /// <summary>R where a traverse at R clears.</summary>
    Fast,
}

/// <summary>
/// Decides, for every block of one uninterrupted run of holes, whether it is to return to the initial level or to R, and writes the
/// words. Where G98 and G99 act after the hole, a block's word rules the traverses that leave its holes; where they act before the
/// move, those that reach its holes. Blocks that need nothing keep what is in effect for them now. A block with repeats counts as one.
/// </summary>
public sealed class HopPlan
{
    readonly ProgramRun _run;
    readonly HoleTable _table;
    readonly HopAim _aim;
    readonly List<PlannedBlock> _blocks = [];
    readonly int _end;

    sealed class PlannedBlock(int line, ReturnLevel present)
    {
        public int Line { get; } = line;

        /// <summary>In effect for the block now.</summary>
        public ReturnLevel Present { get; } = present;

        public ReturnLevel Wanted { get; set; } = present;

        /// <summary>For <see cref="HopAim.Fast"/>: whether any traverse is ruled by the block, and whether one needs the initial level.</summary>
        public bool RulesTraverse { get; set; }

        public bool NeedsInitial { get; set; }

        /// <summary>Lines that traverses ruled by this block lead to and that the plan changes for the better.</summary>
        public List<int> Served { get; } = [];
    }

    HopPlan(ProgramRun run, HoleTable table, int hole, HopAim aim)
    {
        (_run, _table, _aim) = (run, table, aim);
        (var first, _end) = table.RunOf(hole);
        Decide(first);
    }

    /// <summary>The plan for the run of holes that the block on a line (0-based) drills in; null where it drills none.</summary>
    public static HopPlan? For(ProgramRun run, int line, HopAim aim)
    {
        ArgumentNullException.ThrowIfNull(run);
        var table = HoleTable.Of(run);
        var (hole, count) = table.At(line);
        return count == 0 ? null : new HopPlan(run, table, hole, aim);
    }

    /// <summary>True when the plan mends (or quickens) a traverse that leads to a hole of the block on this line.</summary>
    public bool Serves(int line) => _blocks.Exists(block => block.Wanted != block.Present && block.Served.Contains(line));

    /// <summary>The edits that write the plan: the same for every line of the run.</summary>
    public ImmutableArray<Edit> Edits()
    {
        var edits = ImmutableArray.CreateBuilder<Edit>();
        var after = ReturnLevel.Unknown;
        for (var i = 0; i < _blocks.Count; i++)
        {
            var block = _blocks[i];
            var saysItself = ReturnWord.IsIn(_run, block.Line);
            // What reaches a block without a word of its own: what the block before leaves, unless a block between sets it anew.
            var reached = saysItself || i == 0 || SetBetween(_blocks[i - 1].Line, block.Line - 1) ? block.Present : after;
            after = block.Wanted == ReturnLevel.Unknown ? reached : block.Wanted;
            if (after != reached)
                edits.Add(ReturnWord.Write(_run, block.Line, after));
        }
        if (KeepFollowing(after) is { } edit)
            edits.Add(edit);
        return edits.ToImmutable();
    }

    void Decide(int first)
    {
        var ruledByLeaving = _run.Job.Readings.ReturnLevel == ReturnLevelReading.AfterHole;
        for (var i = first; i < _end; i++)
        {
            var hole = _table.ResultAt(i);
            var line = _table.LineOf(i);
            var left = _blocks.Count > 0 ? _blocks[^1] : null;
            if (left is null || left.Line != line)
                _blocks.Add(new PlannedBlock(line, hole.Return));
            if (i == first)
                continue;
            if (ruledByLeaving)
                Weigh(left!, _table.ResultAt(i - 1), hole, _table.ResultAt(i - 1).Hole.InitialLevel, line);
            else
                Weigh(_blocks[^1], _table.ResultAt(i - 1), hole, hole.Hole.InitialLevel, line);
        }
        if (_aim == HopAim.Fast)
            foreach (var block in _blocks)
                if (block is { Present: ReturnLevel.Initial, RulesTraverse: true, NeedsInitial: false })
                    block.Wanted = ReturnLevel.RLevel;
    }

    void Weigh(PlannedBlock block, in HoleResult from, in HoleResult to, double initialLevel, int line)
    {
        if (from.Plane != WorkPlane.XY || to.Plane != WorkPlane.XY)
        {
            block.NeedsInitial = true;
            return;
        }
        var low = Math.Max(from.Hole.RLevel + from.ToFrame.Z, to.Hole.RLevel + to.ToFrame.Z);
        var high = Math.Max(initialLevel + to.ToFrame.Z, low);
        if (_aim == HopAim.Fast)
        {
            block.RulesTraverse = true;
            if (CanGoLow(_run.Job, from, to, low))
                block.Served.Add(line);
            else
                block.NeedsInitial = true;
            return;
        }
        if (block.Present != ReturnLevel.RLevel || OutcomeAt(from, to, low) is not (HopOutcome.Contact or HopOutcome.Close)
            || !_run.Job.Setup.ObstaclesAreKnown || OutcomeAt(from, to, high) != HopOutcome.Clear)
            return;
        block.Wanted = ReturnLevel.Initial;
        block.Served.Add(line);
    }

    HopOutcome OutcomeAt(in HoleResult from, in HoleResult to, double level) =>
        HopClearance.Of(_run.Job, HopClearance.DistanceAt(_run.Job, from.PlaceAt(0), to.PlaceAt(0), level, to.Hole.Tool));

    /// <summary>True when a traverse at this level (in the setup's frame) can be called clear of all that the setup lists, the stock included.</summary>
    static bool CanGoLow(Job job, in HoleResult from, in HoleResult to, double level) =>
        HopClearance.CanGoAt(job, from.PlaceAt(0), to.PlaceAt(0), level, to.Hole.Tool);

    bool SetBetween(int afterLine, int uptoLine) => _run.LastSetter(Slot.ReturnLevel, uptoLine) > afterLine;

    /// <summary>The next run of holes returns where it did before, although the mode it is handed has changed.</summary>
    Edit? KeepFollowing(ReturnLevel after)
    {
        if (_end >= _table.Count || after == _blocks[^1].Present)
            return null;
        var next = new HopPlan(_run, _table, _end, _aim)._blocks[0];
        if (next.Present == ReturnLevel.Unknown || next.Wanted == after || SetBetween(_blocks[^1].Line, next.Line))
            return null;
        return ReturnWord.Write(_run, next.Line, next.Present);
    }
}
