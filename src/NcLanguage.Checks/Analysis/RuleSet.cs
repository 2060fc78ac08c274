using NcLanguage.Control.Execution;

namespace NcLanguage.Checks.Analysis;

/// <summary>The rules of an analysis, by what they look at.</summary>
public sealed class RuleSet
{
    public RuleSet(IEnumerable<Rule> rules)
    {
        Rule[] all = [.. rules];
        Step = [.. all.Where(rule => rule.Interest != StepEvents.None)];
        Text = [.. all.Where(rule => rule.ReadsText)];
        File = [.. all.Where(rule => rule.ReadsFile)];
    }

    /// <summary>Every rule there is.</summary>
    public static RuleSet All { get; } = new(RuleList.All);

    internal Rule[] Step { get; }

    internal Rule[] Text { get; }

    internal Rule[] File { get; }
}
