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
/// move, those that reach its holes. Blocks that need nothing keep what is in effect for them now. A block with repeats counts as one,
/// and so does one that a loop or a call runs more than once: all runs of holes that it is part of are decided together.
/// </summary>
public sealed class HopPlan
{
    readonly ProgramRun _run;
    readonly HoleTable _table;
    readonly HopAim _aim;
    readonly HopJudge _judge;
    readonly List<PlannedBlock> _blocks = [];
    readonly Dictionary<int, ReturnLevel> _words = [];
    readonly Dictionary<int, bool> _saysItself = [];
    readonly Dictionary<int, Following> _following = [];
    readonly HashSet<int> _served = [];

    /// <param name="hole">Index of its first hole.</param>
    /// <param name="beginsRun">Whether that is the first of its run of holes.</param>
    sealed class PlannedBlock(int line, ReturnLevel present, int hole, bool beginsRun)
    {
        public int Line { get; } = line;

        public int FirstHole { get; } = hole;

        public int LastHole { get; set; } = hole;

        public bool BeginsRun { get; } = beginsRun;

        /// <summary>In effect for the block now.</summary>
        public ReturnLevel Present { get; } = present;

        public ReturnLevel Wanted { get; set; } = present;

        /// <summary>For <see cref="HopAim.Fast"/>: whether any traverse is ruled by the block, and whether one needs the initial level.</summary>
        public bool RulesTraverse { get; set; }

        public bool NeedsInitial { get; set; }

        /// <summary>Lines that traverses ruled by this block lead to and that the plan may change for the better.</summary>
        public List<int>? Served { get; set; }
    }

    /// <summary>A block of a run of holes that another plan decides.</summary>
    /// <param name="Wanted">What that plan writes into it; not known where it leaves it alone.</param>
    /// <param name="IsAlike">Whether all of its runs have the same in effect now.</param>
    readonly record struct Following(ReturnLevel Wanted, bool IsAlike);

    HopPlan(ProgramRun run, HoleTable table, int hole, HopAim aim)
    {
        (_run, _table, _aim, _judge) = (run, table, aim, new HopJudge(run.Job, aim));
        foreach (var (first, end) in run.Flow is null ? [table.RunOf(hole)] : SharedLines.RunsWith(table, hole))
            Decide(first, end);
        DecideByLine();
    }

    /// <summary>The plan for the run of holes that the block on a line (0-based) drills in; null where it drills none, where holes of another file belong to it, and where
    /// a block that runs more than once would need one word here and another there.</summary>
    public static HopPlan? For(ProgramRun run, int line, HopAim aim)
    {
        ArgumentNullException.ThrowIfNull(run);
        var table = HoleTable.Of(run);
        if (table.Plans.TryGetValue((aim, line), out var known))
            return known;
        var (hole, count) = table.At(line);
        if (count == 0)
            return null;
        var plan = new HopPlan(run, table, hole, aim);
        var lines = run.Flow is null ? null : plan._blocks.Select(block => block.Line).ToHashSet();
        var found = plan.FindWords() ? plan : null;
        plan._blocks.Clear();
        // What hangs together may be most of a long run: it is decided once for all its lines.
        foreach (var other in lines ?? [])
            table.Plans[(aim, other)] = found;
        return found;
    }

    /// <summary>True when the plan mends (or quickens) a traverse that leads to a hole of the block on this line.</summary>
    public bool Serves(int line) => _served.Contains(line);

    /// <summary>The edits that write the plan: the same for every line of the run.</summary>
    public ImmutableArray<Edit> Edits() => [.. _words.Select(word => ReturnWord.Write(_run, word.Key, word.Value))];

    /// <summary>Finds the words that are to be written, so that each block meets the level that is wanted for it.</summary>
    bool FindWords()
    {
        if (_run.Flow is null)
            return Follow();
        if (_blocks.Exists(block => _run.Results[_table.BlockOf(block.FirstHole).Part].IsElsewhere))
            return false;
        // A word that is written for one run of a block is met by its others too.
        for (var known = -1; known < _words.Count;)
        {
            known = _words.Count;
            if (!Follow())
                return false;
        }
        return true;
    }

    /// <summary>Goes through the blocks in the order of the run and notes the words that are missing; false where one of another level is written there already.</summary>
    bool Follow()
    {
        var after = ReturnLevel.Unknown;
        for (var i = 0; i < _blocks.Count; i++)
        {
            var block = _blocks[i];
            // What reaches a block without a word of its own: what the block before leaves, unless a block between sets it anew.
            var isHanded = i > 0 && _blocks[i - 1].LastHole + 1 == block.FirstHole && !SaysItself(block.Line) && !SetBetween(_blocks[i - 1].LastHole, block.FirstHole);
            var met = _words.TryGetValue(block.Line, out var word) ? word : isHanded ? after : block.Present;
            after = block.Wanted == ReturnLevel.Unknown ? met : block.Wanted;
            if (after != met && !_words.TryAdd(block.Line, after))
                return false;
            var isLast = i + 1 == _blocks.Count || _blocks[i + 1].BeginsRun;
            if (isLast && !(i + 1 < _blocks.Count && _blocks[i + 1].FirstHole == block.LastHole + 1) && !KeepFollowing(block, after))
                return false;
        }
        return true;
    }

    bool SaysItself(int line) => _saysItself.TryGetValue(line, out var says) ? says : _saysItself[line] = ReturnWord.IsIn(_run, line);

    void Decide(int first, int end)
    {
        var ruledByLeaving = _run.Job.Readings.ReturnLevel == ReturnLevelReading.AfterHole;
        HoleResult before = default;
        for (var i = first; i < end; i++)
        {
            var hole = _table.ResultAt(i);
            var line = _table.LineOf(i);
            var left = i > first ? _blocks[^1] : null;
            if (left is null || left.Line != line)
                _blocks.Add(new PlannedBlock(line, hole.Return, i, beginsRun: i == first));
            _blocks[^1].LastHole = i;
            if (left is not null && ruledByLeaving)
                Weigh(left, before, hole, before.Hole.InitialLevel, left.Line, line);
            else if (left is not null)
                Weigh(_blocks[^1], before, hole, hole.Hole.InitialLevel, left.Line, line);
            before = hole;
        }
    }

    void Weigh(PlannedBlock block, in HoleResult from, in HoleResult to, double initialLevel, int fromLine, int line)
    {
        var need = _judge.Of(from, to, initialLevel, fromLine, line);
        if (_aim == HopAim.Fast)
        {
            block.RulesTraverse |= need != HopNeed.NotJudged;
            block.NeedsInitial |= need != HopNeed.RLevel;
            if (need == HopNeed.RLevel)
                (block.Served ??= []).Add(line);
        }
        else if (need == HopNeed.InitialLevel && block.Present == ReturnLevel.RLevel)
        {
            block.Wanted = ReturnLevel.Initial;
            (block.Served ??= []).Add(line);
        }
    }

    /// <summary>What one run of a block needs, all of its runs get; what is to be quicker must do for all of them.</summary>
    void DecideByLine()
    {
        foreach (var runs in _blocks.GroupBy(block => block.Line))
        {
            var wanted = _aim == HopAim.Clear
                ? runs.Any(block => block.Wanted != block.Present) ? ReturnLevel.Initial : ReturnLevel.Unknown
                : runs.All(block => block.Present != ReturnLevel.Initial || block is { RulesTraverse: true, NeedsInitial: false }) ? ReturnLevel.RLevel : ReturnLevel.Unknown;
            foreach (var block in runs)
            {
                if (wanted != ReturnLevel.Unknown && block.Present != ReturnLevel.Unknown)
                    block.Wanted = wanted;
                if (block.Wanted != block.Present && block.Served is { } served)
                    _served.UnionWith(served);
            }
        }
    }

    /// <summary>Whether a block between those of two holes sets the return level.</summary>
    bool SetBetween(int hole, int next)
    {
        var ((part, at), (last, end)) = (_table.BlockOf(hole), _table.BlockOf(next));
        for (at++; part <= last; part++, at = 0)
        {
            if ((_run.PartFacts[part].Sets & Slot.ReturnLevel) == 0)
                continue;
            var sets = _run.Results[part].Sets;
            for (; at < (part == last ? end : sets.Length); at++)
                if ((sets[at] & Slot.ReturnLevel) != 0)
                    return true;
        }
        return false;
    }

    /// <summary>Sees to it that the next run of holes returns where it did before, although the mode it is handed has changed; false where its block runs more than once and would not.</summary>
    bool KeepFollowing(PlannedBlock block, ReturnLevel after)
    {
        var next = block.LastHole + 1;
        if (next >= _table.Count || after == block.Present)
            return true;
        var (line, present) = (_table.LineOf(next), _table.ResultAt(next).Return);
        if (present == ReturnLevel.Unknown || SaysItself(line) || SetBetween(block.LastHole, next))
            return true;
        var following = FollowingOn(line, next);
        // What mends the next run takes it there as well, and higher does no harm. What would quicken it may never be written, and lower does.
        if (_aim == HopAim.Clear && (following.Wanted == ReturnLevel.Unknown ? present : following.Wanted) == after)
            return true;
        _words[line] = present;
        return following.IsAlike;
    }

    /// <summary>What the plan of a hole's run says of a block of it; looked up once for all blocks of that plan.</summary>
    Following FollowingOn(int line, int hole)
    {
        if (_following.TryGetValue(line, out var known))
            return known;
        foreach (var runs in new HopPlan(_run, _table, hole, _aim)._blocks.GroupBy(block => block.Line))
        {
            var changed = runs.FirstOrDefault(block => block.Wanted != block.Present);
            _following[runs.Key] = new Following(changed?.Wanted ?? ReturnLevel.Unknown, runs.All(block => block.Present == runs.First().Present));
        }
        return _following[line];
    }
}
