using System.Globalization;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Cutting;
using NcLanguage.Reports.Findings;

namespace NcLanguage.Reports.Sheet;

/// <summary>What was found, what was looked at, and what was not.</summary>
static class SheetChecks
{
    /// <summary>Findings listed at most; how many there are more is said.</summary>
    const int Most = 60;

    public static void WriteFindings(SheetHtml page, SheetInput input)
    {
        var rows = input.Problems
            .Select(problem => (Severity: problem.Severity == Machine.Loading.ProblemSeverity.Error ? Severity.Error : Severity.Warning,
                Line: $"{problem.Line.ToString(CultureInfo.InvariantCulture)} of {SheetHead.Name(problem.Path)}", problem.Message, problem.Name))
            .Concat(input.Analysis.Findings.Select(finding => (finding.Severity, Line: SheetSay.Line(finding.Line, null), finding.Message, finding.Name)))
            .OrderBy(row => row.Severity).ToList();
        if (rows.Count == 0)
        {
            page.Paragraph("Nothing was found. That says no more than that nothing was found of what is looked for.");
            return;
        }
        var counts = rows.CountBy(row => row.Severity).ToDictionary();
        page.Paragraph(
            $"{Say.Count(counts.GetValueOrDefault(Severity.Error), "error")}, {Say.Count(counts.GetValueOrDefault(Severity.Warning), "warning")}, {Say.Count(counts.GetValueOrDefault(Severity.Note), "note")}."
            + (counts.GetValueOrDefault(Severity.Error) > 0 ? " A program with errors is not to be run." : ""),
            counts.GetValueOrDefault(Severity.Error) > 0 ? "loud" : null);
        page.Table("findings", "Findings, errors first", [new("what", IsText: true), new("line"), new("message", IsText: true), new("rule", IsText: true)],
            rows.Take(Most).Select(row => new[] { Word(row.Severity), row.Line, row.Message, row.Name }));
        if (rows.Count > Most)
            page.Paragraph($"{rows.Count - Most} more are not listed here: nclanguage check --format json tells them all.");
    }

    public static void WriteScope(SheetHtml page, ProgramAnalysis analysis, LengthText lengths)
    {
        page.Raw("<div class=\"halves\">\n<div>\n<h3>Checked</h3>\n");
        page.List(Checked(analysis, lengths));
        page.Raw("</div>\n<div>\n<h3>Not checked</h3>\n");
        page.List(NotChecked.Of(analysis).Concat(
        [
            "whatever stands on the table and is not in the setup file, and walls and bosses of the part itself",
            "whether tools, lengths and offsets at the machine are those of this sheet",
            "how well clamps hold, wear, chips, and how far tools and work give way",
        ]));
        page.Raw("</div>\n</div>\n");
    }

    static IEnumerable<string> Checked(ProgramAnalysis analysis, LengthText lengths)
    {
        var (setup, machine) = (analysis.Setup, analysis.Machine);
        yield return $"{Say.Count(analysis.Main.Blocks, "block")}: how they are written, what is in force at each, cycles and their levels";
        if (!setup.Obstacles.IsEmpty)
            yield return $"the way of every move from a known place past {Say.Count(setup.Obstacles.Length, "clamp or other obstacle", "clamps and other obstacles")}; nearer than {lengths.Length(setup.Clearance)} is told";
        else if (setup.ClampHeight is { } height)
            yield return $"traverses between holes against a clamp height of {lengths.Length(height)}";
        if (!setup.Supports.IsEmpty)
            yield return $"{Say.Count(setup.Supports.Length, "support")} under the work, against cuts that go through";
        if (setup.Stock is not null)
            yield return "rapids against what still stands of the stock";
        if (machine.TravelX is not null || machine.TravelY is not null || machine.TravelZ is not null)
            yield return "the machine's travel, where the machine coordinates of a move are known";
        if (machine.Spindle is not null || machine.MaxFeed is not null)
            yield return "speeds and feeds against the machine's limits";
        if (setup.Material is { } material && setup.Cutting.NameOf(material) is not null && !setup.Tools.IsEmpty)
            yield return $"cutting speed and feed for {material}, as far as the table of cutting data has them";
        else if (setup.Tools.Any(tool => ToolRange.Speed(setup, tool) is not null || ToolRange.Feed(setup, tool) is not null))
            yield return "cutting speed and feed, as far as the table of cutting data has rows for all materials";
        if (!setup.Holes.IsEmpty)
            yield return $"{Say.Count(setup.Holes.Length, "hole")} of the drawing"
                + (setup.Holes.Any(hole => hole.Thread is not null) ? "; threads count as deep as the tip of the tap goes, its lead (2 to 3 threads of a plug tap) is not taken off" : "");
    }

    static string Word(Severity severity) => severity switch
    {
        Severity.Error => SheetHtml.Alarm + "ERROR",
        Severity.Warning => "warning",
        _ => "note",
    };
}
