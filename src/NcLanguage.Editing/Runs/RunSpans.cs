using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing;

/// <summary>What differs between the runs of a block: where it ends, what it drills, its feed and speed, the variables it sets. Lengths mm, feeds mm/min.</summary>
sealed class RunSpans
{
    /// <summary>Runs that are looked at; a block that runs more often is told by its first ones.</summary>
    public const int MostRuns = 1000;

    readonly Span[] _ends = [new(), new(), new()];

    RunSpans(int runs) => Runs = Math.Min(runs, MostRuns);

    /// <summary>Runs looked at.</summary>
    public int Runs { get; }

    public int Holes { get; private set; }

    /// <summary>Known seconds of all moves.</summary>
    public double Seconds { get; private set; }

    public bool IsUntimed { get; private set; }

    public bool Moves { get; private set; }

    /// <summary>Letters of the plane the holes lie in.</summary>
    public (char First, char Second, char Depth) HoleLetters { get; private set; } = ('X', 'Y', 'Z');

    public Span HoleFirst { get; } = new();

    public Span HoleSecond { get; } = new();

    public Span Bottom { get; } = new();

    /// <summary>Of the cuts.</summary>
    public Span Feed { get; } = new();

    public Span Speed { get; } = new();

    /// <summary>The variables that the block sets, as written, each once.</summary>
    public List<(string Name, Span Values)> Variables { get; } = [];

    /// <summary>Where the block's moves end, by axis.</summary>
    public Span End(int axis) => _ends[axis];

    /// <summary>Runs the block on a line (0-based) as often as it ran, at most <see cref="MostRuns"/> times.</summary>
    public static RunSpans Of(ProgramAnalysis analysis, FlowRun flow, int line)
    {
        var spans = new RunSpans(flow.RunsOf(line));
        var block = analysis.Main.BlockAt(line);
        var settings = new List<Token>();
        foreach (ref readonly var token in block.Tokens)
            if (token is { Kind: TokenKind.Assignment, IsMalformed: false })
            {
                settings.Add(token);
                spans.Variables.Add((Assigned.Target(block, token), new Span()));
            }
        flow.ForEachRun(analysis.Main, line, MostRuns, step =>
        {
            spans.Note(step);
            for (var i = 0; i < settings.Count; i++)
                spans.Variables[i].Values.Add(Assigned.ValueAfter(analysis, analysis.Main.BlockAt(line), settings[i], step));
        });
        return spans;
    }

    void Note(Step step)
    {
        for (var i = 0; i < step.Holes.Count; i++)
            NoteHole(step, i);
        foreach (ref readonly var move in step.Moves.Items)
        {
            Moves |= move.IsMotion;
            if (move.IsCut)
                Feed.Add(move.Feed);
            if (double.IsNaN(move.Seconds))
                IsUntimed = true;
            else
                Seconds += move.Seconds;
        }
        for (var axis = 0; axis < 3; axis++)
            _ends[axis].Add(step.After.Position[axis]);
        Speed.Add(step.After.Speed);
    }

    void NoteHole(Step step, int index)
    {
        var place = Place.OfHole(step, index);
        HoleLetters = (place.FirstLetter, place.SecondLetter, StepFacts.DepthLetter(step.After));
        Holes++;
        HoleFirst.Add(place.First);
        HoleSecond.Add(place.Second);
        Bottom.Add(step.Holes[index].Bottom);
    }
}
