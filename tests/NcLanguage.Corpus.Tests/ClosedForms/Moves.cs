using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Moves;
using NcLanguage.Machine.Geometry;
using NcLanguage.Reports.Trace;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Corpus.Tests.ClosedForms;

/// <summary>The moves and holes of a program of the corpus, as closed forms ask for them.</summary>
static class Moves
{
    /// <summary>Places are asked for to half a micrometre: programs round to one.</summary>
    public const double Place = 0.0006;

    /// <summary>All moves that cut, in the order of the run.</summary>
    public static List<Move> CutsOf(string name) => [.. Of(name).Where(move => move.IsCut)];

    public static List<Move> ArcsOf(string name) => [.. Of(name).Where(move => move.Kind == MoveKind.Arc)];

    /// <param name="name">A program of the corpus.</param>
    /// <param name="text">An edited version of it; null for the program as it is.</param>
    public static List<Move> Of(string name, string? text = null)
    {
        var analysis = CorpusProgram.Of(name).Analyse(text);
        var moves = new List<Move>();
        TraceRun.Run(analysis.Text, analysis.Main.Job, (in Block _, in TracedStep step) => moves.AddRange(step.Step.Moves.Items), CancellationToken.None);
        return moves;
    }

    public static List<HoleRow> HolesOf(string name) => [.. HoleTable.Of(CorpusProgram.Of(name).Analyse().Main)];

    /// <summary>Length of all cuts, mm.</summary>
    public static double CutLength(string name) => CutsOf(name).Sum(move => move.Length);

    public static void Near(double expected, double actual, double tolerance = Place) => Assert.InRange(actual, expected - tolerance, expected + tolerance);

    public static void At(double x, double y, Point3 actual)
    {
        Near(x, actual.X);
        Near(y, actual.Y);
    }

    public static void At(double x, double y, double z, Point3 actual)
    {
        At(x, y, actual);
        Near(z, actual.Z);
    }

    public static void At(double x, double y, HoleRow actual) => At(x, y, new Point3(actual.Hole.X, actual.Hole.Y, 0));

    public static double Cos(double degrees) => Math.Cos(degrees * Math.PI / 180);

    public static double Sin(double degrees) => Math.Sin(degrees * Math.PI / 180);

    /// <summary>Length of a line that goes so far along two axes.</summary>
    public static double Slope(double a, double b) => Math.Sqrt(a * a + b * b);
}
