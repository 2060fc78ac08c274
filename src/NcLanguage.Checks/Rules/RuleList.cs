using System.Collections.Frozen;
using System.Collections.Immutable;

namespace NcLanguage.Checks;

/// <summary>All rules. The list is made at compile time from the classes of this project.</summary>
public static partial class RuleList
{
    public static ImmutableArray<Rule> All { get; } = [.. Create().OrderBy(rule => rule.Info.Id, StringComparer.Ordinal)];

    static readonly FrozenDictionary<string, Rule> ByName =
        All.SelectMany(rule => new[] { (Key: rule.Info.Name, rule), (Key: rule.Info.Id, rule) })
            .ToFrozenDictionary(entry => entry.Key, entry => entry.rule, StringComparer.OrdinalIgnoreCase);

    /// <summary>The rule of that name or number, or null.</summary>
    public static Rule? Find(string nameOrId) => ByName.GetValueOrDefault(nameOrId);

    private static partial Rule[] Create();
}
