using NcLanguage.Machine.Cutting;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Cutting;

/// <summary>What the cutting data give for a tool of the setup in the setup's material.</summary>
public static class ToolRange
{
    /// <summary>How often a value may be the greatest of a range, or go into the least, before it counts as far outside.</summary>
    public const double Far = 2;

    /// <summary>Cutting speed, m/min; null where kind or diameter are not known, the tool does not turn, or the table has no row for it in the setup's material.</summary>
    public static CuttingRange? Speed(Setup setup, Tool tool)
    {
        ArgumentNullException.ThrowIfNull(setup);
        ArgumentNullException.ThrowIfNull(tool);
        return tool is { Kind: { } kind, Diameter: { } diameter, Stands: false }
            ? setup.Cutting.Speed(setup.Material, tool.Material, kind, diameter)
            : null;
    }

    /// <summary>Feed per tooth where the table has it and the setup tells the teeth, else per turn; null as for the speed.</summary>
    public static FeedRange? Feed(Setup setup, Tool tool)
    {
        ArgumentNullException.ThrowIfNull(setup);
        ArgumentNullException.ThrowIfNull(tool);
        if (tool is not { Kind: { } kind, Diameter: { } diameter, Stands: false })
            return null;
        if (tool.Flutes is { } teeth && setup.Cutting.FeedPerTooth(setup.Material, tool.Material, kind, diameter) is { } perTooth)
            return new FeedRange(perTooth, teeth, IsPerTooth: true);
        return setup.Cutting.FeedPerTurn(setup.Material, tool.Material, kind, diameter) is { } perTurn ? new FeedRange(perTurn, 1, IsPerTooth: false) : null;
    }

    /// <summary>Whether a value is far below a range, far above it, or neither: −1, 1, 0.</summary>
    public static int FarOutside(double value, in CuttingRange range) => value < range.Least / Far ? -1 : value > range.Greatest * Far ? 1 : 0;

    /// <summary>HSS drill of 8 mm; drill of 8 mm where the setup does not give its material</summary>
    public static string Describe(Tool tool, LengthText say)
    {
        ArgumentNullException.ThrowIfNull(tool);
        return $"{(tool.Material is { } edge ? edge + " " : "")}{ToolKindName.Words(tool.Kind!.Value)} of {say.Length(tool.Diameter!.Value)}";
    }
}

/// <summary>A range of feeds, mm per tooth or per turn.</summary>
/// <param name="Teeth">What the feed per turn is to be divided by; 1 for feeds per turn.</param>
public readonly record struct FeedRange(CuttingRange Range, int Teeth, bool IsPerTooth)
{
    /// <summary>per tooth, per turn</summary>
    public string Per => IsPerTooth ? "per tooth" : "per turn";
}
