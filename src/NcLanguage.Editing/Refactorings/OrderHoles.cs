using NcLanguage.Checks.Analysis;
using NcLanguage.Control.State;
using NcLanguage.Machine.Profiles;
using NcLanguage.Syntax.Lexing;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing.Refactorings;

/// <summary>Puts the holes of a run in the order that takes the least travel and clears what the setup lists. The first block keeps the words of the cycle;
/// comments go with their holes.</summary>
sealed class OrderHoles : Refactoring
{
    public override string Name => "orderHoles";

    public override string Kind => "refactor.rewrite";

    public override Reach Reach => Reach.Place;

    public override string? TitleFor(ProgramAnalysis analysis, Lines lines, CancellationToken cancel) =>
        HoleRun.In(analysis, lines, cancel) is { Count: > 2 } ? "Order these holes for the least travel" : null;

    protected override string? Judge(ProgramAnalysis analysis, SourceText edited, CancellationToken cancel) => HoleProof.Refuse(analysis, edited, cancel);

    protected override Draft Write(ProgramAnalysis analysis, Lines lines, CancellationToken cancel)
    {
        var run = HoleRun.In(analysis, lines, cancel)!.Value;
        if (Obstacle(analysis, run) is { } obstacle)
            return Draft.Refuse(obstacle);
        var before = analysis.Main.StateBefore(run.FirstLine);
        var ways = HopWays.Of(analysis.Main.Job, run, before.Position);
        if (ways is null)
            return Draft.Refuse((analysis.Setup.IsPresent ? "The setup lists neither obstacles nor a clamp height" : "There is no setup file that tells of obstacles")
                + ", and the holes return to different levels: no other way can be called clear.");
        var order = ShortestOrder.Of(run.Count, ways.FromStart, ways.Between, cancel);
        if (order.SequenceEqual(Enumerable.Range(0, run.Count)))
            return Draft.Refuse("No order was found that takes less travel than this one.");
        var writer = new Writer(analysis, run, before, ways, order);
        return writer.LeavesOtherMode ? Draft.Refuse("The next run of holes returns by the mode that this one leaves, which would be another.") : writer.Write();
    }

    static string? Obstacle(ProgramAnalysis analysis, HoleRun run)
    {
        if (run.Obstacle(analysis) is { } obstacle)
            return obstacle;
        if (run.Count > ShortestOrder.MostPlaces)
            return $"More than {ShortestOrder.MostPlaces} holes are not ordered at once.";
        var first = run.Table[run.First].Hole;
        for (var i = run.First; i < run.End; i++)
        {
            var row = run.Table[i];
            var hole = row.Hole;
            if (run.Table.At(row.Line).Count != 1)
                return $"Line {row.Line + 1} drills more than one hole.";
            if (row.Plane != WorkPlane.XY || !double.IsFinite(hole.X + hole.Y + hole.RLevel + hole.InitialLevel))
                return $"Where the hole of line {row.Line + 1} lies is not known.";
            if (hole.Cycle != first.Cycle || hole.RLevel != first.RLevel || !hole.Bottom.Equals(first.Bottom) || !hole.DwellSeconds.Equals(first.DwellSeconds)
                || !hole.Peck.Equals(first.Peck) || !hole.Feed.Equals(first.Feed) || !hole.Speed.Equals(first.Speed))
                return $"The hole of line {row.Line + 1} is not like the first: only holes alike are ordered.";
            if (analysis.Main.StepAt(row.Line).After.Distance != DistanceMode.Absolute)
                return $"Line {row.Line + 1} is read in distances (G91): write it in positions first.";
            if (i > run.First && OtherWord(analysis.Text.BlockAt(row.Line)) is { } word)
                return $"Line {row.Line + 1} says more than where its hole lies ({word}).";
        }
        return null;
    }

    static string? OtherWord(in Block block)
    {
        foreach (ref readonly var token in block.Tokens)
        {
            var isPlace = token.Kind == TokenKind.Word && !token.IsExpression
                && ((char)token.Letter is 'N' or 'X' or 'Y' or 'Z' or 'R' or 'P' or 'Q' or 'F' || (token.IsWord('G') && token.Value is 98 or 99 or (>= 73 and <= 89)));
            if (!isPlace && !token.IsComment)
                return block.StringOf(token);
        }
        return null;
    }

    /// <summary>Writes the holes in their new order into the lines they stand in.</summary>
    sealed class Writer(ProgramAnalysis analysis, HoleRun run, ControlState before, HopWays ways, int[] order)
    {
        readonly SourceText _text = analysis.Text;
        readonly Readings _readings = analysis.Machine.Readings;
        readonly WordNumber _style = WordNumber.Of(analysis.Text, analysis.Machine.Readings);

        HoleRow Row(int hole) => run.Table[run.First + hole];

        /// <summary>The return level that the block in a place is to name: where it acts behind the hole, that of the hop from it, else that of the hop to it.</summary>
        ReturnLevel ReturnOf(int place)
        {
            var isBehind = _readings.ReturnLevel == ReturnLevelReading.AfterHole;
            var (from, to) = isBehind ? (place, place + 1) : (place - 1, place);
            if (from < 0)
                return Row(0).Return;
            return to >= order.Length ? Row(order.Length - 1).Return : ways.LevelOf(order[from], order[to]);
        }

        /// <summary>Whether holes behind the run would be left at another level.</summary>
        public bool LeavesOtherMode =>
            run.End < run.Table.Count && ReturnOf(order.Length - 1) != Row(order.Length - 1).Return && ReturnIn(_text.BlockAt(run.Table[run.End].Line)) < 0;

        public Draft Write()
        {
            var draft = new Draft(_text);
            var (mode, x, y) = (before.ReturnLevel, before.Position.X, before.Position.Y);
            for (var place = 0; place < order.Length; place++)
            {
                var hole = Row(order[place]).Hole;
                var line = Row(place).Line;
                var block = _text.BlockAt(line);
                var wanted = ReturnOf(place);
                var word = wanted != mode || (place == 0 && ReturnIn(block) >= 0) ? _style.Code(wanted == ReturnLevel.Initial ? "G98" : "G99") : "";
                var where = Where(hole.X, hole.Y, x, y, place == 0);
                draft.ReplaceLines(line, line, [Line(block, word, where, CommentOf(place))]);
                (mode, x, y) = (wanted, hole.X, hole.Y);
            }
            return draft;
        }

        string Where(double x, double y, double fromX, double fromY, bool isFirst)
        {
            var unit = UnitLength.Of(before.Units);
            var isIncremental = _readings.HolePositions == HolePositionReading.Incremental;
            var words = new List<string>();
            if (isFirst || x != fromX || y == fromY)
                words.Add(_style.Word('X', (isIncremental ? x - fromX : x) / unit));
            if (isFirst || y != fromY)
                words.Add(_style.Word('Y', (isIncremental ? y - fromY : y) / unit));
            return string.Join(' ', words);
        }

        /// <summary>The comments of the hole that comes into a place; those of the first block stay there.</summary>
        string CommentOf(int place)
        {
            if (place == 0)
                return Comments(Row(0).Line);
            return order[place] == 0 ? "" : Comments(Row(order[place]).Line);
        }

        string Comments(int line)
        {
            var block = _text.BlockAt(line);
            var comments = new List<string>();
            foreach (ref readonly var token in block.Tokens)
                if (token.IsComment)
                    comments.Add(block.StringOf(token));
            return string.Join(' ', comments);
        }

        static string Line(in Block block, string returnWord, string where, string comment)
        {
            var (words, isPlaced) = (new List<string>(), false);
            for (var i = 0; i < block.Tokens.Length; i++)
            {
                ref readonly var token = ref block.Tokens[i];
                if (token.IsComment || (token.IsWord('G') && token.Value is 98 or 99))
                    continue;
                if (!token.IsWord('N') && returnWord.Length > 0)
                {
                    words.Add(returnWord);
                    returnWord = "";
                }
                if (!token.IsWord('X') && !token.IsWord('Y'))
                    words.Add(block.StringOf(token));
                else if (!isPlaced)
                {
                    words.Add(where);
                    isPlaced = true;
                }
            }
            if (!isPlaced)
                words.Add(where);
            if (comment.Length > 0)
                words.Add(comment);
            return string.Join(' ', words);
        }

        static int ReturnIn(in Block block) =>
            Math.Max(Checks.WordEdits.IndexOfCode(block, 'G', 98), Checks.WordEdits.IndexOfCode(block, 'G', 99));
    }
}
