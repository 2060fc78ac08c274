using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Checks.Rules;

/// <summary>The words of an arc's centre as they were hardly written but meant: an arc whose ends lie on no circle about the centre given, but about another that differs by a common slip.</summary>
static class ArcCentreFit
{
    /// <summary>How far the radius at both ends may differ for the slip to be sure, mm: what rounding to three decimals leaves.</summary>
    const double Rounding = 0.002;

    static bool IsWorkedOut(in StepContext step, char letter)
    {
        if (!step.Step.Words.Has(letter))
            return false;
        ref readonly var word = ref step.Block.Tokens[step.Step.Words.TokenOf(letter)];
        return step.Block.Line[word.Start..word.End].IndexOfAny("[#"u8) >= 0;
    }

    /// <summary>Whether both ends of an arc lie on one circle about a centre, in the plane of two axes.</summary>
    static bool AreOnCircle(in Point3 from, in Point3 to, in Point3 centre, int first, int second)
    {
        var radius = Arcs.Radius(from, centre, first, second);
        return radius > Rounding && Math.Abs(radius - Arcs.Radius(to, centre, first, second)) <= Rounding;
    }

    /// <summary>Whether another plane than XY has been left on, in which the words fit no arc, as they do in XY: circles and helices about the tool are what is milled mostly.</summary>
    public static bool IsOfXY(in StepContext step)
    {
        ref readonly var after = ref step.Step.After;
        if (after.Plane is WorkPlane.XY or WorkPlane.Unknown || (step.Step.Sets & Slot.Plane) != 0 || step.Step.Words.Has('K') || step.Job.Readings.ArcCentre == ArcCentreReading.Absolute)
            return false;
        var words = step.Step.Words;
        var unit = UnitLength.Of(after.Units);
        var (from, to) = (step.Step.Before.ProgrammedPosition, after.ProgrammedPosition);
        var along = new Point3(words.Has('I') ? words['I'] * unit : 0, words.Has('J') ? words['J'] * unit : 0, 0);
        return AreOnCircle(from, to, from + along, 0, 1);
    }

    /// <summary>The words with which the arc would fit, and whether the ones given fit as the place of the centre; null where no slip, or more than one, would explain them.</summary>
    public static (string Words, bool IsPlace)? Of(in StepContext step)
    {
        ref readonly var before = ref step.Step.Before;
        ref readonly var after = ref step.Step.After;
        var readings = step.Job.Readings;
        if (after.Plane == WorkPlane.Unknown || before.ProgramFrame is not null || readings.ArcCentre == ArcCentreReading.Absolute || readings.Integers == IntegerReading.Increments)
            return null;
        var (first, second, _) = Arcs.Axes(after.Plane);
        var (letterA, letterB) = ((char)('I' + first), (char)('I' + second));
        var words = step.Step.Words;
        if (IsWorkedOut(step, letterA) || IsWorkedOut(step, letterB))
            return null;
        var unit = UnitLength.Of(after.Units);
        var (a, b) = (words.Has(letterA) ? words[letterA] * unit : 0, words.Has(letterB) ? words[letterB] * unit : 0);
        var (from, to) = (before.ProgrammedPosition, after.ProgrammedPosition);
        var chord = Arcs.Radius(from, to, first, second);
        if (double.IsNaN(a + b + chord) || chord <= Rounding)
            return null;
        var isClockwise = after.Motion == MotionMode.ArcClockwise;
        var areBoth = words.Has(letterA) && words.Has(letterB);
        var fits = new List<(double A, double B, bool IsPlace)>(1);
        Try(-a, b, a != 0, false);
        Try(a, -b, b != 0, false);
        Try(-a, -b, a != 0 && b != 0, false);
        Try(a - from[first], b - from[second], areBoth, true);
        // One may be written for the other.
        Try(b, a, a != b, false);
        Try(-b, -a, a != b, false);
        Try(b, -a, a != 0 && b != 0, false);
        Try(-b, a, a != 0 && b != 0, false);
        // A quarter of a circle has two centres that differ by such a slip, and is gone the long way round about one of them.
        if (fits.Count > 1 && !fits.Exists(fit => fit.IsPlace))
            fits.RemoveAll(fit => !(SweepAbout(fit.A, fit.B) < Math.PI));
        if (fits.Count != 1)
            return null;
        var fit = fits[0];
        string[] written = letterA < letterB ? [Word(letterA, fit.A), Word(letterB, fit.B)] : [Word(letterB, fit.B), Word(letterA, fit.A)];
        return (string.Join(' ', written.Where(word => word.Length > 0)), fit.IsPlace);

        void Try(double along, double across, bool isSlip, bool isPlace)
        {
            var centre = from.With(first, from[first] + along).With(second, from[second] + across);
            if (isSlip && AreOnCircle(from, to, centre, first, second))
                fits.Add((along, across, isPlace));
        }

        // The angle from start to end, in the arc's direction.
        double SweepAbout(double along, double across)
        {
            var (endA, endB) = (to[first] - from[first] - along, to[second] - from[second] - across);
            var turn = along * -endB + across * endA;
            var sweep = Math.Atan2(isClockwise ? -turn : turn, -along * endA - across * endB);
            return sweep > 0 ? sweep : sweep + 2 * Math.PI;
        }

        string Word(char letter, double mm) => areBoth || mm != 0 ? letter + Say.Number(mm / unit, 4) : "";
    }
}
