using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Fuzz.Running;

namespace NcLanguage.Fuzz.Demands;

/// <summary>Findings, what they refer to and their fixes have places in the text, and say something.</summary>
static class FindingDemands
{
    /// <summary>Findings of one rule whose fixes are worked out: each may look at the whole program.</summary>
    const int MostOfRule = 12;

    public static void Sound(ProgramAnalysis analysis)
    {
        var ofRule = new Dictionary<Rule, int>();
        var before = (Line: 0, Column: 0);
        var threads = analysis.Main.Job.Setup.Holes.Select(hole => hole.Thread).OfType<string>().ToHashSet();
        foreach (var finding in analysis.Findings)
        {
            InText(analysis, finding.Line, finding.StartColumn, finding.EndColumn, finding.Name);
            Said(finding.Message, finding.Name, threads);
            Demand.That((finding.Line, finding.StartColumn).CompareTo(before) >= 0, "findings stand in the order of the text", () => finding.ToString());
            before = (finding.Line, finding.StartColumn);
            foreach (var related in analysis.Related(finding))
            {
                InText(analysis, related.Line, related.StartColumn, related.EndColumn, "related of " + finding.Name);
                Said(related.Message, "related of " + finding.Name, threads);
            }
            ofRule[finding.Rule] = ofRule.GetValueOrDefault(finding.Rule) + 1;
            if (ofRule[finding.Rule] > MostOfRule)
                continue;
            foreach (var fix in analysis.FixesOf(finding))
            {
                Said(fix.Title, "title of a fix of " + finding.Name);
                foreach (var edit in fix.Edits)
                    InText(analysis, edit.Line, edit.StartColumn, edit.EndColumn, "fix of " + finding.Name);
            }
        }
    }

    public static void InText(ProgramAnalysis analysis, int line, int start, int end, string what)
    {
        var holds = line >= 0 && line < analysis.Text.LineCount && start >= 0 && start <= end && end <= analysis.Text.Line(line).Length;
        Demand.That(holds, $"a place lies in the text: {what}", () => $"line {line}, {start} to {end}");
    }

    /// <summary>A text for people: no numbers that are none, no line ends.</summary>
    /// <param name="threads">Names of threads, which are told as the setup writes them, without quotes as on a drawing.</param>
    public static void Said(string text, string what, IReadOnlySet<string>? threads = null)
    {
        Demand.That(!string.IsNullOrWhiteSpace(text), $"something is said: {what}");
        Demand.That(!HoldsNoNumber(WithoutQuotes((threads ?? new HashSet<string>()).Aggregate(text, (rest, thread) => rest.Replace(thread, "", StringComparison.Ordinal)))), $"numbers are numbers: {what}", () => text);
        Demand.That(text.AsSpan().IndexOfAny('\r', '\n') < 0, $"one line is said: {what}", () => text);
    }

    /// <summary>What is quoted stands so in the program: NaN there is two letters that no number follows.</summary>
    static string WithoutQuotes(string text) => string.Concat(text.Split('"').Where((_, part) => part % 2 == 0));

    public static bool HoldsNoNumber(string text) => text.Contains("NaN", StringComparison.Ordinal) || text.Contains("Infinity", StringComparison.Ordinal) || text.Contains('∞', StringComparison.Ordinal);
}
