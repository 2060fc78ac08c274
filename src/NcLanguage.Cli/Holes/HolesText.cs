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
        screen.WriteLine("The drawing's holes beside what is made there, in the setup's frame, in mm. Depths are those at full diameter, from the top of the stock. Of milled holes only full circles and helices are seen.");
        screen.WriteLine();
        screen.WriteLine("         X         Y  wanted   deep  thread      made   deep  thread  by        line  status", Heading);
        foreach (var match in report.Drawing.Matches)
        {
            var wanted = match.Wanted;
            screen.Write($"{Say.Number(match.X),10} {Say.Number(match.Y),9} {Optional(wanted?.Diameter),7} {Optional(wanted?.Depth),6}  {wanted?.Thread ?? "",-9} "
                + $"{Optional(match.Diameter),6} {Optional(match.Depth),6} {Optional(match.ThreadDepth),7}  {HoleReport.Word(match.By) ?? "",-8} {Line(match),5}  ");
            screen.WriteLine(Status(match), match.Status is HoleStatus.Drilled ? (Style?)null : Bad);
        }
        if (!report.Drawing.AreAllPlacesKnown)
            screen.WriteLine("Some holes are drilled at places that are not known: what seems to be missing may be one of them.");
    }

    static string Optional(double? value) => value is { } number && !double.IsNaN(number) ? Say.Number(number) : "";

    // The block that decides; where nothing does, the first that works there.
    static string Line(DrawingMatch match) => match.DecidingLine is { } line ? $"{line + 1}" : match.Lines.IsEmpty ? "" : $"{match.Lines[0] + 1}";

    static string Status(DrawingMatch match)
    {
        var status = match.Status is null ? "not known" : HoleReport.Word(match.Status)!;
        return HoleReport.Note(match) is { } note ? $"{status}: {note}" : status;
    }
}
