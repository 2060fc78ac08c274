using System.Text.Json;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Flow;
using NcLanguage.Machine.Files;
using NcLanguage.Reports.Sheet;
using NcLanguage.Reports.Trace;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Reports.Tests.Sheet;

/// <summary>Every number on the sheet of every program of the corpus is that of its trace, to the last figure shown.</summary>
public sealed class SheetEqualsTraceTests
{
    public static TheoryData<string> Programs => [.. Directory.GetFiles(Corpus(), "*.nc", SearchOption.AllDirectories).Select(Path.GetFileName).OfType<string>().Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Programs))]
    public void Operations_tools_holes_and_approaches(string name)
    {
        var (page, trace) = Of(name);
        // The sheet is in the program's unit, the trace in mm: 1 in is 25.4 mm.
        var (unit, mm, length, feed, volume) = page.Text.Contains("program and sheet in inches", StringComparison.Ordinal) ? ("in", 25.4, 4, 2, 25.4 * 25.4 * 25.4) : ("mm", 1.0, 3, 1, 1000.0);
        var cubic = unit == "in" ? "removed in³" : "removed cm³";
        var operations = trace.GetProperty("operations").EnumerateArray().ToList();
        var shown = operations.Count > 0 ? page.Rows("operations") : [];
        Assert.Equal(operations.Count, shown.Count);
        foreach (var (row, operation) in shown.Zip(operations))
        {
            Same(row["no."], operation.GetProperty("number"), 0);
            Same(row["time s"].Replace("over ", "", StringComparison.Ordinal), operation.GetProperty("seconds"), 1);
            Assert.Equal(operation.GetProperty("unknownMoves").GetInt32() > 0, row["time s"].StartsWith("over ", StringComparison.Ordinal));
            Same(row[$"rapid {unit}"].Replace("over ", "", StringComparison.Ordinal), operation.GetProperty("distance").GetProperty("rapid"), 1, mm);
            Same(row[$"cutting {unit}"].Replace("over ", "", StringComparison.Ordinal), operation.GetProperty("distance").GetProperty("cut"), 1, mm);
            Same(row[$"deepest Z {unit}"], operation.GetProperty("deepest"), length, mm);
            Same(row["holes"], operation.GetProperty("holes"), 0);
            Same(row[$"nearest {unit}"], operation.TryGetProperty("clearance", out var clearance) ? clearance.GetProperty("distance") : default, length, mm);
            if (operation.TryGetProperty("removed", out var removed) && removed.ValueKind == JsonValueKind.Number)
                Assert.Equal(removed.GetDouble() / volume, SheetPage.Number(row[cubic]), 0.0051);
            SameRange(row["speed 1/min"], operation.GetProperty("speed"), 0);
            SameRange(row[$"feed {unit}/min"], operation.GetProperty("feed"), feed, mm);
            Assert.Equal(operation.GetProperty("title").GetString(), row["operation"]);
        }
        foreach (var (row, tool) in (operations.Count > 0 ? page.Rows("tool-work") : []).Zip(trace.GetProperty("tools").EnumerateArray()))
        {
            Same(row["time s"].Replace("over ", "", StringComparison.Ordinal), tool.GetProperty("seconds"), 1);
            SameRange(row["speed 1/min"], tool.GetProperty("speed"), 0);
        }
        var holes = trace.GetProperty("holes").EnumerateArray().ToList();
        Assert.Equal(holes.Count, holes.Count > 0 ? page.Rows("holes").Count : 0);
        foreach (var (row, hole) in (holes.Count > 0 ? page.Rows("holes") : []).Zip(holes))
            foreach (var (column, member, decimals) in new[] { ("X", "x", length), ("Y", "y", length), ("R", "rLevel", length), ("bottom", "bottom", length), ("leaves at", "returnTo", length), ("least", "leastReturn", length) })
                Same(row[$"{column} {unit}"], hole.GetProperty(member), decimals, mm);
        foreach (var (row, hole) in (holes.Count > 0 ? page.Rows("holes") : []).Zip(holes))
        {
            Same(row[$"feed {unit}/min"], hole.GetProperty("feed"), feed, mm);
            Same(row["speed 1/min"], hole.GetProperty("speed"), 0);
        }
        if (trace.TryGetProperty("approaches", out var approaches) && approaches.GetArrayLength() > 0)
            foreach (var (row, approach) in page.Rows("approaches").Zip(approaches.EnumerateArray()))
            {
                Same(row[$"distance {unit}"], approach.GetProperty("distance"), length, mm);
                Same(row["line"].Split(' ')[0], approach.GetProperty("line"), 0);
                Same(row[$"tip at X {unit}"], approach.GetProperty("at")[0], length, mm);
                Same(row[$"Z {unit}"], approach.GetProperty("at")[2], length, mm);
            }
        var seconds = trace.GetProperty("seconds").GetDouble();
        // Minutes have the seconds behind them; seconds alone are told once.
        if (operations.Count > 0)
            Assert.Contains(seconds < 60 ? $"In all {Shown(seconds, 1)} s: " : $"({Shown(seconds, 1)} s)", page.Text, StringComparison.Ordinal);
    }

    static void SameRange(string cell, JsonElement range, int decimals, double unit = 1)
    {
        var ends = cell.Split(" to ");
        Same(ends[0], range.GetProperty("least"), decimals, unit);
        Same(ends[^1], range.GetProperty("greatest"), decimals, unit);
    }

    /// <summary>A cell with words has no number in the trace; a dash also stands for none of a count.</summary>
    /// <param name="unit">What one of the cell's unit is in that of the trace.</param>
    static void Same(string cell, JsonElement number, int decimals, double unit = 1)
    {
        if (!double.TryParse(cell, System.Globalization.CultureInfo.InvariantCulture, out var shown))
        {
            Assert.True(number.ValueKind != JsonValueKind.Number || (cell == "–" && number.GetDouble() == 0), $"{cell} for {number}");
            return;
        }
        // Half of the last figure, and what the trace itself is rounded to.
        Assert.Equal(number.GetDouble() / unit, shown, 0.5 * Math.Pow(10, -decimals) + 1e-6);
    }

    static string Shown(double value, int decimals) => NcLanguage.Checks.Say.Number(value, decimals);

    static (SheetPage Page, JsonElement Trace) Of(string name)
    {
        var path = Directory.GetFiles(Corpus(), name, SearchOption.AllDirectories).Single();
        var inputs = JobFiles.Resolve(path, Corpus(), DiskFiles.Instance, JobOptions.None);
        var analysis = ProgramAnalysis.Create(
            SourceText.From(File.ReadAllBytes(path)), inputs.Setup, inputs.Machine, new AnalysisOptions(Programs: new SiblingPrograms(path, DiskFiles.Instance)));
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream))
            TraceJson.Write(path, analysis.Text, analysis.Main.Job, json, CancellationToken.None);
        return (SheetPage.Of(new SheetInput(path, analysis, inputs.Problems, default)), JsonDocument.Parse(stream.ToArray()).RootElement);
    }

    static string Corpus([System.Runtime.CompilerServices.CallerFilePath] string here = "") => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", "..", "corpus"));
}
