using NcLanguage.Machine.Cutting;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Cutting;

/// <summary>What the cutting data give for a tool of the setup in the setup's material.</summary>
public static class ToolRange
{
    /// <summary>How often a value may be the greatest of a range, or go into the least, before it counts as far outside.</summary>
    public const double Far = 2;

    /// <summary>Cutting speed, m/min; null where material, kind, tool material or diameter are not known, or the table has no row.</summary>
    public static CuttingRange? Speed(Setup setup, Tool tool)
    {
        ArgumentNullException.ThrowIfNull(setup);
        ArgumentNullException.ThrowIfNull(tool);
        return setup.Material is { } material && tool is { Kind: { } kind, Material: { } edge, Diameter: { } diameter }
            ? setup.Cutting.Speed(material, edge, kind, diameter)
            : null;
    }

    /// <summary>Feed per tooth where the table has it and the setup tells the teeth, else per turn; null as for the speed.</summary>
    public static FeedRange? Feed(Setup setup, Tool tool)
    {
        ArgumentNullException.ThrowIfNull(setup);
        ArgumentNullException.ThrowIfNull(tool);
        if (setup.Material is not { } material || tool is not { Kind: { } kind, Material: { } edge, Diameter: { } diameter })
            return null;
        if (tool.Flutes is { } teeth && setup.Cutting.FeedPerTooth(material, edge, kind, diameter) is { } perTooth)
            return new FeedRange(perTooth, teeth, IsPerTooth: true);
        return setup.Cutting.FeedPerTurn(material, edge, kind, diameter) is { } perTurn ? new FeedRange(perTurn, 1, IsPerTooth: false) : null;
    }

    /// <summary>Whether a value is far below a range, far above it, or neither: −1, 1, 0.</summary>
    public static int FarOutside(double value, in CuttingRange range) => value < range.Least / Far ? -1 : value > range.Greatest * Far ? 1 : 0;

    /// <summary>HSS drill of 8 mm</summary>
    public static string Describe(Tool tool, LengthText say)
    {
        ArgumentNullException.ThrowIfNull(tool);
        return $"{tool.Material} {ToolKindName.Words(tool.Kind!.Value)} of {say.Length(tool.Diameter!.Value)}";
    }
}

/// <summary>A range of feeds, mm per tooth or per turn.</summary>
/// <param name="Teeth">What the feed per turn is to be divided by; 1 for feeds per turn.</param>
public readonly record struct FeedRange(CuttingRange Range, int Teeth, bool IsPerTooth)
{
    /// <summary>per tooth, per turn</summary>
    public string Per => IsPerTooth ? "per tooth" : "per turn";
}
