using System.Globalization;
using System.Text;
using NcLanguage.Control.Moves;
using NcLanguage.Machine.Geometry;
using NcLanguage.Reports.Trace;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Corpus.Tests;

/// <summary>A trace as the corpus keeps it: a head of lines with #, then one line for each move that travels, waits, changes the tool or stops the run:
/// line of its block, kind, end of the tool tip in work coordinates in mm, centre of an arc, feed in mm/min; ? is not known.</summary>
static class TraceFile
{
    public static string Render(CorpusProgram program)
    {
        var analysis = program.Analyse();
        var text = new StringBuilder();
        var totals = TraceRun.Run(analysis.Text, analysis.Main.Job, (in Block _, in TracedStep step) => Write(step, text), CancellationToken.None);
        return text.Append(CultureInfo.InvariantCulture, $"cut {Number(totals.CutDistance)} mm, rapid {Number(totals.RapidDistance)} mm\n").ToString();
    }

    /// <summary>The head of a reviewed file, and the moves in it.</summary>
    public static (string Head, string Moves) Read(string path)
    {
        var lines = File.Exists(path) ? File.ReadAllText(path).ReplaceLineEndings("\n").Split('\n') : [];
        var isHead = lines.Select(line => line.StartsWith('#')).ToArray();
        var head = string.Concat(lines.Where((_, i) => isHead[i]).Select(line => line + "\n"));
        return (head, string.Join('\n', lines.Where((_, i) => !isHead[i])));
    }

    static void Write(in TracedStep step, StringBuilder text)
    {
        foreach (ref readonly var move in step.Step.Moves.Items)
        {
            // A way of no length is no move a setter would see.
            if (KindOf(move) is not { } kind || (move.IsMotion && move.Length == 0))
                continue;
            text.Append(step.File is { } file ? file + ":" : "").Append(step.Line + 1).Append(' ').Append(kind);
            if (move.Kind == MoveKind.Dwell)
                text.Append(' ').Append(Number(move.Seconds)).Append(" s");
            if (move.IsMotion)
                text.Append(' ').Append(Place(move.To));
            if (move.Kind == MoveKind.Arc)
                text.Append(" about ").Append(Place(move.Center));
            if (move.Kind is MoveKind.Feed or MoveKind.Arc)
                text.Append(" F").Append(Number(move.Feed));
            text.Append('\n');
        }
    }

    static string? KindOf(in Move move) => move.Kind switch
    {
        MoveKind.Rapid => "rapid",
        MoveKind.Feed when move.Role == MoveRole.Probe => "probe",
        MoveKind.Feed => "feed",
        MoveKind.Arc => move.Clockwise ? "arc-cw" : "arc-ccw",
        MoveKind.Dwell => "dwell",
        MoveKind.ToolChange => "tool-change",
        MoveKind.Stop => "stop",
        _ => null,
    };

    static string Place(Point3 place) => $"X{Number(place.X)} Y{Number(place.Y)} Z{Number(place.Z)}";

    static string Number(double value)
    {
        if (double.IsNaN(value))
            return "?";
        // What is left of rounding has no sign.
        var rounded = Math.Round(value, 3, MidpointRounding.AwayFromZero);
        return (rounded == 0 ? 0 : rounded).ToString("0.000", CultureInfo.InvariantCulture);
    }
}
