using System.Globalization;
using System.Text;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Cutting;
using NcLanguage.Checks.Rules;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Reports.Findings;

/// <summary>What a check leaves out because the setup does not say enough.</summary>
public static class NotChecked
{
    /// <summary>One clause each, what and why: what no program could have checked, and what this one meets.</summary>
    public static IEnumerable<string> Of(ProgramAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        return Of(analysis.Setup).Concat(OfProgram(analysis.Main).Distinct());
    }

    static IEnumerable<string> OfProgram(ProgramRun run)
    {
        var findings = run.Flow is { } flow ? flow.Findings : run.Results.ToArray().SelectMany(part => part.Findings);
        foreach (var finding in findings)
                if (finding.Rule is ToolSizeUnknown)
                    yield return finding.Value < 0
                        ? "clearance where the tool in the spindle is not known"
                        : FormattableString.Invariant($"clearance of T{finding.Value} (its diameter is not known)");
                else if (finding.Rule is PathNotKnown && finding.Text.StartsWith(PathNotKnown.Mark, StringComparison.Ordinal))
                    yield return "clearance under " + OffsetOf(finding.Text);
    }

    static string OffsetOf(string text)
    {
        var number = int.Parse(text.AsSpan(PathNotKnown.Mark.Length), CultureInfo.InvariantCulture);
        return number < 0 ? "G54.1 (the setup has no place for it)" : $"{WorkOffsetName.Format(number)} (where it lies in the setup's frame is not known)";
    }

    /// <summary>One clause each, what and why.</summary>
    public static IEnumerable<string> Of(Setup setup)
    {
        ArgumentNullException.ThrowIfNull(setup);
        if (!setup.IsPresent)
        {
            yield return "clearance to clamps and stock, tools and the drawing's holes (no setup file)";
            yield break;
        }
        if (!setup.ObstaclesAreKnown)
            yield return "clearance to clamps (not all of them could be read from the setup)";
        // A list that is there and empty says that nothing stands on the table.
        else if (!setup.ObstaclesAreListed && setup.ClampHeight is null)
            yield return "clearance to clamps (the setup lists none and gives no clampHeight)";
        else if (!setup.Obstacles.IsEmpty && setup.ClampHeight is not null)
            yield return "the clampHeight (it counts only where no obstacles are listed)";
        if (setup.Stock is null)
            yield return "the stock (the setup gives none)";
        if (setup.Tools.IsEmpty)
            yield return "tools (the setup lists none)";
        else if (setup.Tools.Any(tool => tool.HolderDiameter is null || tool.HolderGauge is null || tool.Length is null))
            yield return "the holders of some tools (the setup does not give their size)";
        foreach (var clause in OfCutting(setup))
            yield return clause;
        if (setup.Holes.IsEmpty)
            yield return "the drawing (the setup lists none of its holes)";
        var threads = setup.Holes.Select(hole => hole.Thread).OfType<string>().Distinct().ToLookup(thread => ThreadName.Read(thread)?.Pitch);
        if (threads[null].Any())
            yield return $"which thread is cut where the drawing asks for {Names(threads[null])} (metric and unified names are read, such as M8x1.25 and 1/4-20)";
        if (threads[double.NaN].Any())
            yield return $"the pitch of {Names(threads[double.NaN])} (the drawing gives none, and no coarse one is known)";
    }

    /// <summary>Materials that no row of the cutting data is for. One that the setup leaves out is no mistake: whoever wants no word on speeds gives none.</summary>
    static IEnumerable<string> OfCutting(Setup setup)
    {
        if (setup.Material is not { } material || setup.Tools.IsEmpty)
            yield break;
        if (setup.Cutting.NameOf(material) is null)
        {
            var isForSome = setup.Tools.Any(tool => ToolRange.Speed(setup, tool) is not null || ToolRange.Feed(setup, tool) is not null);
            yield return $"cutting speed and feed{(isForSome ? " but by rows for all materials" : "")} (the cutting data do not know the material {Names([material])})";
            yield break;
        }
        List<string> toolMaterials = [.. setup.Tools
            .Where(tool => tool is { Kind: not null, Material: { } edge, Diameter: not null } && !setup.Cutting.KnowsToolMaterial(edge) && ToolRange.Speed(setup, tool) is null)
            .Select(tool => tool.Material!).Distinct()];
        if (toolMaterials.Count > 0)
            yield return $"the cutting speed of tools of {Names(toolMaterials)} (the cutting data do not know {(toolMaterials.Count == 1 ? "it" : "them")})";
    }

    /// <summary>XY9, G1/4, Tr10x2 and 4 more</summary>
    static string Names(IEnumerable<string> texts)
    {
        const int Most = 3;
        var named = string.Join(", ", texts.Take(Most).Select(text => Quote.Text(Encoding.UTF8.GetBytes(text))));
        return texts.Count() is > Most and var count ? $"{named} and {count - Most} more" : named;
    }
}
