using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Compensation;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Flow;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Rules;

/// <summary>A contour under radius compensation as the program has it, without the tool's radius. Lengths in mm, in the program's own coordinates.</summary>
/// <param name="IsLeft">Whether the tool keeps to the left of it.</param>
/// <param name="Radius">That it keeps off; NaN where not known.</param>
/// <param name="Begin">Where the way in begins.</param>
/// <param name="Points">From the end of the way in to the last place before the way out, arcs as chords.</param>
sealed record CompensatedContour(bool IsLeft, double Radius, Point2 Begin, List<Point2> Points)
{
    /// <summary>Angle of one chord of an arc, radians: 5 degrees.</summary>
    const double ChordAngle = Math.PI / 36;

    /// <summary>Blocks and points of one contour that are looked at.</summary>
    const int MostBlocks = 500, MostPoints = 600;

    /// <summary>Levels that differ by less are one, mm.</summary>
    const double SameLevel = 0.001;

    /// <summary>The contour that a block switches compensation on for; null where it is not one row of feeds in the XY plane at the level of its way in, as the blocks stand one below the other, from a place in the stock on.</summary>
    /// <param name="line">The block with G41 or G42, from 0.</param>
    /// <param name="top">Level that the way in has to be below, in the setup's frame, mm.</param>
    /// <param name="last">The last line that was looked at.</param>
    public static CompensatedContour? From(ProgramRun run, int line, double top, out int last)
    {
        last = line;
        var points = new List<Point2>();
        var (side, radius, level, begin, reached) = (CompensationSide.Unknown, double.NaN, double.NaN, default(Point2), default(Point2));
        var (step, ahead) = run.StepWithAhead();
        var state = run.StateBefore(line);
        for (var (at, end) = (line, Math.Min(line + MostBlocks, run.Text.LineCount)); at < end; at++)
        {
            last = at;
            var block = run.BlockAt(at);
            if (block.Tokens.Length == 0)
                continue;
            if (!run.IsReached(at))
                return null;
            ahead.Line = at;
            run.Job.Executor.Run(block, ref state, step);
            if ((step.Events & StepEvents.Skipped) != 0)
                continue;
            ref readonly var after = ref step.After;
            if (at == line)
                (side, radius) = (after.Compensation, after.CompensationRadius);
            if (after.Compensation == CompensationSide.Off)
                return points.Count > 1 ? new CompensatedContour(side == CompensationSide.Left, radius, begin, points) : null;
            if (!after.IsCompensationOn || after.Compensation != side || step.Transfer.Kind != TransferKind.None || (step.Events & (StepEvents.NotRun | StepEvents.Alarm | StepEvents.Faults)) != 0)
                return null;
            if ((step.Events & StepEvents.Moves) == 0)
                continue;
            var (from, to) = (step.Before.ProgrammedPosition, after.ProgrammedPosition);
            if (points.Count == 0 && from.X == to.X && from.Y == to.Y)
                continue;
            var move = default(ContourMove);
            if ((step.Events & StepEvents.Path) == 0 || !ArcJoints.TryRead(step, at, ref move) || Math.Abs(from.Z - to.Z) > SameLevel || (points.Count > 0 && (!ContourMove.AreSame(reached, move.From) || Math.Abs(to.Z - level) > SameLevel)))
                return null;
            if (points.Count == 0)
            {
                if (move.IsArc || !(to.Z + step.ToFrame.Z < top))
                    return null;
                (begin, level) = (move.From, to.Z);
                points.Add(move.To);
            }
            else
            {
                Add(move, points);
            }
            reached = move.To;
            if (points.Count > MostPoints)
                return null;
        }
        return null;
    }

    static void Add(in ContourMove move, List<Point2> points)
    {
        if (move.IsArc)
        {
            var (start, end) = (move.From - move.Center, move.To - move.Center);
            var angle = Math.Atan2(Point2.Cross(start, end), Point2.Dot(start, end)) * (move.Clockwise ? -1 : 1);
            if (angle <= 0 || move.IsWholeTurn)
                angle += Math.Tau;
            var chords = (int)Math.Ceiling(angle / ChordAngle);
            for (var i = 1; i < chords; i++)
            {
                var (sin, cos) = Math.SinCos(angle * i / chords * (move.Clockwise ? -1 : 1));
                points.Add(move.Center + new Point2(start.X * cos - start.Y * sin, start.X * sin + start.Y * cos));
            }
        }
        points.Add(move.To);
    }

    /// <summary>The part of the contour that closes; empty where none does.</summary>
    public List<Point2> Loop()
    {
        for (var i = 0; i + 1 < Points.Count; i++)
            for (var j = Points.Count - 2; j > i + 1; j--)
                if (Meet(Points[i], Points[i + 1], Points[j], Points[j + 1]) is { } place)
                    return [place, .. Points[(i + 1)..(j + 1)]];
        return [];
    }

    /// <summary>Where two pieces meet or touch; null where they do not.</summary>
    static Point2? Meet(Point2 a, Point2 b, Point2 c, Point2 d)
    {
        var (first, second) = (b - a, d - c);
        var across = Point2.Cross(first, second);
        if (Math.Abs(across) > 1e-9 * first.Length * second.Length)
        {
            var (along, other) = (Point2.Cross(c - a, second) / across, Point2.Cross(c - a, first) / across);
            var (slack, otherSlack) = (ContourMove.Same / first.Length, ContourMove.Same / second.Length);
            return along >= -slack && along <= 1 + slack && other >= -otherSlack && other <= 1 + otherSlack ? a + first * along : null;
        }
        // One behind the other: where one begins on the other.
        return Distance(a, c, d) <= ContourMove.Same ? a : Distance(c, a, b) <= ContourMove.Same ? c : null;
    }

    /// <summary>How far a place lies from a piece, mm.</summary>
    public static double Distance(Point2 place, Point2 from, Point2 to)
    {
        var way = to - from;
        var along = Point2.Dot(way, way) is > 0 and var square ? Math.Clamp(Point2.Dot(place - from, way) / square, 0, 1) : 0;
        return (place - (from + way * along)).Length;
    }
}
