using System.Globalization;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.State;
using NcLanguage.Machine.Profiles;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Reports.Sheet;

/// <summary>What the sheet is about: program, machine, material, unit; and what every sheet must be read with.</summary>
static class SheetHead
{
    /// <summary>Lines looked at for the program's number.</summary>
    const int HeadLines = 100;

    public static void Write(SheetHtml page, SheetInput input, SheetRun run)
    {
        var (number, title) = ProgramOf(input.Analysis);
        page.Raw($"<header>\n<h1>Setup sheet: {SheetHtml.Text(Name(input.Path))}</h1>\n");
        if (title is not null)
            page.Paragraph(title, "title");
        var (machine, setup) = (input.Analysis.Machine, input.Analysis.Setup);
        page.Facts(
        [
            ("Program", number is null ? "no number" : number),
            ("File", input.Path),
            ("Sheet made", input.Made.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture)),
            ("Machine", machine.Name + (machine.IsChosen ? "" : " (nobody has chosen one: this is what is taken without)")),
            ("Setup file", setup.Path ?? "none"),
            ("Material", setup.Material ?? SheetSay.NotGiven),
            ("Stock", input.Analysis.Setup.Stock is { } stock ? run.Say.Size(stock) + (setup.Hollows.IsEmpty ? "" : $", {Say.Count(setup.Hollows.Length, "hollow")} in it") : SheetSay.NotGiven),
            ("Units", $"program and sheet in {run.Say.Lengths.UnitWord}; {run.Say.Lengths.FeedUnit}, 1/min, s"),
            ("Time", TimeOf(run)),
        ]);
        page.Raw("</header>\n");
        page.Raw("<aside role=\"note\">\n");
        page.Paragraph("A check is no proof. This sheet tells what was reckoned from the program and from the setup file, and nothing else.", "loud");
        page.Paragraph("Before the first part: single block, dry run above the part, a hand on feed hold. Local codes and licensed practice come first.");
        page.Raw("</aside>\n");
    }

    /// <summary>The file's name without its folders.</summary>
    public static string Name(string path) => path == "-" ? "standard input" : Path.GetFileName(path) is { Length: > 0 } name ? name : path;

    /// <summary>How the control is taken to read the program.</summary>
    public static void WriteReadings(SheetHtml page, MachineProfile machine)
    {
        page.Paragraph(machine.IsChosen
            ? "The control is taken to read the program so. Where yours reads otherwise, this sheet does not hold."
            : "Nobody has chosen a machine. The control is taken to read the program so; where yours reads otherwise, this sheet does not hold.");
        page.List(ReadingTable.All.Select(reading => $"{reading.Meaning.TrimEnd('.')}: {Lowered(reading.Of(machine.Readings).Meaning)}"), "columns");
    }

    // The words of a block keep their capitals.
    static string Lowered(string sentence) =>
        sentence.Length > 1 && char.IsUpper(sentence[0]) && char.IsLower(sentence[1]) ? char.ToLowerInvariant(sentence[0]) + sentence[1..] : sentence;

    static string TimeOf(SheetRun run) => Say.Seconds(run.Totals.Seconds)
        + (run.Totals.UnknownMoves > 0 ? $", and {Say.Count(run.Totals.UnknownMoves, "move")} of unknown time" : "")
        + (run.Stops.Count > 0 ? ", without the stops" : "");

    static (string? Number, string? Title) ProgramOf(ProgramAnalysis analysis)
    {
        for (var line = 0; line < Math.Min(HeadLines, analysis.Text.LineCount); line++)
        {
            var block = analysis.Main.BlockAt(line);
            if (block.ProgramNumberIndex is >= 0 and var number)
                return (block.StringOf(block.Tokens[number]), CommentText.In(block, 100));
        }
        return (null, null);
    }
}
