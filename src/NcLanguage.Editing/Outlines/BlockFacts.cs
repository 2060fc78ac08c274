using NcLanguage.Checks.Analysis;
using NcLanguage.Control.State;

namespace NcLanguage.Editing;

/// <summary>What the run noted about one block, over all its runs.</summary>
/// <param name="Holes">How many it drills.</param>
/// <param name="Cycle">The cycle of its last hole; 0 for none.</param>
/// <param name="Seconds">Known seconds of its moves.</param>
/// <param name="IsUntimed">Whether the time of some of its moves is not known.</param>
readonly record struct BlockFacts(bool SetsCycle, bool Cuts, bool IsUntimed, int Holes, int Cycle, float Seconds);

/// <summary>The facts of a program's blocks. Where the run kept to the order of the text they are gathered chunk by chunk as they are asked for, so that those of a large
/// program never stand in memory all at once: ask in the order of the text.</summary>
sealed class ProgramFacts
{
    readonly ProgramRun _run;
    readonly CancellationToken _cancel;
    BlockFacts[] _facts;
    int _first;
    int _end;

    /// <param name="run">The run.</param>
    /// <param name="cancel">Looked at once a chunk.</param>
    public ProgramFacts(ProgramRun run, CancellationToken cancel)
    {
        _run = run;
        _cancel = cancel;
        if (run.Flow is null)
        {
            _facts = [];
            return;
        }
        _facts = new BlockFacts[_end = run.Text.LineCount];
        for (var part = 0; part < run.Results.Length; part++)
            Gather(part);
    }

    /// <summary>The facts of the block on a line (0-based).</summary>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public BlockFacts this[int line]
    {
        get
        {
            if (line < _first || line >= _end)
                Load(_run.Text.ChunkOfLine(line));
            return _facts[line - _first];
        }
    }

    void Load(int chunk)
    {
        _cancel.ThrowIfCancellationRequested();
        var lines = _run.Text.Chunks[chunk].LineCount;
        (_first, _end) = (_run.Text.FirstLineOf(chunk), _run.Text.FirstLineOf(chunk) + lines);
        if (_facts.Length < lines)
            _facts = new BlockFacts[lines];
        Array.Clear(_facts, 0, lines);
        Gather(chunk);
    }

    void Gather(int part)
    {
        var result = _run.Results[part];
        for (var at = 0; at < result.Sets.Length; at++)
        {
            ref var fact = ref FactOf(part, at);
            var sets = result.Sets[at];
            fact = fact with
            {
                SetsCycle = fact.SetsCycle || (sets & Slot.Cycle) != 0,
                Cuts = fact.Cuts || (sets & Slot.Cut) != 0,
                Seconds = fact.Seconds + result.StepSeconds[at],
            };
        }
        for (var hole = 0; hole < result.Holes.Length; hole++)
        {
            ref var fact = ref FactOf(part, result.Holes.LineOf(hole));
            fact = fact with { Holes = fact.Holes + 1, Cycle = result.Holes.CycleOf(hole) };
        }
        foreach (var at in result.UntimedSteps)
        {
            ref var fact = ref FactOf(part, at);
            fact = fact with { IsUntimed = true };
        }
    }

    ref BlockFacts FactOf(int part, int at) => ref _facts[_run.LineOf(part, at) - _first];
}
