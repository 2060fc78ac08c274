using System.Collections.Immutable;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Machine.Cutting;

/// <summary>A material by its name, its other names and the family whose rows stand in where it has none of its own.</summary>
public sealed record CuttingMaterial(string Name, ImmutableArray<string> AlsoCalled, string? Family);

/// <summary>One row of the cutting data: ranges for the materials and tools it names. Lengths in mm; null where the row does not say.</summary>
public sealed record CuttingRow
{
    /// <summary>Empty for all materials.</summary>
    public ImmutableArray<string> Materials { get; init; } = [];

    /// <summary>Empty for all tool materials.</summary>
    public ImmutableArray<string> ToolMaterials { get; init; } = [];

    public ImmutableArray<ToolKind> Kinds { get; init; } = [];

    /// <summary>The tool diameters the row is for, mm; both ends count.</summary>
    public Limits? Diameter { get; init; }

    /// <summary>Cutting speed, m/min.</summary>
    public Limits? Speed { get; init; }

    /// <summary>Feed per turn, mm.</summary>
    public Limits? FeedPerTurn { get; init; }

    /// <summary>Feed per tooth, mm.</summary>
    public Limits? FeedPerTooth { get; init; }

    public string Source { get; init; } = "";
}
