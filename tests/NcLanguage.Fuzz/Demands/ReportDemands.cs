using System.Text;
using System.Text.Json;
using System.Xml.Linq;
using NcLanguage.Checks.Analysis;
using NcLanguage.Fuzz.Cases;
using NcLanguage.Fuzz.Running;
using NcLanguage.Reports.Comparison;
using NcLanguage.Reports.Drawing;
using NcLanguage.Reports.Findings;
using NcLanguage.Reports.Holes;
using NcLanguage.Reports.MotionView;
using NcLanguage.Reports.Sheet;
using NcLanguage.Reports.Trace;

namespace NcLanguage.Fuzz.Demands;

/// <summary>Everything that is written out can be written, and read again by whoever reads such files.</summary>
static class ReportDemands
{
    /// <summary>Moves that the motion view keeps here; a block may make millions.</summary>
    const int MostMoves = 20_000;

    public static void Written(CaseJob job, ProgramAnalysis analysis)
    {
        var (path, run) = (CaseJob.ProgramPath, analysis.Main);
        var moves = run.Results.ToArray().Sum(part => part.Cuts.Length + part.Holes.Length);
        var report = HoleReport.Of(path, run);
        Json("hole table", json => HoleJson.Write(report, json));
        using (var csv = new StringWriter())
            HoleCsv.Write(report, csv);
        var file = FindingReader.Read(path, analysis);
        var totals = new CheckTotals();
        totals.Add(file);
        Json("findings", json => Tell(new CheckJson(json), file, totals));
        Json("findings for others", json => Tell(new CheckSarif("0", json), file, totals));
        using (var lines = new StringWriter())
        {
            Tell(new CheckAnnotations(lines), file, totals);
            Demand.Equal(analysis.Findings.Length, lines.ToString().Count(sign => sign == '\n'), "a line for each finding");
        }
        if (moves <= MostMoves)
            Json("trace", json => TraceJson.Write(path, analysis.Text, run.Job, json, default));
        var recording = MotionRecording.Create(path, analysis.Text, run.Job, default, MostMoves);
        Xml("drawing", MotionDrawing.Of(recording, ProjectionMethod.ThirdAngle));
        var page = Encoding.UTF8.GetString(MotionPage.Write(recording, ProjectionMethod.FirstAngle));
        Demand.That(page.EndsWith("</html>\n", StringComparison.Ordinal) || page.EndsWith("</html>", StringComparison.Ordinal), "a motion view is whole");
        var sheet = SetupSheet.Html(new SheetInput(path, analysis, job.Inputs.Problems, DateTimeOffset.UnixEpoch), default);
        foreach (var (html, what) in new[] { (page, "motion view"), (sheet, "setup sheet") })
            Demand.That(!html.Contains("<script>alert", StringComparison.OrdinalIgnoreCase) && !html.Contains("<b>&amp;", StringComparison.Ordinal), $"text of a program is no markup: {what}");
        if (moves > MostMoves)
            return;
        var self = new ComparedProgram(path, analysis.Text, run.Job);
        var comparison = ComparisonReport.Of(self, self, default);
        Demand.That(comparison.IsSame, "a program moves as itself", () => string.Join("\n", comparison.Motion.Changes.Take(3)));
        Json("comparison", json => ComparisonJson.Write(comparison, json));
    }

    static void Tell(ICheckWriter writer, ReportedFile file, CheckTotals totals)
    {
        writer.Write(file);
        writer.End(totals);
    }

    static void Json(string what, Action<Utf8JsonWriter> write)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream))
            write(json);
        try
        {
            using var _ = JsonDocument.Parse(stream.ToArray());
        }
        catch (JsonException e)
        {
            throw new FuzzFault($"what is written can be read: {what}", e.Message);
        }
    }

    static void Xml(string what, string text)
    {
        try
        {
            XDocument.Parse(text);
        }
        catch (System.Xml.XmlException e)
        {
            throw new FuzzFault($"what is written can be read: {what}", e.Message);
        }
    }
}
