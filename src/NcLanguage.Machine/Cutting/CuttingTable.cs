using System.Collections.Immutable;
using NcLanguage.Machine.Loading;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Machine.Cutting;

/// <summary>Cutting speeds and feeds by material, tool material, kind of tool and diameter. A user's table answers first; what it does not
/// say comes from the one in the executable.</summary>
public sealed class CuttingTable
{
    static readonly Lazy<CuttingTable> LazyBuiltIn = new(ReadBuiltIn);

    readonly ImmutableArray<CuttingMaterial> _materials;
    readonly ImmutableArray<CuttingRow> _rows;
    readonly CuttingTable? _behind;

    /// <param name="behind">The table that answers where this one has no row; null for none.</param>
    public CuttingTable(ImmutableArray<CuttingMaterial> materials, ImmutableArray<CuttingRow> rows, CuttingTable? behind)
    {
        _materials = materials;
        _rows = rows;
        _behind = behind;
    }

    /// <summary>The name of what rows are for that name no material, where that of the work is not known.</summary>
    const string AllMaterials = "all materials";

    enum Quantity { Speed, FeedPerTurn, FeedPerTooth }

    /// <summary>The table in the executable: published values, and common practice where that is all there is.</summary>
    public static CuttingTable BuiltIn => LazyBuiltIn.Value;

    /// <summary>Names of materials that can be asked for, without their other names.</summary>
    public IEnumerable<string> MaterialNames => _materials.Select(material => material.Name)
        .Concat(_rows.SelectMany(row => row.Materials)).Concat(_behind?.MaterialNames ?? []).Distinct(StringComparer.OrdinalIgnoreCase);

    /// <summary>Names of tool materials that rows ask for.</summary>
    public IEnumerable<string> ToolMaterialNames =>
        _rows.SelectMany(row => row.ToolMaterials).Concat(_behind?.ToolMaterialNames ?? []).Distinct(StringComparer.OrdinalIgnoreCase);

    /// <summary>Cutting speed, m/min; null where the table has no row.</summary>
    /// <param name="material">Null where it is not given.</param>
    /// <param name="toolMaterial">Null where it is not given.</param>
    /// <param name="diameter">Of the tool, mm.</param>
    public CuttingRange? Speed(string? material, string? toolMaterial, ToolKind kind, double diameter) =>
        Find(Quantity.Speed, material, toolMaterial, kind, diameter);

    /// <summary>Feed per turn, mm; null where the table has no row.</summary>
    /// <param name="material">Null where it is not given.</param>
    /// <param name="toolMaterial">Null where it is not given.</param>
    /// <param name="diameter">Of the tool, mm.</param>
    public CuttingRange? FeedPerTurn(string? material, string? toolMaterial, ToolKind kind, double diameter) =>
        Find(Quantity.FeedPerTurn, material, toolMaterial, kind, diameter);

    /// <summary>Feed per tooth, mm; null where the table has no row.</summary>
    /// <param name="material">Null where it is not given.</param>
    /// <param name="toolMaterial">Null where it is not given.</param>
    /// <param name="diameter">Of the tool, mm.</param>
    public CuttingRange? FeedPerTooth(string? material, string? toolMaterial, ToolKind kind, double diameter) =>
        Find(Quantity.FeedPerTooth, material, toolMaterial, kind, diameter);

    /// <summary>The name that the table has for a material, whatever other name, case or blanks it is written with; null where it is not known.</summary>
    public string? NameOf(string material) => Material(material)?.Name ?? RowName(material);

    /// <summary>Whether a row asks for tools of this material, whatever case or blanks it is written with.</summary>
    public bool KnowsToolMaterial(string toolMaterial) => ToolMaterialNames.Any(name => IsSame(name, toolMaterial));

    CuttingRange? Find(Quantity quantity, string? material, string? toolMaterial, ToolKind kind, double diameter)
    {
        if (!(diameter > 0))
            return null;
        var known = material is null ? null : NameOf(material);
        for (var table = this; table is not null; table = table._behind)
        {
            // The executable's rows for all come from metals: of a material that nobody has named to it they say nothing.
            if (known is null && ReferenceEquals(table, BuiltIn))
                return null;
            var name = known;
            // A circle of families would be the user's mistake: no chain is longer than this.
            for (var step = 0; step < 8; step++)
            {
                if (table.Union(quantity, name, toolMaterial, kind, diameter) is { } range)
                    return range;
                name = name is not null && Material(name)?.Family is { } family ? NameOf(family) : null;
                if (name is null)
                    break;
            }
        }
        return null;
    }

    /// <summary>From the least to the greatest that the rows of this table give; without a material those of its rows for all.</summary>
    CuttingRange? Union(Quantity quantity, string? material, string? toolMaterial, ToolKind kind, double diameter)
    {
        CuttingRange? found = null;
        foreach (var row in _rows)
        {
            var limits = quantity switch { Quantity.Speed => row.Speed, Quantity.FeedPerTurn => row.FeedPerTurn, _ => row.FeedPerTooth };
            if (limits is not { } own || !row.Kinds.Contains(kind) || !Names(row.ToolMaterials, toolMaterial)
                || (row.Diameter is { } sizes && (diameter < sizes.Min - Rounding || diameter > sizes.Max + Rounding)) || !IsFor(row, material))
                continue;
            found = found is not { } before ? new CuttingRange(own.Min, own.Max, material ?? AllMaterials, row.Source)
                : before with
                {
                    Least = Math.Min(before.Least, own.Min), Greatest = Math.Max(before.Greatest, own.Max),
                    Source = Joined(before.Source, row.Source),
                };
        }
        return found;
    }

    /// <summary>Two sources, one where the other is a part of it.</summary>
    static string Joined(string before, string source) => before.Contains(source, StringComparison.Ordinal) ? before
        : source.Contains(before, StringComparison.Ordinal) ? source : $"{before}; {source}";

    /// <summary>Lengths in mm that differ by less are one, whatever unit they were written in.</summary>
    const double Rounding = 1e-6;

    bool IsFor(CuttingRow row, string? material)
    {
        if (row.Materials.IsEmpty)
            return true;
        if (material is null)
            return false;
        foreach (var name in row.Materials)
            if (IsSame(NameOf(name) ?? name, material))
                return true;
        return false;
    }

    CuttingMaterial? Material(string name)
    {
        foreach (var material in _materials)
        {
            if (IsSame(material.Name, name))
                return material;
            foreach (var other in material.AlsoCalled)
                if (IsSame(other, name))
                    return material;
        }
        return _behind?.Material(name);
    }

    string? RowName(string name)
    {
        foreach (var row in _rows)
            foreach (var own in row.Materials)
                if (IsSame(own, name))
                    return own;
        return _behind?.RowName(name);
    }

    static bool Names(ImmutableArray<string> names, string? name)
    {
        foreach (var one in names)
            if (name is not null && IsSame(one, name))
                return true;
        return names.IsEmpty;
    }

    /// <summary>Whether two names are one, whatever case they are in and with or without blanks and hyphens.</summary>
    static bool IsSame(string a, string b)
    {
        var (i, j) = (0, 0);
        while (true)
        {
            while (i < a.Length && a[i] is ' ' or '-' or '_')
                i++;
            while (j < b.Length && b[j] is ' ' or '-' or '_')
                j++;
            if (i == a.Length || j == b.Length)
                return i == a.Length && j == b.Length;
            if (char.ToLowerInvariant(a[i++]) != char.ToLowerInvariant(b[j++]))
                return false;
        }
    }

    static CuttingTable ReadBuiltIn()
    {
        const string name = "cutting.json";
        using var stream = typeof(CuttingTable).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"{name} is not in this build.");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return CuttingFile.Read(name, bytes, behind: null).Table;
    }
}
