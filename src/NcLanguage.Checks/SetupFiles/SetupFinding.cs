using NcLanguage.Machine.Loading;

namespace NcLanguage.Checks;

/// <summary>A mistake in a setup or machine file, shown like a finding: under the file's own path. Lines and columns count from 1, columns in UTF-16
/// code units; the end is the first place after it.</summary>
/// <param name="Replacement">The text that mends it in the place of the marked text; null where there is none.</param>
public sealed record SetupFinding(
    Rule Rule, Severity Severity, string Path, int Line, int Column, int EndLine, int EndColumn, string Message, string? Replacement);

/// <summary>Makes findings of what the readers of setup and machine files report.</summary>
public static class SetupFindings
{
    /// <summary>The finding for a problem: the rule is the one of the problem's name.</summary>
    public static SetupFinding Of(SetupProblem problem)
    {
        ArgumentNullException.ThrowIfNull(problem);
        var rule = RuleList.Find(problem.Name) ?? throw new ArgumentException($"There is no rule {problem.Name}.", nameof(problem));
        return new SetupFinding(
            rule, rule.Info.Severity, problem.Path, problem.Line, problem.Column, problem.EndLine, problem.EndColumn, problem.Message, problem.Replacement);
    }
}
