using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Drawing;
using NcLanguage.Cli.Common;
using NcLanguage.Machine.Setups;
using NcLanguage.Reports.Holes;
using Spectre.Console;

namespace NcLanguage.Cli.Holes;

/// <summary>The hole table for a setter to read.</summary>
sealed class HolesText(Screen screen)
{
    static readonly Style Heading = new(decoration: Decoration.Bold);
    static readonly Style Bad = new(Color.Red, decoration: Decoration.Bold);

    public void Write(HoleReport report)
    {
        screen.WriteLine($"{report.Path}, read for {report.Run.Job.Machine.Name}", Heading);
        if (report.Holes.Count == 0)
            screen.WriteLine("No hole is drilled in a cycle.");
        else
            WriteHoles(report.Holes);
        if (report.HasDrawing)
            WriteDrawing(report);
        screen.WriteLine();
        screen.WriteParagraph(Caution.Text, 0);
    }

    void WriteHoles(HoleTable holes)
    {
        screen.WriteLine("Work coordinates in mm; \"least\" is the lowest level at which the way to the next hole keeps the setup's clearance. ? is not known.");
        screen.WriteLine();
        screen.WriteLine(" hole   line cycle tool         X         Y  arrives        R   bottom  leaves   least      dwell     feed    speed", Heading);
        foreach (var row in holes)
        {
            var hole = row.Hole;
            screen.WriteLine(
                $"{row.Number,5} {row.Line + 1,6} {"G" + hole.Cycle,5} {(hole.Tool < 0 ? "?" : "T" + hole.Tool),4} {Say.Number(hole.X),9} {Say.Number(hole.Y),9} "
                + $"{Say.Number(hole.ArriveAt),8} {Say.Number(hole.RLevel),8} {Say.Number(hole.Bottom),8} {Say.Number(hole.ReturnTo),7} "
                + $"{Optional(row.LeastReturn, Say.Number),7} {Dwell(hole.DwellSeconds),10} {Say.Number(hole.Feed, 1),8} {Say.Number(hole.Speed, 0),8}{(row.File is { } file ? $"  in {file}" : "")}");
        }
    }

    static string Dwell(double seconds) => seconds == 0 ? "" : Optional(seconds, Say.Seconds);

    // The last hole of a cycle has none: a blank says less than a question mark.
    static string Optional(double value, Func<double, string> say) => double.IsNaN(value) ? "" : say(value);

    void WriteDrawing(HoleReport report)
    {
        screen.WriteLine();
        screen.WriteLine("The drawing's holes, and what is made there. Depths at full diameter, from the top of the stock; milled holes are not seen.");
        screen.WriteLine();
        screen.WriteLine("         X         Y  wanted                    made                                status", Heading);
        foreach (var match in report.Drawing.Matches)
        {
            screen.Write($"{Say.Number(match.X),10} {Say.Number(match.Y),9}  {Wanted(match.Wanted),-25} {Made(match),-35} ");
            screen.WriteLine(Status(match), match.Status is HoleStatus.Drilled ? (Style?)null : Bad);
        }
        if (!report.Drawing.AreAllPlacesKnown)
            screen.WriteLine("Some holes are drilled at places that are not known: what seems to be missing may be one of them.");
    }

    static string Wanted(DrawingHole? hole) => hole is null
        ? "nothing"
        : Size(hole.Thread, hole.Diameter ?? double.NaN, hole.Depth ?? double.NaN);

    static string Made(DrawingMatch match)
    {
        if (match.IsSpotOnly)
            return "a spot only";
        if (match.Status is HoleStatus.Missing or null)
            return "nothing";
        var hole = Size(null, match.Diameter, match.Depth);
        return double.IsNaN(match.ThreadDepth) ? hole : $"{hole}, tapped to {Say.Mm(match.ThreadDepth)}";
    }

    static string Size(string? thread, double diameter, double depth)
    {
        var size = double.IsNaN(diameter) ? "hole" : Say.Mm(diameter);
        if (thread is not null)
            size = double.IsNaN(diameter) ? thread : $"{thread} ({size})";
        return double.IsNaN(depth) ? size : $"{size}, {Say.Number(depth)} deep";
    }

    static string Status(DrawingMatch match) => match.Status is null
        ? "not known"
        : match.IsThreadMissing ? "shallow: not tapped" : HoleReport.Word(match.Status)!;
}
