using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Cutting;

/// <summary>How deep a tool can go, mm above its tip.</summary>
/// <param name="Depth">All of it.</param>
/// <param name="Holder">Where its holder begins; infinity where that is not known.</param>
/// <param name="Flutes">Where its flutes end.</param>
readonly record struct ToolReach(double Depth, double Holder, double Flutes)
{
    /// <summary>The reach of a tool; null where the setup does not give the length of its flutes.</summary>
    public static ToolReach? Of(Job job, Tool? tool)
    {
        if (tool is not { FluteLength: { } flutes })
            return null;
        var holder = job.ShapeOf(tool.Number).Cylinders[^1] is { Part: ToolPart.Holder } last ? last.Bottom : double.PositiveInfinity;
        return new ToolReach(tool.HasNeck ? holder : Math.Min(flutes, holder), holder, flutes);
    }
}
