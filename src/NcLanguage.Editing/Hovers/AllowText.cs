using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing;

/// <summary>What a comment silences: the rule it names.</summary>
static class AllowText
{
    /// <summary>The text for a comment; null for one that asks for nothing, or names no rule.</summary>
    public static string? Of(in Block block, in Token token)
    {
        foreach (var allow in AllowComments.In(block))
            if (allow.StartColumn == token.Start && RuleList.Find(allow.Name)?.Info is { } rule)
                return $"**{rule.Name}** ({rule.Id}) {rule.Title}\n\n{rule.Finds}\n\n{rule.AtTheMachine}\n\n"
                    + $"This comment silences it in this block and the next.\n\nSource: {rule.Source}";
        return null;
    }
}
