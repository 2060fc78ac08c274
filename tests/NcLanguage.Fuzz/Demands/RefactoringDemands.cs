using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Comparison;
using NcLanguage.Control.Flow;
using NcLanguage.Control.Moves;
using NcLanguage.Editing.Refactorings;
using NcLanguage.Fuzz.Cases;
using NcLanguage.Fuzz.Running;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Fuzz.Demands;

/// <summary>A refactoring that is handed out keeps the motion, with blocks skipped or not, held against the old one here and not by the refactoring's own proof.</summary>
static class RefactoringDemands
{
    /// <summary>What a refactoring may shift a place by, mm: what numbers are written to.</summary>
    const double Tolerance = 0.0005 + 1e-9;

    const int MostPlaces = 6;

    /// <summary>Those that change the way between the holes on purpose.</summary>
    static readonly HashSet<string> MoveOtherwise = ["returnLevels", "allReturnLevels", "orderHoles"];

    public static void Check(FuzzCase of)
    {
        var job = new CaseJob(of);
        var analysis = job.Analyse();
        var last = analysis.Text.LineCount - 1;
        var dice = new Dice(of.Program.Length);
        foreach (var refactoring in RefactoringList.All)
            for (var places = refactoring.Reach == Reach.Program ? 1 : MostPlaces; places > 0; places--)
            {
                var first = dice.Below(last + 1);
                var lines = refactoring.Reach == Reach.Program ? new Lines(0, last, false)
                    : dice.OneIn(2) ? Lines.At(first) : new Lines(first, Math.Min(last, first + dice.Below(12)), false);
                if (refactoring.TitleFor(analysis, lines) is not { } title)
                    continue;
                FindingDemands.Said(title, "title of " + refactoring.Name);
                var result = refactoring.Of(analysis, lines, default);
                if (result.Refusal is { } refusal)
                    FindingDemands.Said(refusal, "refusal of " + refactoring.Name);
                else
                    Keeps(refactoring, analysis, lines, Draft.Apply(analysis.Text, result.Edits));
            }
    }

    static void Keeps(Refactoring refactoring, ProgramAnalysis analysis, Lines lines, SourceText edited)
    {
        Demand.That(!edited.ToBytes().AsSpan().SequenceEqual(analysis.Text.ToBytes()), $"{refactoring.Name} changes the text");
        foreach (var job in new[] { analysis.Main.Job, analysis.Runs.OtherSkip?.Job })
        {
            if (job is null)
                continue;
            var (before, after) = (MotionList.Of(analysis.Text, job, default), MotionList.Of(edited, job, default));
            if (before.End is FlowEnd.TooLong or FlowEnd.Endless)
                throw new FuzzFault($"{refactoring.Name} proves nothing of a run without end", "");
            if (MoveOtherwise.Contains(refactoring.Name))
                Demand.Same(Holes(before), Holes(after), $"{refactoring.Name} keeps the holes");
            else
                MovesTheSame(refactoring.Name, before, after, () => $"{lines}\n{analysis.Text}\nbecame\n{edited}");
        }
    }

    /// <summary>What is cut in holes, in no order.</summary>
    static List<string> Holes(MotionList list) =>
        [.. list.Motions.Where(motion => motion is { Role: MoveRole.InHole, Kind: MoveKind.Feed }).Select(motion => FormattableString.Invariant($"{Micron(motion.To.X)} {Micron(motion.To.Y)} {Micron(motion.To.Z)} T{motion.Tool}")).Distinct().Order(StringComparer.Ordinal)];

    /// <summary>A place to the nearest thousandth, and 0 for what would otherwise be written −0.</summary>
    static double Micron(double place) => Math.Round(place, 3) + 0.0;

    static void MovesTheSame(string name, MotionList before, MotionList after, Func<string> where)
    {
        Demand.Equal(before.End, after.End, $"{name} ends the same");
        Demand.That(before.Motions.Count == after.Motions.Count, $"{name} keeps the number of motions", () => $"{before.Motions.Count} and {after.Motions.Count}, {where()}");
        for (var i = 0; i < before.Motions.Count; i++)
        {
            var (a, b) = (before.Motions[i], after.Motions[i]);
            var isSame = a.Kind == b.Kind && Near(a.To.X, b.To.X) && Near(a.To.Y, b.To.Y) && Near(a.To.Z, b.To.Z) && a.Tool == b.Tool && a.Coordinates.WorkOffset == b.Coordinates.WorkOffset
                && a.Spindle == b.Spindle && a.Coolant == b.Coolant && Near(a.Dwell, b.Dwell) && NearShare(a.Feed, b.Feed) && NearShare(a.Speed, b.Speed)
                && (a.Kind != MoveKind.Arc || (a.Clockwise == b.Clockwise && a.FullTurns == b.FullTurns && Near(a.Center.X, b.Center.X) && Near(a.Center.Y, b.Center.Y) && Near(a.Center.Z, b.Center.Z)));
            Demand.That(isSame, $"{name} keeps the motion", () => new StringBuilder().AppendLine($"motion {i}: {a}").AppendLine($"became {b}").Append(where()).ToString());
        }
    }

    static bool Near(double a, double b) => a.Equals(b) || Math.Abs(a - b) <= Tolerance;

    static bool NearShare(double a, double b) => a.Equals(b) || Math.Abs(a - b) <= 1e-4 * Math.Max(Math.Abs(a), Math.Abs(b));
}
