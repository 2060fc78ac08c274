using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Analysis;

/// <summary>What carries out the blocks of one chunk and then lets the rules look at them, one chunk after the other. Not shared between threads.</summary>
/// <remarks>Of the steps of a chunk those are kept that do more than the one before them; of the others, which are nearly all, there is no more than their trace until they are looked at.</remarks>
sealed class Bench
{
    /// <summary>Moves of long blocks (<see cref="MoveBudget.ManyMoves"/>) that are kept at once: each is more than 100 bytes.</summary>
    const int MostMovesOfLongBlocks = 100_000;

    readonly BlockBuffer _buffer = new();
    readonly List<Step> _steps = [];
    readonly List<BlockWords> _words = [];
    PlainBlocks? _known;
    int _stepsTaken;
    Step?[] _kept = [];
    PlainTrace[] _traces = [];

    // What is told of a block is gone when the next but one is looked at.
    readonly Step _told = new();
    readonly Step _again = new();
    readonly Step _spareAgain = new();
    readonly BlockWords _wordsAgain = new();
    Move _arc;
    ControlState _entry;
    ControlState _exit;
    int _linesAhead;

    public BlockList Blocks { get; private set; } = null!;

    /// <param name="words">What is known of the words of its blocks; null where that is nothing.</param>
    public void Read(Chunk chunk, PlainBlocks? words) => (_known, Blocks) = (words, words is null ? _buffer.Read(chunk) : _buffer.ReadAsAsked(chunk));

    /// <summary>Whether the blocks make more moves than are kept until they are looked at: then carrying them out came to nothing.</summary>
    public bool IsTooMuch { get; private set; }

    public void CarryOut(int firstLine, BlockExecutor executor, TextAhead ahead, ref ControlState state, ref Step? last)
    {
        _entry = state;
        ahead.Farthest = 0;
        MakeRoom();
        var (step, spare) = (NextStep(ahead), NextStep(ahead));
        Step? before = null;
        var ofLongBlocks = 0;
        for (var line = 0; line < Blocks.Count; line++)
        {
            if (IsBlank(line))
                continue;
            if (before is not null && _known is not null)
            {
                step.Words = _wordsAgain;
                var next = executor.GoOn(before, _known, line, _traces, step);
                if (next > line)
                {
                    (before, step, spare) = (step, spare, step);
                    line = next - 1;
                    continue;
                }
            }
            var block = Blocks[line];
            ahead.Line = firstLine + line;
            step.Words = _words[line];
            if (before is not null)
                executor.RunBehind(before, block, step);
            else if (last is not null)
                executor.RunApartBehind(last, block, step);
            else
                executor.Run(block, ref state, step);
            if (before is not null && step.IsLikeTheLast)
            {
                step.Keep(out _traces[line]);
                (before, step, spare) = (step, spare, step);
                continue;
            }
            if (step.Moves.Count > MoveBudget.ManyMoves && (ofLongBlocks += step.Moves.Count) > MostMovesOfLongBlocks)
            {
                (state, IsTooMuch) = (_entry, true);
                return;
            }
            _kept[line] = step;
            // The state that it met is that of the one before it, which therefore stays too.
            var isFree = !ReferenceEquals(before, spare);
            (before, step, spare) = (step, isFree ? spare : NextStep(ahead), NextStep(ahead));
        }
        if (before is not null)
            (state, last) = (before.After, before);
        _exit = state;
        _linesAhead = Math.Max(0, ahead.Farthest - (firstLine + Blocks.Count - 1));
    }

    public PartResult LookAt(PartScan scan, BlockExecutor executor, PartResult? known)
    {
        scan.Begin(_entry, Blocks.Count);
        var (step, spare) = (_again, _spareAgain);
        Step? before = null;
        for (var line = 0; line < Blocks.Count; line++)
        {
            if (IsBlank(line))
            {
                scan.NoteBlank();
                continue;
            }
            var block = Blocks[line];
            if (_kept[line] is { } kept)
            {
                before = kept;
                scan.Note(block, executor.Told(block, kept, _told));
                continue;
            }
            executor.TellAgain(before!, block, _traces[line], WordsOf(line), step);
            scan.Note(block, step);
            (before, step, spare) = (step, spare, step);
            var next = NoteWhatGoesOn(scan, executor.ContinuationOf(before), before.After.Position, line + 1);
            if (next == line + 1)
                continue;
            line = next - 1;
            BlockExecutor.Pass(before, _traces[line], step);
            (before, step, spare) = (step, spare, step);
        }
        return scan.End(_exit, _linesAhead, known);
    }

    bool IsBlank(int line) => _known is null ? Blocks[line].Tokens.Length == 0 : _known.IsBlank(line);

    /// <summary>Notes the blocks from a line on that go on as the one before, as long as nothing of them has to be looked at; the line behind the last of them.</summary>
    int NoteWhatGoesOn(PartScan scan, in Continuation next, Point3 from, int line)
    {
        if (!next.IsKnown)
            return line;
        for (; line < Blocks.Count && _kept[line] is null && !IsBlank(line); line++)
        {
            ref readonly var trace = ref _traces[line];
            if (!(next.IsArc(trace) ? TryNoteArc(scan, next, from, line) : scan.TryNoteNext(next, from, trace)))
                break;
            from = trace.Position;
        }
        return line;
    }

    bool TryNoteArc(PartScan scan, in Continuation next, in Point3 from, int line)
    {
        ref readonly var trace = ref _traces[line];
        if (_known is not null && _known[line] is var kept && kept.AreKnown)
            return next.TryTellArc(kept, from, trace, ref _arc) && scan.TryNoteNext(next, _arc, kept.IsByRadius, trace);
        var words = _words[line];
        return next.TryTellArc(words, from, trace, ref _arc) && scan.TryNoteNext(next, _arc, words.Has('R'), trace);
    }

    BlockWords WordsOf(int line)
    {
        if (_known is null || _known[line] is var words && !words.AreKnown)
            return _words[line];
        _wordsAgain.Become(words);
        return _wordsAgain;
    }

    void MakeRoom()
    {
        while (_words.Count < Blocks.Count)
            _words.Add(new BlockWords());
        if (_kept.Length < Blocks.Count)
            (_kept, _traces) = (new Step?[Blocks.Count], new PlainTrace[Blocks.Count]);
        else
            Array.Clear(_kept);
        _stepsTaken = 0;
    }

    Step NextStep(TextAhead ahead)
    {
        if (_steps.Count == _stepsTaken)
            _steps.Add(new Step { Ahead = ahead });
        return _steps[_stepsTaken++];
    }
}
