using NcLanguage.Checks;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing;

/// <summary>Names of rules in a comment that silences one.</summary>
static class RuleItems
{
    /// <summary>Offers the names, those found in the comment's block and the next one first, with room for the reason.</summary>
    public static void Add(Spot spot, CompletionItems items)
    {
        var here = new HashSet<string>(StringComparer.Ordinal);
        foreach (var finding in spot.Analysis.Findings)
            if (finding.Line == spot.Line || finding.Line == spot.Line + 1)
                here.Add(finding.Name);
        var (hasReason, isClosed) = Rest(spot);
        foreach (var rule in RuleList.All)
        {
            var name = rule.Info.Name;
            // What is wrong in a setup file, or with such a comment itself, no comment silences.
            if (rule is SetupRule || name.StartsWith("allow-", StringComparison.Ordinal) || !name.StartsWith(spot.Place.Typed, StringComparison.OrdinalIgnoreCase))
                continue;
            var text = hasReason ? name : spot.TakesSnippets ? $"{name}: ${{1:reason}}{(isClosed ? "" : ")")}" : name + ": ";
            items.Add(here.Contains(name) ? 0 : 10, new CompletionEntry(name, CompletionKind.Rule, rule.Info.Title, text)
            {
                IsSnippet = !hasReason && spot.TakesSnippets, Topic = CompletionTopics.OfRule(rule.Info),
            });
        }
    }

    /// <summary>Whether a reason stands behind the name, and whether the comment has its closing bracket.</summary>
    static (bool HasReason, bool IsClosed) Rest(Spot spot)
    {
        var block = spot.Analysis.Main.BlockAt(spot.Line);
        foreach (ref readonly var token in block.Tokens)
            if (token.Start < spot.Place.Start && spot.Place.Start <= token.End && token.IsComment)
                return (block.Line[spot.Place.End..token.End].Contains((byte)':'), token.Kind == TokenKind.Comment);
        return (false, false);
    }
}
