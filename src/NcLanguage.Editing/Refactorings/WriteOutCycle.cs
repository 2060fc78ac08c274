using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing.Refactorings;

/// <summary>Writes a run of holes of a cycle as the plain moves it makes: rapids, feeds and dwells, as the control in force returns between the holes.</summary>
sealed class WriteOutCycle : Refactoring
{
    /// <summary>Longer texts are no help to anybody.</summary>
    const int MostBlocks = 5000;

    public override string Name => "writeOutCycle";

    public override string Kind => "refactor.inline";

    public override Reach Reach => Reach.Place;

    protected override double Tolerance => MotionProof.WorkedOut;

    public override string? TitleFor(ProgramAnalysis analysis, Lines lines, CancellationToken cancel) => HoleRun.In(analysis, lines, cancel) is null ? null : "Write this cycle out as plain moves";

    protected override Draft Write(ProgramAnalysis analysis, Lines lines, CancellationToken cancel)
    {
        var run = HoleRun.In(analysis, lines, cancel)!.Value;
        if (run.Obstacle(analysis) is { } obstacle)
            return Draft.Refuse(obstacle);
        for (var i = run.First; i < run.End; i++)
            if (run.Table[i].Hole.Cycle is not (81 or 82 or 83 or 73 or 85 or 89))
                return Draft.Refuse($"G{run.Table[i].Hole.Cycle} does more than rapids, feeds and dwells can say.");
        // G98 and G99 say nothing to plain moves, but may be in force for the next run of holes.
        var draft = Write(analysis, run, keepsReturn: false, cancel);
        return draft.Refusal is null && !MotionProof.MovesAlike(analysis, Draft.Apply(analysis.Text, draft.Edits), Tolerance, cancel)
            ? Write(analysis, run, keepsReturn: true, cancel)
            : draft;
    }

    static Draft Write(ProgramAnalysis analysis, HoleRun run, bool keepsReturn, CancellationToken cancel)
    {
        var text = analysis.Text;
        var draft = new Draft(text);
        var style = WordNumber.Of(text, analysis.Machine.Readings);
        var (blocks, tooMany) = (0, false);
        var walk = new ProgramWalk(text, analysis.Main.Job, cancel);
        while (!tooMany && walk.MoveNext())
        {
            var (line, step) = (walk.Line, walk.Step);
            if (line < run.FirstLine || line > run.LastLine || step.Holes.Count == 0)
                continue;
            var written = new BlockWriter(text.BlockAt(line), step, style, keepsReturn).Write();
            blocks += written.Count;
            tooMany = blocks > MostBlocks;
            draft.ReplaceLines(line, line, written);
        }
        return tooMany ? Draft.Refuse($"Written out, these holes would take more than {MostBlocks} blocks.") : draft;
    }

    /// <summary>Writes one block with holes.</summary>
    readonly ref struct BlockWriter(Block block, Step step, WordNumber style, bool keepsReturn)
    {
        readonly Block _block = block;

        public List<string> Write()
        {
            var lines = new List<string>();
            var feed = Feed();
            foreach (ref readonly var move in step.Moves.Items)
            {
                if (!move.IsMotion && move.Kind != MoveKind.Dwell)
                    continue;
                var line = Move(move);
                if (line.Length == 0)
                    continue;
                if (move.Kind == MoveKind.Feed && feed.Length > 0)
                    (line, feed) = ($"{line} {feed}", "");
                lines.Add(line);
            }
            var (head, tail) = Around();
            if (lines.Count == 0)
                lines.Add("");
            lines[0] = string.Join(' ', new[] { head, lines[0], tail }.Where(part => part.Length > 0));
            return lines;
        }

        string Move(in Move move)
        {
            ref readonly var after = ref step.After;
            if (move.Kind == MoveKind.Dwell)
                return $"{style.Code("G4")} {style.Letter('P')}{WordNumber.Number(after.DwellNumber, 6, after.DwellHasPoint)}";
            var unit = UnitLength.Of(after.Units);
            var words = new StringBuilder(style.Code(move.Kind == MoveKind.Rapid ? "G0" : "G1"));
            var begins = words.Length;
            for (var axis = 0; axis < 3; axis++)
            {
                // Where the tool comes from may not be known: then it moves along this axis if its place is known now.
                if (move.To[axis] == move.From[axis] || double.IsNaN(move.To[axis]))
                    continue;
                var value = after.Distance == DistanceMode.Incremental ? move.To[axis] - move.From[axis] : move.To[axis];
                words.Append(' ').Append(style.Word((char)('X' + axis), value / unit));
            }
            return words.Length == begins ? "" : words.ToString();
        }

        string Feed() => step.Words.Has('F') ? _block.StringOf(_block.Tokens[step.Words.TokenOf('F')]) : "";

        /// <summary>What else the block says: before its moves, and the comments behind them.</summary>
        (string Head, string Tail) Around()
        {
            var (head, tail) = (new List<string>(), new List<string>());
            for (var i = 0; i < _block.Tokens.Length; i++)
            {
                ref readonly var token = ref _block.Tokens[i];
                var written = _block.StringOf(token);
                if (token.IsComment)
                    (head.Count > 0 ? tail : head).Add(written);
                else if (IsKept(token, i))
                    head.Add(written);
            }
            return (string.Join(' ', head), string.Join(' ', tail));
        }

        bool IsKept(in Token token, int index)
        {
            if (token.Kind != TokenKind.Word)
                return false;
            if (token.Letter is (byte)'G')
            {
                foreach (ref readonly var word in step.Words.Codes)
                    if (word.Token == index)
                        return word.Code.Group is not (ModalGroup.Cycle or ModalGroup.ReturnLevel) || (keepsReturn && word.Code.Group == ModalGroup.ReturnLevel);
            }
            return (char)token.Letter is 'N' or 'M' or 'S' or 'T' or 'H' or 'D' or 'G';
        }
    }
}
