using System.Text;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;

namespace NcLanguage.Editing;

/// <summary>The holes of a block: their numbers and places, the level they are left at, and what the way to the next hole needs.</summary>
static class HoleText
{
    /// <summary>**Hole 3** X60 Y12 · G82 from Z2 to Z-3 · 3.4 s</summary>
    public static void AppendTitle(StringBuilder text, ProgramAnalysis analysis, int line, Step step)
    {
        var first = HoleTable.Of(analysis.Main).At(line).First + 1;
        var last = first + step.Holes.Count - 1;
        var hole = step.Holes[0];
        var lengths = Lengths.Of(step.After);
        var depth = StepFacts.DepthLetter(step.After);
        var place = Place.OfHole(step, 0);
        text.Append(first == last ? $"**Hole {first}** " : $"**Holes {first} to {last}** ").Append(lengths.Place(place));
        if (first != last)
        {
            var end = Place.OfHole(step, step.Holes.Count - 1);
            text.Append(place.IsAt(end) ? ", all at this place" : $" to {lengths.Place(end)}");
        }
        text.Append(CoordinatesText.Behind(analysis.Main, step.After));
        text.Append($" · G{hole.Cycle} from {lengths.Axis(depth, hole.RLevel)} to {lengths.Axis(depth, hole.Bottom)} · ")
            .Append(Times.Of(StepFacts.Seconds(step))).Append("\n\n");
    }

    /// <summary>Where the tool is left, and the least level that clears on the way to the next hole.</summary>
    public static void AppendNext(StringBuilder text, ProgramAnalysis analysis, int line, Step step)
    {
        var lengths = Lengths.Of(step.After);
        var depth = StepFacts.DepthLetter(step.After);
        var last = step.Holes[step.Holes.Count - 1];
        text.Append($"\nLeft at {lengths.Axis(depth, last.ReturnTo)}.");
        var holes = HoleTable.Of(analysis.Main);
        var (first, count) = holes.At(line);
        var index = first + count - 1;
        if (holes.Has(index + 1) && holes[index + 1] is { Hole.IsHop: true } next)
            AppendHop(text, analysis, holes[index], next, lengths);
        text.Append('\n');
    }

    static void AppendHop(StringBuilder text, ProgramAnalysis analysis, in HoleRow hole, in HoleRow next, Lengths lengths)
    {
        text.Append($" On to hole {next.Number} (line {next.Line + 1}) at {lengths.Axis((char)('X' + Arcs.Axes(next.Plane).Third), next.Hole.ArriveAt)}");
        var job = analysis.Main.Job;
        if (double.IsPositiveInfinity(hole.LeastReturn))
            text.Append(": **no level clears**.");
        else if (!double.IsNaN(hole.LeastReturn))
        {
            var isLow = next.Hole.ArriveAt < hole.LeastReturn - Sweep.ClearanceTolerance;
            var least = $"{lengths.Axis('Z', hole.LeastReturn)} is the least that clears by {lengths.Length(job.Setup.Clearance)}";
            text.Append(isLow ? $": **too low**, {least}." : $"; {least}.");
        }
        else if (HopClearance.CanJudge(job))
            text.Append("; the least level that clears is " + Lengths.NotKnown + ".");
        else
            text.Append('.');
    }
}
