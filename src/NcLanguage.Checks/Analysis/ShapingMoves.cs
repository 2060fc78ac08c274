using System.Runtime.InteropServices;
using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Analysis;

/// <summary>An arc or helix in the XY plane that a mill cuts: a piece of a hole, perhaps. Places in the setup's frame, mm.</summary>
public record struct RoundCut
{
    public Point3 From { get; private set; }

    public Point3 To { get; private set; }

    public double CenterX { get; private set; }

    public double CenterY { get; private set; }

    /// <summary>Swept angle, radians; whole turns included.</summary>
    public double Sweep { get; private set; }

    public bool Clockwise { get; private set; }

    public Tool Tool { get; private set; }

    public Point3 ToFrame { get; private set; }

    /// <summary>Its block, counted from 0 within its part.</summary>
    public int Line { get; private set; }

    /// <summary>Whether it does not continue the one before it in its part; false for the part's first, of which that is not known.</summary>
    public bool BeginsAnew { get; private set; }

    /// <summary>A turn that lacks less than this is a whole one, radians: a hundredth of a millimetre on a radius of 10.</summary>
    internal const double Rounding = 1e-3;

    internal const double Turn = 2 * Math.PI;

    /// <summary>Centres, radii and ends that differ by less are one, mm: circles are written with rounded numbers.</summary>
    internal const double Same = 0.01;

    public readonly double Radius => double.Hypot(From.X - CenterX, From.Y - CenterY);

    /// <summary>Whether it goes on about the same centre where another ended.</summary>
    internal readonly bool Continues(in RoundCut other) =>
        IsAboutTheSame(other) && Clockwise == other.Clockwise && ToFrame == other.ToFrame && Math.Abs(Radius - other.Radius) <= Same
        && Math.Abs(From.X - other.To.X) <= Same && Math.Abs(From.Y - other.To.Y) <= Same && Math.Abs(From.Z - other.To.Z) <= Same;

    /// <summary>Whether the same tool turns about the same centre.</summary>
    internal readonly bool IsAboutTheSame(in RoundCut other) => ReferenceEquals(Tool, other.Tool) && IsAbout(other.CenterX, other.CenterY);

    readonly bool IsAbout(double x, double y) => Math.Abs(CenterX - x) <= Same && Math.Abs(CenterY - y) <= Same;

    /// <summary>Adds an arc to those of its part. One between two others that is no piece of a turn with either makes no hole: its place is taken.
    /// In a thread it is kept, where it may turn against the others.</summary>
    internal static void Add(List<RoundCut> rounds, in Move arc, double sweep, Tool tool, in Point3 toFrame, int line)
    {
        if (rounds.Count == 0)
        {
            rounds.Next().Become(arc, sweep, tool, toFrame, line, beginsAnew: false);
            return;
        }
        ref var last = ref CollectionsMarshal.AsSpan(rounds)[^1];
        var continues = false;
        if (last.IsAbout(arc.Center.X + toFrame.X, arc.Center.Y + toFrame.Y))
        {
            var cut = default(RoundCut);
            cut.Become(arc, sweep, tool, toFrame, line, beginsAnew: true);
            continues = cut.Continues(last);
        }
        ref var place = ref !continues && last.BeginsAnew && last.Sweep < Turn - Rounding && tool.Kind != ToolKind.ThreadMill ? ref last : ref rounds.Next();
        place.Become(arc, sweep, tool, toFrame, line, !continues);
    }

    // Where it stands: most arcs of a contour take the place of the one before, and a copy of a whole one takes long.
    void Become(in Move arc, double sweep, Tool tool, in Point3 toFrame, int line, bool beginsAnew)
    {
        (From, To) = (arc.From + toFrame, arc.To + toFrame);
        (CenterX, CenterY) = (arc.Center.X + toFrame.X, arc.Center.Y + toFrame.Y);
        (Sweep, Clockwise, ToFrame, Line, BeginsAnew) = (sweep, arc.Clockwise, toFrame, line, beginsAnew);
        if (!ReferenceEquals(Tool, tool))
            Tool = tool;
    }
}

/// <summary>A feed straight down that no cycle makes. Places in the setup's frame, mm; NaN where not known.</summary>
/// <param name="Line">Its block, counted from 0 within its part.</param>
/// <param name="CutsBefore">How many of its part's cuts into the stock were made before its block.</param>
public readonly record struct Plunge(Point3 From, Point3 To, Tool Tool, Point3 ToFrame, int Line, int CutsBefore);

/// <summary>Picks from a step what makes holes without a cycle: round cuts of mills, and feeds straight down.</summary>
static class ShapingMoves
{
    /// <summary>Arcs that sweep less are corners, radians: 40 degrees.</summary>
    const double LeastSweep = 40 * Math.PI / 180;

    public static void Note(Step step, int line, Setup setup, int cutsBefore, List<RoundCut> rounds, List<Plunge> plunges)
    {
        if ((step.Events & StepEvents.Cut) == 0)
            return;
        for (var i = 0; i < step.Moves.Count; i++)
        {
            ref readonly var move = ref step.Moves[i];
            if (move.Role != MoveRole.Plain)
                continue;
            if (move.Kind == MoveKind.Arc && move.Plane == WorkPlane.XY)
                NoteRound(move, step, line, setup, rounds);
            else if (move.Kind == MoveKind.Feed && IsStraightDown(move.From, move.To) && setup.FindTool(step.After.Tool) is { Kind: not null } tool)
                plunges.Add(new Plunge(move.From + step.ToFrame, move.To + step.ToFrame, tool, step.ToFrame, line, cutsBefore));
        }
    }

    // An axis that is not known has not moved either.
    internal static bool IsStraightDown(in Point3 from, in Point3 to) =>
        to.Z < from.Z && (Upright.Is(from, to) || (from.X.Equals(to.X) && from.Y.Equals(to.Y)));

    /// <summary>Notes an arc in the XY plane that is cut as programmed.</summary>
    /// <param name="step">A step with the same tool and the same frame.</param>
    public static void NoteRound(in Move arc, Step step, int line, Setup setup, List<RoundCut> rounds)
    {
        if (!arc.From.IsKnown || !arc.To.IsKnown || !arc.Center.IsKnown || !step.ToFrame.IsKnown || arc.Sweep is not (>= LeastSweep and var sweep)
            || setup.FindTool(step.After.Tool) is not { Diameter: not null, Kind: { } kind } tool || !Mills(kind))
            return;
        // About its own beginning there is no arc: it was written for another plane.
        if (Arcs.IsLargerThan(RoundCut.Same, arc))
            RoundCut.Add(rounds, arc, sweep, tool, step.ToFrame, line);
    }

    /// <summary>Whether a tool of this kind clears with its side: one that cuts chamfers does not.</summary>
    internal static bool Mills(ToolKind kind) =>
        kind is ToolKind.EndMill or ToolKind.BallMill or ToolKind.BullMill or ToolKind.FaceMill or ToolKind.SlotMill or ToolKind.ThreadMill;
}
