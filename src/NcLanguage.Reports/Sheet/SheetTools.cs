using NcLanguage.Checks;
using NcLanguage.Checks.Operations;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Reports.Sheet;

/// <summary>The tools as they have to stand in the carousel, and what each does.</summary>
static class SheetTools
{
    public static void Write(SheetHtml page, Setup setup, SheetRun run)
    {
        var used = run.Operations.Tools.Where(tool => tool.Tool != 0).ToList();
        if (used.Count == 0)
        {
            page.Paragraph("The program uses no tool.");
            return;
        }
        var say = run.Say;
        page.Table("tools", "Tools: what the setup file says of them",
            [
                new("tool", IsText: true), new("kind", IsText: true), new("diameter", say.Lengths.Unit), new("point", "°"), new("pitch", say.Lengths.Unit), new("flutes"), new("flute length", say.Lengths.Unit),
                new("length", say.Lengths.Unit), new("out of holder", say.Lengths.Unit), new("holder", say.Lengths.Unit), new("H"), new("D"), new("measured length", say.Lengths.Unit),
            ],
            used.Select(tool => Row(tool.Tool, setup.FindTool(tool.Tool), run, say)));
        page.Table("tool-work", "Tools: what each does",
            [new("tool", IsText: true), new("speed", "1/min"), new("feed", say.Lengths.FeedUnit), new("operations"), new("rapid", say.Lengths.Unit), new("cutting", say.Lengths.Unit), new("time", "s")],
            used.Select(tool => new[]
            {
                SheetSay.Tool(tool.Tool), SheetSay.Speeds(tool.Speed), say.Feeds(tool.Feed), Numbers(tool.Operations.Select(operation => operation.Number)),
                say.Rapid(tool.Totals), say.Cut(tool.Totals), SheetSay.Seconds(tool.Totals),
            }));
        var idle = setup.Tools.Where(tool => used.All(work => work.Tool != tool.Number)).Select(tool => $"T{tool.Number}").ToList();
        if (idle.Count > 0)
            page.Paragraph($"In the setup file, not used by this program: {string.Join(", ", idle)}.");
    }

    static string[] Row(int number, Tool? tool, SheetRun run, SheetSay say)
    {
        var (lengths, radii) = (run.LengthOffsetsOf(number).ToList(), run.RadiusOffsetsOf(number).ToList());
        var hasFlutes = tool is not { Kind: ToolKind.Probe } and not { Stands: true };
        return
        [
            SheetSay.Tool(number),
            tool is null ? "not in the setup file" : KindOf(tool),
            say.Given(tool?.Diameter),
            SheetSay.GivenNumber(tool?.PointAngle, tool?.Kind is ToolKind.Drill or ToolKind.SpotDrill or ToolKind.CentreDrill or ToolKind.Countersink or ToolKind.ChamferMill),
            say.Given(tool?.Pitch, tool?.Kind is ToolKind.Tap or ToolKind.ThreadMill),
            SheetSay.GivenNumber(tool?.Flutes, hasFlutes),
            say.Given(tool?.FluteLength, hasFlutes),
            say.Given(tool?.Length),
            say.Given(tool?.Length - tool?.HolderGauge),
            say.Given(tool?.HolderDiameter),
            lengths.Count == 0 ? "none" : Numbers(lengths),
            radii.Count == 0 ? SheetSay.None : Numbers(radii),
            "",
        ];
    }

    static string KindOf(Tool tool)
    {
        var kind = tool.Kind is { } known ? ToolKindName.Words(known) : "kind " + SheetSay.NotGiven;
        var parts = new List<string> { kind };
        if (tool.Material is { } material)
            parts.Add(material);
        if (tool.Stands && tool.Kind != ToolKind.Probe)
            parts.Add("spindle stands");
        return string.Join(", ", parts);
    }

    /// <summary>1, 3–5</summary>
    static string Numbers(IEnumerable<int> numbers)
    {
        var parts = new List<(int First, int Last)>();
        foreach (var number in numbers)
            if (parts.Count > 0 && parts[^1].Last == number - 1)
                parts[^1] = (parts[^1].First, number);
            else
                parts.Add((number, number));
        return string.Join(", ", parts.Select(part => part.First == part.Last ? $"{part.First}" : $"{part.First}–{part.Last}"));
    }
}
