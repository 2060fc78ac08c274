using System.Collections.Immutable;

namespace NcLanguage.Machine.Setups;

/// <summary>The names by which a setup file calls the kinds of tool.</summary>
public static class ToolKindName
{
    /// <summary>All names, in the order of <see cref="ToolKind"/>.</summary>
    public static ImmutableArray<string> All { get; } =
    [
        "centre-drill", "spot-drill", "drill", "countersink", "counterbore", "reamer", "tap", "boring-bar", "end-mill", "ball-mill", "bull-mill",
        "chamfer-mill", "face-mill", "slot-mill", "thread-mill", "probe",
    ];

    /// <summary>The kind of that name, or null.</summary>
    public static ToolKind? Parse(string name) => All.IndexOf(name) is >= 0 and var index ? (ToolKind)index : null;

    /// <summary>The name of a kind.</summary>
    public static string Format(ToolKind kind) => All[(int)kind];

    /// <summary>The kind in running text: end mill.</summary>
    public static string Words(ToolKind kind) => Format(kind).Replace('-', ' ');
}
