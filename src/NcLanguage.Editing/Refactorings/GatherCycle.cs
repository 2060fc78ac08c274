using NcLanguage.Checks.Analysis;
using NcLanguage.Control.State;
using NcLanguage.Machine.Profiles;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing.Refactorings;

/// <summary>Gathers plain moves that drill at least two holes alike (over, down to R, down at the feed, up) into a cycle.</summary>
sealed class GatherCycle : Refactoring
{
    /// <summary>Lines around the cursor that are looked at before it is offered.</summary>
    const int Near = 15;

    public override string Name => "gatherCycle";

    public override string Kind => "refactor.rewrite";

    public override Reach Reach => Reach.Place;

    protected override double Tolerance => MotionProof.WorkedOut;

    public override string? TitleFor(ProgramAnalysis analysis, Lines lines, CancellationToken cancel)
    {
        var text = analysis.Text;
        var (first, last) = lines.IsCursor ? (Math.Max(0, lines.First - Near), Math.Min(text.LineCount - 1, lines.Last + Near)) : (lines.First, lines.Last);
        foreach (var group in DrilledGroup.All(PlainMove.Near(analysis, first, last, cancel), analysis.Machine.Readings.ReturnLevel))
            if (group.LastLine >= lines.First && group.FirstLine <= lines.Last)
                return "Gather these moves into a drilling cycle";
        return null;
    }

    protected override Draft Write(ProgramAnalysis analysis, Lines lines, CancellationToken cancel)
    {
        var text = analysis.Text;
        var moves = PlainMove.Read(analysis, cancel);
        foreach (var group in DrilledGroup.All(moves, analysis.Machine.Readings.ReturnLevel))
        {
            if (group.LastLine < lines.First || group.FirstLine > lines.Last)
                continue;
            var draft = new Draft(text);
            draft.ReplaceLines(group.FirstLine, group.LastLine, Blocks(analysis, group));
            return draft;
        }
        return Draft.Refuse("No two holes alike stand here one after the other as plain moves: over, down to R, down at the feed, and up.");
    }

    static List<string> Blocks(ProgramAnalysis analysis, DrilledGroup group)
    {
        var text = analysis.Text;
        var readings = analysis.Machine.Readings;
        var style = WordNumber.Of(text, readings);
        var written = new List<string>();
        var here = group.Holes[0].From;
        var level = ReturnLevel.Unknown;
        foreach (var hole in group.Holes)
        {
            var words = new List<string>();
            if (hole.NumberWord.Length > 0)
                words.Add(hole.NumberWord);
            if (hole.Return != level)
                words.Add(style.Code(hole.Return == ReturnLevel.Initial ? "G98" : "G99"));
            var isFirst = written.Count == 0;
            if (isFirst)
                words.Add(style.Code($"G{group.Cycle}"));
            for (var axis = 0; axis < 2; axis++)
            {
                var isIncremental = readings.HolePositions == HolePositionReading.Incremental;
                if (isFirst || hole.Place[axis] != here[axis] || (axis == 0 && hole.Place.X == here.X && hole.Place.Y == here.Y))
                    words.Add(style.Word((char)('X' + axis), (isIncremental ? hole.Place[axis] - here[axis] : hole.Place[axis]) / group.Unit));
            }
            if (isFirst)
            {
                words.Add(style.Word('Z', hole.Bottom / group.Unit));
                words.Add(style.Word('R', hole.R / group.Unit));
                if (hole.DwellWord.Length > 0)
                    words.Add(hole.DwellWord);
                if (hole.FeedWord.Length > 0)
                    words.Add(hole.FeedWord);
            }
            written.Add(string.Join(' ', words));
            (here, level) = (hole.Place, hole.Return);
        }
        written.Add(style.Code(NeedsMotion(text, group.LastLine + 1) ? $"G80 {(group.FeedsOut ? "G1" : "G0")}" : "G80"));
        return written;
    }

    /// <summary>Whether the next block with axis words goes by the motion in force.</summary>
    static bool NeedsMotion(SourceText text, int line)
    {
        for (; line < text.LineCount; line++)
        {
            var block = text.BlockAt(line);
            foreach (ref readonly var token in block.Tokens)
                if (token.IsWord('G') && token.Value is >= 0 and <= 3 or >= 73 and <= 89)
                    return false;
            if (block.IndexOf('X') >= 0 || block.IndexOf('Y') >= 0 || block.IndexOf('Z') >= 0)
                return true;
        }
        return false;
    }
}
