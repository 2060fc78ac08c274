using System.Text;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Drawing;
using NcLanguage.Cli.Common;
using NcLanguage.Machine.Setups;
using NcLanguage.Reports.Holes;
using Spectre.Console;

namespace NcLanguage.Cli.Holes;

/// <summary>The hole table for a setter to read, in the unit that the program is written in.</summary>
sealed class HolesText(Screen screen, HoleReport report)
{
    /// <summary>Widths of columns whose texts are short.</summary>
    const int LeastThread = 9, LeastBy = 8;

    readonly LengthText _say = report.Lengths;

    public void Write()
    {
        screen.WriteLine($"{report.Path}, read for {report.Run.Job.Machine.Name}", Styles.Heading);
        if (report.Holes.Count == 0)
            screen.WriteLine("No hole is drilled in a cycle.");
        else
            WriteHoles(report.Holes);
        if (report.HasDrawing)
            WriteDrawing();
        screen.WriteLine();
        screen.WriteParagraph(Caution.Text, 0);
    }

    void WriteHoles(HoleTable holes)
    {
        var names = holes.NamesCoordinates;
        screen.WriteParagraph($"Work coordinates in {_say.UnitWord}{(names ? ", of each hole those of its own work offset" : "")}; feeds in {_say.FeedUnit}; \"least\" is the lowest level at which the way to the next hole keeps the setup's clearance. ? is not known.", 0);
        var hasLimits = holes.MeetsLimits;
        if (hasLimits)
            screen.WriteParagraph(HoleReport.Limits, 0);
        // Room for two numbers and the arrow between them.
        var width = hasLimits ? 12 : 8;
        screen.WriteLine();
        var table = new ScreenTable(
            screen, [
                new("hole", 5, Gap: 0), new("line", 6), new("cycle", 5), new("tool", 4), new("X", 9), new("Y", 9), new("arrives", 8), new("R", 8), new("bottom", 8), new("leaves", 7),
                new("least", 7), new("dwell", 10), new("feed", width), new("speed", width), .. names ? new ScreenColumn[] { new("work offset", Gap: 2, IsText: true) } : [], new("", Gap: 2, IsText: true),
            ]);
        table.Write(holes.Select(row =>
        {
            var hole = row.Hole;
            return new ScreenTable.Row(
            [
                $"{row.Number}", $"{row.Line + 1}", "G" + hole.Cycle, hole.Tool < 0 ? "?" : "T" + hole.Tool, _say.Number(hole.X), _say.Number(hole.Y),
                _say.Number(hole.ArriveAt), _say.Number(hole.RLevel), _say.Number(hole.Bottom), _say.Number(hole.ReturnTo),
                Optional(row.LeastReturn, _say.Number), Dwell(hole.DwellSeconds), HoleReport.Feed(row.Feed, _say), HoleReport.Rate(row.Speed, 0),
                .. names ? new[] { row.Coordinates.IsKnown ? row.Coordinates.Name(_say.IsInch) : "?" } : [],
                row.File is { } file ? $"in {file}" : "",
            ]);
        }));
    }

    static string Dwell(double seconds) => seconds == 0 ? "" : Optional(seconds, Say.Seconds);

    // The last hole of a cycle has none: a blank says less than a question mark.
    static string Optional(double value, Func<double, string> say) => double.IsNaN(value) ? "" : say(value);

    void WriteDrawing()
    {
        screen.WriteLine();
        screen.WriteParagraph($"The drawing's holes beside what is made there, in the setup's frame, in {_say.UnitWord}. Depths are those at full diameter, from the top of the stock or what mills and its hollows leave of it about the hole; "
            + "of a thread, as deep as the tip of the tap goes: its lead (2 to 3 threads of a plug tap) is not taken off. Of milled holes only full circles and helices are seen.", 0);
        screen.WriteLine();
        var matches = report.Drawing.Matches;
        // Names and ways of making as wide as the longest, so that the columns stand under each other.
        var (thread, by) = (matches.Max(match => Thread(match).Length), matches.Max(match => By(match).Length));
        (thread, by) = (Math.Max(thread, LeastThread), Math.Max(by, LeastBy));
        new ScreenTable(
            screen, new("X", 10, Gap: 0), new("Y", 9), new("wanted", 7), new("deep", 6), new("thread", thread, Gap: 2, IsText: true), new("made", 6), new("deep", 6), new("thread", 7),
            new("by", by, Gap: 2, IsText: true), new("line", 5), new("status", Gap: 2, IsText: true)).Write(matches.Select(match =>
        {
            var wanted = match.Wanted;
            return new ScreenTable.Row(
                [
                    _say.Number(match.X), _say.Number(match.Y), Optional(wanted?.Diameter), Optional(wanted?.Depth), Thread(match),
                    Optional(match.Diameter), Optional(HoleReport.Depth(match.Depth)), Optional(HoleReport.Depth(match.ThreadDepth)), By(match), Line(match), Status(match),
                ],
                match is { Status: HoleStatus.Drilled, IsTooDeep: false, GoesThrough: false } ? (Style?)null : Styles.Wrong);
        }));
        if (!report.Drawing.AreAllPlacesKnown)
            screen.WriteParagraph("Some holes are drilled at places that are not known: what seems to be missing may be one of them.", 0);
    }

    static string Thread(DrawingMatch match) => Quote.Text(Encoding.UTF8.GetBytes(match.Wanted?.Thread ?? ""));

    /// <summary>reamed; drilled, tapped</summary>
    static string By(DrawingMatch match) => string.Join(", ", new[] { HoleReport.Word(match.By), HoleReport.WordOfThread(match.ThreadBy) }.OfType<string>());

    string Optional(double? value) => value is { } number && !double.IsNaN(number) ? _say.Number(number) : "";

    // The block that decides; where nothing does, the first that works there.
    static string Line(DrawingMatch match) => match.DecidingLine is { } line ? $"{line + 1}" : match.Lines.IsEmpty ? "" : $"{match.Lines[0] + 1}";

    // "drilled", the status that other programs read, would say little of a hole that is reamed or tapped.
    static string Status(DrawingMatch match)
    {
        var note = HoleReport.Note(match);
        var status = match.Status switch
        {
            null => "not known",
            HoleStatus.Drilled => note is null ? "as drawn" : "made",
            // What is made is in order as far as it goes; other programs read shallow or wrong-size here.
            _ when match is { Unfinished: HoleUnfinished.NotTapped, IsHoleShallow: false } or { Unfinished: HoleUnfinished.NotReamed } => "not finished",
            _ => HoleReport.Word(match.Status)!,
        };
        return note is null ? status : $"{status}: {note}";
    }
}
