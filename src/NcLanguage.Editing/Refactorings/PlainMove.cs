using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing.Refactorings;

/// <summary>One block that makes one straight move or dwells and says nothing else, and runs once.</summary>
/// <param name="Unit">Millimetres in the unit of the program.</param>
readonly record struct PlainMove(
    int Line, MoveKind Kind, Point3 From, Point3 To, double Feed, double Dwell, double Speed, SpindleState Spindle, double Unit, string NumberWord, string FeedWord, string DwellWord)
{
    public bool IsAcross => From.Z == To.Z && (From.X != To.X || From.Y != To.Y);

    public bool IsUpright => From.X == To.X && From.Y == To.Y && From.Z != To.Z;

    public bool IsDown => IsUpright && To.Z < From.Z;

    public bool IsUp => IsUpright && To.Z > From.Z;

    /// <summary>Whether a block may be one, as it stands.</summary>
    public static bool CanBe(in Block block)
    {
        if (block.Tokens.Length == 0)
            return false;
        foreach (ref readonly var token in block.Tokens)
        {
            var isOne = token.Kind == TokenKind.Word && !token.IsMalformed && ((char)token.Letter is 'N' or 'X' or 'Y' or 'Z' or 'F' or 'P' || (token.IsWord('G') && token.Value is 0 or 1 or 4 or 90));
            if (!isOne || token.IsExpression)
                return false;
        }
        return true;
    }

    /// <summary>All such blocks in the order of the text.</summary>
    public static List<PlainMove> Read(ProgramAnalysis analysis, CancellationToken cancel)
    {
        var text = analysis.Text;
        var moves = new SortedDictionary<int, PlainMove?>();
        foreach (var job in MotionProof.JobsOf(analysis))
        {
            var ran = new HashSet<int>();
            var walk = new ProgramWalk(text, job, cancel);
            while (walk.MoveNext())
            {
                var (line, step) = (walk.Line, walk.Step);
                var isFirst = ran.Add(line);
                moves[line] = isFirst && Of(line, text.BlockAt(line), step) is { } move && (!moves.TryGetValue(line, out var other) || other == move) ? move : null;
            }
        }
        return [.. moves.Values.OfType<PlainMove>()];
    }

    /// <summary>Those of some lines, as they run first.</summary>
    public static List<PlainMove> Near(ProgramAnalysis analysis, int first, int last, CancellationToken cancel)
    {
        var moves = new List<PlainMove>();
        foreach (var line in Lines.Each(first, last, cancel))
            if (CanBe(analysis.Text.BlockAt(line)) && Of(line, analysis.Text.BlockAt(line), analysis.Main.StepAt(line)) is { } move)
                moves.Add(move);
        return moves;
    }

    static PlainMove? Of(int line, in Block block, Step step)
    {
        ref readonly var after = ref step.After;
        var unit = UnitLength.Of(after.Units);
        if (!CanBe(block) || step.Moves.Count != 1 || after.Cycle != 0 || after.ProgramFrame is not null || after.Compensation != CompensationSide.Off
            || after.Plane != WorkPlane.XY || after.Distance != DistanceMode.Absolute || double.IsNaN(unit) || after.FeedMode == FeedMode.InverseTime)
            return null;
        ref readonly var move = ref step.Moves.Items[0];
        if (move.Kind is not (MoveKind.Rapid or MoveKind.Feed or MoveKind.Dwell) || !move.To.IsKnown || !move.From.IsKnown || (move.Kind == MoveKind.Dwell && !step.Words.Has('P')))
            return null;
        return new PlainMove(
            line, move.Kind, move.From, move.To, move.Kind == MoveKind.Feed ? move.Feed : 0, move.Kind == MoveKind.Dwell ? move.Seconds : 0, after.Speed, after.Spindle, unit,
            Word(block, 'N'), Word(block, 'F'), Word(block, 'P'));
    }

    static string Word(in Block block, char letter) => block.IndexOf(letter) is >= 0 and var at ? block.StringOf(block.Tokens[at]) : "";
}
