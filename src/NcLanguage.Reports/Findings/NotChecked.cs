using NcLanguage.Machine.Setups;

namespace NcLanguage.Reports.Findings;

/// <summary>What a check leaves out because the setup does not say enough.</summary>
public static class NotChecked
{
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
        else if (setup.Obstacles.IsEmpty && setup.ClampHeight is null)
            yield return "clearance to clamps (the setup lists none and gives no clampHeight)";
        if (setup.Stock is null)
            yield return "the stock (the setup gives none)";
        if (setup.Tools.IsEmpty)
            yield return "tools (the setup lists none)";
        else if (setup.Tools.Any(tool => tool.HolderDiameter is null || tool.HolderGauge is null || tool.Length is null))
            yield return "the holders of some tools (the setup does not give their size)";
        if (setup.Holes.IsEmpty)
            yield return "the drawing (the setup lists none of its holes)";
    }
}
