using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Editing.Formatting;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing.Refactorings;

/// <summary>A block among those whose positions are rewritten.</summary>
sealed class PositionBlock(int line, DistanceMode into)
{
    public int Line { get; } = line;

    public DistanceMode Into { get; } = into;

    /// <summary>The mode in force before and behind the block as the program stands.</summary>
    public DistanceMode Before { get; set; }

    public DistanceMode After { get; set; }

    /// <summary>The new values of its words by token, in the unit of the program; the same each time it runs.</summary>
    public Dictionary<int, double> Values { get; } = [];

    /// <summary>Whether its words are written anew.</summary>
    public bool IsWritten { get; set; }

    /// <summary>Whether what it does, or what it leads to, depends on the mode.</summary>
    public bool IsSensitive { get; set; }

    /// <summary>Whether the run may come to it from elsewhere: by a jump, or back from a call.</summary>
    public bool IsLabel { get; set; }

    /// <summary>Whether no code can stand in it beside what it has.</summary>
    public bool NeedsOwnLine { get; set; }

    /// <summary>Its G90 or G91; −1 where it has none.</summary>
    public int ModeToken { get; set; } = -1;

    /// <summary>Whether it begins a program: the mode is then that of the call.</summary>
    public bool BeginsProgram { get; set; }

    /// <summary>Whether it ends the run.</summary>
    public bool EndsRun { get; set; }

    /// <summary>Whether it has no axis words beside its modes.</summary>
    public bool IsAlone { get; set; }
}

/// <summary>Reads from the runs of a program what its blocks would say in the other distance mode.</summary>
static class PositionBlocks
{
    /// <summary>Values of one word in two runs may differ by this and be the same, mm.</summary>
    const double Rounding = 1e-7;

    /// <summary>G9 stands beside a move and changes nothing in its words.</summary>
    const int ExactStopOnce = 90;

    /// <summary>The blocks of the lines that run, in the order of the text.</summary>
    public static List<PositionBlock> Read(ProgramAnalysis analysis, Lines lines, DistanceMode into, CancellationToken cancel)
    {
        var text = analysis.Text;
        var blocks = new SortedDictionary<int, PositionBlock>();
        var never = new HashSet<int>();
        foreach (var job in MotionProof.JobsOf(analysis))
        {
            var walk = new ProgramWalk(text, job, cancel);
            while (walk.MoveNext())
            {
                var (line, step) = (walk.Line, walk.Step);
                if (!lines.Means(line))
                    continue;
                var block = text.BlockAt(line);
                if (!blocks.TryGetValue(line, out var planned))
                {
                    blocks[line] = planned = Start(line, block, step, into);
                    planned.IsWritten = !planned.BeginsProgram && TakeValues(planned, block, step, job.Readings, into);
                }
                else if (planned.IsWritten && !HasSameValues(planned, block, step, job.Readings, into))
                    never.Add(line);
                if (planned.Before != step.Before.Distance || planned.After != step.After.Distance)
                    never.Add(line);
            }
        }
        foreach (var line in never)
            blocks[line].IsWritten = false;
        MarkLabels(analysis, blocks);
        return [.. blocks.Values];
    }

    static PositionBlock Start(int line, in Block block, Step step, DistanceMode into)
    {
        var hasAxes = HasAny(step, "XYZ") || (step.After.Cycle != 0 && step.Words.Has('R'));
        var steers = block.HasStatement || block.IndexOf('O') >= 0 || step.Words.Find(ModalGroup.Subprogram) is not null || step.Words.Find(ModalGroup.MacroCall) is not null;
        // A word in a block that is passed over is not said: before such a block the mode is as it was.
        steers |= block.IsSkippable;
        var code = ModeTokenOf(block);
        return new PositionBlock(line, into)
        {
            Before = step.Before.Distance,
            After = step.After.Distance,
            BeginsProgram = block.BeginsProgram,
            EndsRun = step.After.Ended,
            IsSensitive = hasAxes || steers,
            NeedsOwnLine = steers,
            ModeToken = code,
            IsAlone = !hasAxes,
        };
    }

    static int ModeTokenOf(in Block block)
    {
        var at = Checks.WordEdits.IndexOfCode(block, 'G', 90);
        return at >= 0 ? at : Checks.WordEdits.IndexOfCode(block, 'G', 91);
    }

    static void MarkLabels(ProgramAnalysis analysis, SortedDictionary<int, PositionBlock> blocks)
    {
        var text = analysis.Text;
        var targets = JumpTargets.NumbersIn(text);
        var isBehindSteering = false;
        foreach (var planned in blocks.Values)
        {
            var block = text.BlockAt(planned.Line);
            planned.IsLabel = isBehindSteering || (block.NumberIndex is >= 0 and var at && targets.Contains(block.Tokens[at].Value));
            planned.IsSensitive |= planned.IsLabel;
            isBehindSteering = planned.NeedsOwnLine;
        }
    }

    static bool HasSameValues(PositionBlock planned, in Block block, Step step, Readings readings, DistanceMode into)
    {
        var again = new PositionBlock(planned.Line, into);
        if (!TakeValues(again, block, step, readings, into) || again.Values.Count != planned.Values.Count)
            return false;
        foreach (var (token, value) in again.Values)
            if (!planned.Values.TryGetValue(token, out var other) || Math.Abs(other - value) > Rounding)
                return false;
        return true;
    }

    static bool HasAny(Step step, string letters)
    {
        foreach (var letter in letters)
            if (step.Words.Has(letter))
                return true;
        return false;
    }

    /// <summary>Works out what the words of a block say in the other mode; false where the block is not one whose words can be written so.</summary>
    static bool TakeValues(PositionBlock planned, in Block block, Step step, Readings readings, DistanceMode into)
    {
        ref readonly var after = ref step.After;
        var from = into == DistanceMode.Incremental ? DistanceMode.Absolute : DistanceMode.Incremental;
        var unit = UnitLength.Of(after.Units);
        if (after.Distance != from || double.IsNaN(unit) || block.HasStatement || block.IsSkippable || step.Faults.Count > 0 || after.Plane == WorkPlane.Unknown)
            return false;
        foreach (ref readonly var word in step.Words.Codes)
            if (word.Code.Group is ModalGroup.NonModal or ModalGroup.MacroCall or ModalGroup.Scaling or ModalGroup.Rotation or ModalGroup.Mirror or ModalGroup.Polar
                or ModalGroup.WorkOffset or ModalGroup.LengthOffset or ModalGroup.Subprogram && word.Code.Tenths != ExactStopOnce)
                return false;
        if (after.ProgramFrame?.Polar is not null)
            return false;
        return after.Cycle != 0
            ? TakeCycle(planned, block, step, readings, into, unit)
            : after.Motion is MotionMode.Rapid or MotionMode.Linear or MotionMode.ArcClockwise or MotionMode.ArcCounterclockwise
                && TakeAxes(planned, block, step, readings, into, unit, leaveOut: -1) && planned.Values.Count > 0;
    }

    static bool TakeAxes(PositionBlock planned, in Block block, Step step, Readings readings, DistanceMode into, double unit, int leaveOut)
    {
        ref readonly var before = ref step.Before;
        var here = before.ProgramFrame is null ? before.ProgrammedPosition : before.Programmed;
        for (var axis = 0; axis < 3; axis++)
        {
            var letter = (char)('X' + axis);
            if (axis == leaveOut || !step.Words.Has(letter))
                continue;
            var index = step.Words.TokenOf(letter);
            ref readonly var token = ref block.Tokens[index];
            if (token.IsExpression || double.IsNaN(here[axis]))
                return false;
            var value = token.Value * unit * UnitLength.OfOne(token, step.After.Units, readings);
            planned.Values[index] = (into == DistanceMode.Incremental ? value - here[axis] : here[axis] + value) / unit;
        }
        return true;
    }

    /// <summary>In distances X and Y count from the last hole, R from the level before (or the initial level, by the reading), Z from R. What a block leaves out
    /// keeps its place in either mode.</summary>
    static bool TakeCycle(PositionBlock planned, in Block block, Step step, Readings readings, DistanceMode into, double unit)
    {
        ref readonly var after = ref step.After;
        if (step.Holes.Count != 1 || after.Cycle == 87 || after.ProgramFrame is not null)
            return false;
        var depth = Arcs.Axes(after.Plane).Third;
        if (readings.HolePositions == HolePositionReading.DistanceMode && !TakeAxes(planned, block, step, readings, into, unit, depth))
            return false;
        var from = readings.IncrementalR == IncrementalRReading.InitialLevel ? after.InitialLevel : step.Before.Position[depth];
        return TakeLevel(planned, block, step, 'R', into == DistanceMode.Incremental ? after.RLevel - from : after.RLevel, unit)
            && TakeLevel(planned, block, step, (char)('X' + depth), into == DistanceMode.Incremental ? after.Bottom - after.RLevel : after.Bottom, unit);
    }

    static bool TakeLevel(PositionBlock planned, in Block block, Step step, char letter, double mm, double unit)
    {
        if (!step.Words.Has(letter))
            return true;
        var index = step.Words.TokenOf(letter);
        if (block.Tokens[index].IsExpression || double.IsNaN(mm))
            return false;
        planned.Values[index] = mm / unit;
        return true;
    }
}
