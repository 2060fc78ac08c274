using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing.Refactorings;

/// <summary>An arc as its block writes it, in the places of the program, mm.</summary>
/// <param name="First">The plane's first axis, 0 to 2.</param>
/// <param name="Second">Its second.</param>
/// <param name="Unit">Millimetres in the unit of the program.</param>
/// <param name="ByRadius">Whether R says it.</param>
readonly record struct ArcBlock(int Line, Point3 From, Point3 To, Point3 Centre, bool Clockwise, int First, int Second, double Unit, bool ByRadius)
{
    /// <summary>Ends of arcs nearer than this are one, mm.</summary>
    const double Rounding = 1e-6;

    /// <summary>How much shorter than half the chord a radius may be, mm.</summary>
    public double Tolerance => Arcs.Tolerance(Unit == 1 ? LengthUnit.Millimetre : LengthUnit.Inch);

    public double Radius => Math.Sqrt(Math.Pow(From[First] - Centre[First], 2) + Math.Pow(From[Second] - Centre[Second], 2));

    public bool IsFullCircle => Math.Abs(From[First] - To[First]) < Rounding && Math.Abs(From[Second] - To[Second]) < Rounding;

    public bool IsMoreThanHalf
    {
        get
        {
            var (centre, from, to) = (Centre, From, To);
            var (first, second) = (First, Second);
            // The centre lies left of the way of a short counterclockwise arc.
            var side = (to[first] - from[first]) * (centre[second] - from[second]) - (to[second] - from[second]) * (centre[first] - from[first]);
            return Math.Abs(side) > Rounding && side > 0 == Clockwise;
        }
    }

    /// <summary>Whether a block of the lines is an arc that is given so, the first time it runs.</summary>
    public static bool IsIn(ProgramAnalysis analysis, Lines lines, bool byRadius, CancellationToken cancel)
    {
        foreach (var line in Lines.Each(lines.First, lines.Last, cancel))
        {
            var block = analysis.Text.BlockAt(line);
            var hasRadius = block.IndexOf('R') >= 0;
            var hasCentre = block.IndexOf('I') >= 0 || block.IndexOf('J') >= 0 || block.IndexOf('K') >= 0;
            if ((byRadius ? hasRadius : hasCentre && !hasRadius)
                && analysis.Main.StepAt(line).After is { InCycle: false, Motion: MotionMode.ArcClockwise or MotionMode.ArcCounterclockwise })
                return true;
        }
        return false;
    }

    /// <summary>The arcs of the lines, by radius or by centre, that are the same each time they run.</summary>
    public static List<ArcBlock> In(ProgramAnalysis analysis, Lines lines, bool byRadius, CancellationToken cancel)
    {
        var found = new SortedDictionary<int, ArcBlock?>();
        var text = analysis.Text;
        foreach (var job in MotionProof.JobsOf(analysis))
        {
            var walk = new ProgramWalk(text, job, cancel);
            while (walk.MoveNext())
            {
                var (line, step) = (walk.Line, walk.Step);
                if (!lines.Holds(line))
                    continue;
                var arc = Read(line, text.BlockAt(line), step, job.Readings);
                found[line] = found.TryGetValue(line, out var other) && other != arc ? null : arc;
            }
        }
        return [.. found.Values.Where(arc => arc is { } known && known.ByRadius == byRadius).Select(arc => arc!.Value)];
    }

    static ArcBlock? Read(int line, in Block block, Step step, Readings readings)
    {
        ref readonly var after = ref step.After;
        var unit = UnitLength.Of(after.Units);
        if (after.Motion is not (MotionMode.ArcClockwise or MotionMode.ArcCounterclockwise) || after.InCycle || double.IsNaN(unit) || after.Plane == WorkPlane.Unknown
            || step.Faults.Count > 0 || after.ProgramFrame?.Polar is not null || after.Distance == DistanceMode.Unknown || step.Words.Find(ModalGroup.NonModal) is { Code.Tenths: not 90 })
            return null;
        var (first, second, third) = Arcs.Axes(after.Plane);
        var from = step.Before.ProgramFrame is null ? step.Before.ProgrammedPosition : step.Before.Programmed;
        var to = from;
        foreach (var axis in (ReadOnlySpan<int>)[first, second])
            if (step.Words.Has((char)('X' + axis)))
                to = to.With(axis, (after.Distance == DistanceMode.Incremental ? from[axis] : 0) + Lengths.Written(block, step, (char)('X' + axis), readings));
        // A third word is a pitch on some controls.
        if (step.Words.Has((char)('I' + third)))
            return null;
        var (isByRadius, centre) = (step.Words.Has('R'), from);
        var clockwise = after.Motion == MotionMode.ArcClockwise;
        if (isByRadius)
        {
            if (Arcs.CentreFromRadius(from[first], from[second], to[first], to[second], Lengths.Written(block, step, 'R', readings), clockwise, Arcs.Tolerance(after.Units)) is not { } at)
                return null;
            centre = from.With(first, at.A).With(second, at.B);
        }
        else
        {
            foreach (var axis in (ReadOnlySpan<int>)[first, second])
                if (step.Words.Has((char)('I' + axis)))
                    centre = centre.With(axis, (readings.ArcCentre == ArcCentreReading.Incremental ? from[axis] : 0) + Lengths.Written(block, step, (char)('I' + axis), readings));
            if (centre == from)
                return null;
        }
        return double.IsNaN(from[first] + from[second] + to[first] + to[second] + centre[first] + centre[second])
            ? null
            : new ArcBlock(line, from.With(third, 0), to.With(third, 0), centre.With(third, 0), clockwise, first, second, unit, isByRadius);
    }
}
