using NcLanguage.Checks.Clearance;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Tests.Clearance.Sampling;

/// <summary>A part of a tool as its outline shows it: a cylinder whose lower end may be a cone, radius and heights above the tip in mm.</summary>
/// <param name="Shoulder">Where the cone has the whole radius; as <paramref name="Low"/> for a flat end.</param>
/// <param name="High">May be infinite.</param>
readonly record struct Outline(double Radius, double Low, double Shoulder, double High);

/// <summary>A tool as the row of a setup draws it, worked out apart from the code under test.</summary>
sealed class SampledTool
{
    readonly int _shank, _holder;

    /// <param name="cones">True for the real outline, with the cone of the point angle; false for the stack of cylinders that counts.</param>
    public SampledTool(Tool row, bool cones = false)
    {
        var radius = row.Diameter!.Value / 2;
        var holder = row is { Length: not null, HolderGauge: not null, HolderDiameter: not null } ? row.Length.Value - row.HolderGauge.Value : double.PositiveInfinity;
        var cone = cones && row.PointAngle is { } angle ? radius / Math.Tan(angle / 2 / 180 * Math.PI) : 0;
        var flutes = Math.Min(Math.Max(row.FluteLength ?? double.PositiveInfinity, cone), holder);
        Parts.Add(new(radius, 0, cone, flutes));
        _shank = Parts.Count;
        if (flutes < holder)
            Parts.Add(new((row.ShankDiameter ?? row.Diameter.Value) / 2, flutes, flutes, holder));
        _holder = Parts.Count;
        if (double.IsFinite(holder))
            Parts.Add(new(row.HolderDiameter!.Value / 2, holder, holder, double.PositiveInfinity));
    }

    public List<Outline> Parts { get; private set; } = [];

    /// <summary>One part of a tool alone.</summary>
    public static SampledTool PartOf(Tool row, ToolPart part)
    {
        var tool = new SampledTool(row);
        var (first, end) = part switch { ToolPart.Cutting => (0, tool._shank), ToolPart.Shank => (tool._shank, tool._holder), _ => (tool._holder, tool.Parts.Count) };
        tool.Parts = tool.Parts[first..end];
        return tool;
    }
}
