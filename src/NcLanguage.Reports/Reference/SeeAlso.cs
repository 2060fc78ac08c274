using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Text.RegularExpressions;
using NcLanguage.Reports.Explain;

namespace NcLanguage.Reports.Reference;

/// <summary>Finds the pages that an explanation speaks of.</summary>
static partial class SeeAlso
{
    static readonly FrozenDictionary<string, Explanation> ByName = Glossary.All
        .Where(entry => entry.Kind is ExplainedKind.Rule or ExplainedKind.Code or ExplainedKind.Reading)
        .SelectMany(entry => new[] { (Key: entry.Name, entry), (Key: entry.Alias ?? entry.Name, entry) })
        .DistinctBy(pair => pair.Key)
        .ToFrozenDictionary(pair => pair.Key, pair => pair.entry, StringComparer.Ordinal);

    static readonly FrozenDictionary<char, Explanation> Addresses =
        Glossary.All.Where(entry => entry.Kind == ExplainedKind.Address).ToFrozenDictionary(entry => entry.Name[0]);

    /// <summary>The others to read, each once, in the order in which they are spoken of; never the explanation itself. Examples are not
    /// looked through: nearly every program sets the same modes.</summary>
    public static ImmutableArray<Explanation> Of(Explanation entry) =>
        [.. Named(entry).Concat(Words(entry)).Where(other => !ReferenceEquals(other, entry)).Distinct()];

    static IEnumerable<Explanation> Named(Explanation entry)
    {
        var spoken = entry.Sections.Where(section => !section.IsVerbatim).SelectMany(section => Names().Matches(section.Text)).Select(match => match.Value)
            .Concat(entry.Sections.SelectMany(section => ReadingNames().Matches(section.Text)).Select(match => match.Groups[1].Value))
            .Concat(entry.SeeAlso);
        foreach (var name in spoken)
            if (ByName.GetValueOrDefault(name) is { } other)
                yield return other;
    }

    /// <summary>The addresses of a code's own words.</summary>
    static IEnumerable<Explanation> Words(Explanation entry) => entry.Kind == ExplainedKind.Code
        ? entry.Sections.Where(section => section.IsVerbatim).SelectMany(section => section.Text.Split('\n')).Select(line => Addresses[line[0]])
        : [];

    // A code, the number of a rule, or words joined by hyphens.
    [GeneratedRegex(@"\b[GM]\d{1,3}(\.\d)?\b(?!\.\d)|\bNC\d{4}\b|\b[a-z]+(-[a-z]+)+\b")]
    private static partial Regex Names();

    [GeneratedRegex(@"\breadings? ([a-z][A-Za-z]+)")]
    private static partial Regex ReadingNames();
}
