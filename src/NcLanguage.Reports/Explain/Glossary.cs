using System.Collections.Immutable;
using System.Globalization;
using NcLanguage.Checks;
using NcLanguage.Control.Codes;
using NcLanguage.Machine.Loading;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Reports.Explain;

/// <summary>Everything that can be explained by its name.</summary>
public static class Glossary
{
    /// <summary>All explanations, group by group.</summary>
    public static ImmutableArray<Explanation> All { get; } =
    [
        .. RuleList.All.Select(RuleExplanation.Of),
        .. CodeTable.All.Select(CodeExplanation.Of),
        .. AddressTable.All.Select(LanguageExplanation.Of),
        .. StatementTable.All.Select(LanguageExplanation.Of),
        .. FunctionTable.All.Select(LanguageExplanation.Of),
        .. VariableTable.All.Select(LanguageExplanation.Of),
        .. SignTable.All.Select(LanguageExplanation.Of),
        .. ReadingTable.All.Select(ReadingExplanation.Of),
        .. ProgramMarkTable.All.Select(ReadingExplanation.Of),
        .. MemberExplanation.All(),
    ];

    /// <summary>What a name stands for; several where it has several meanings, none where it is not known. Case does not matter, nor do blanks
    /// and leading zeros in codes: g 081 is G81. A name that nothing has leads to what it is part of: #5221 to the row of that number.</summary>
    public static ImmutableArray<Explanation> Find(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        var wanted = name.Trim();
        if (AsCode(wanted) is { } code)
            return [.. All.Where(entry => entry.Kind == ExplainedKind.Code && entry.Name == code)];
        if (wanted.StartsWith('#') && int.TryParse(wanted.AsSpan(1), NumberStyles.None, CultureInfo.InvariantCulture, out var number))
            return VariableTable.Find(number) is { } variable ? [.. All.Where(entry => entry.Kind == ExplainedKind.Variable && entry.Name == variable.Text)] : [];
        // A variable goes by whatever name the program gives it.
        if (wanted is ['#', '<', .., '>'])
            return [.. All.Where(entry => entry.Kind == ExplainedKind.Sign && entry.Name == "#<name>")];
        ImmutableArray<Explanation> named = [.. All.Where(entry => Is(entry.Name, wanted) || (entry.Alias is { } alias && Is(alias, wanted)))];
        return named.IsEmpty ? [.. All.Where(entry => entry.AlsoFoundBy.Any(other => Is(other, wanted)))] : named;
    }

    /// <summary>Up to three names that may have been meant.</summary>
    public static ImmutableArray<string> Nearest(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        var wanted = AsCode(name.Trim()) ?? name.Trim();
        var names = All.SelectMany(entry => entry.Alias is null ? [entry.Name] : new[] { entry.Name, entry.Alias }).ToHashSet(StringComparer.Ordinal);
        var nearest = ImmutableArray.CreateBuilder<string>();
        while (nearest.Count < 3 && NearestName.Find(wanted, names) is { } next)
        {
            nearest.Add(next);
            names.Remove(next);
        }
        return nearest.ToImmutable();
    }

    static bool Is(string name, string wanted) => name.Equals(wanted, StringComparison.OrdinalIgnoreCase);

    /// <summary>A code as the table writes it, or null for anything else.</summary>
    static string? AsCode(string text)
    {
        var packed = text.Replace(" ", "", StringComparison.Ordinal).ToUpperInvariant();
        if (packed is not ['G' or 'M', _, ..] || !decimal.TryParse(packed.AsSpan(1), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number))
            return null;
        return packed[0] + number.ToString("0.#", CultureInfo.InvariantCulture);
    }
}
