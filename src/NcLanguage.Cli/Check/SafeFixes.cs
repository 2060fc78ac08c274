using System.Collections.Immutable;
using System.Text;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Cli.Common;
using NcLanguage.Cli.Files;
using NcLanguage.Reports.Findings;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Cli.Check;

/// <summary>Makes the fixes that are certain, again and again, until none is left: one may bring out the next.</summary>
static class SafeFixes
{
    const int MostRounds = 25;

    /// <exception cref="CannotRunException">The fixes do not come to an end.</exception>
    public static (ProgramAnalysis Analysis, ImmutableArray<AppliedFix> Applied) Apply(
        ProgramFile program, ProgramAnalysis analysis, CancellationToken cancel)
    {
        var applied = ImmutableArray.CreateBuilder<AppliedFix>();
        for (var round = 0; round < MostRounds; round++)
        {
            var taken = Choose(analysis);
            if (taken.Count == 0)
                return (analysis, applied.ToImmutable());
            applied.AddRange(taken.Select(choice => Describe(choice.Finding, choice.Fix, analysis.Text)));
            var text = TextEdits.Apply(analysis.Text, taken.SelectMany(choice => choice.Fix.Edits));
            analysis = ProgramAnalysis.Create(text, analysis.Setup, analysis.Machine, analysis.Options, cancel);
        }
        throw new CannotRunException($"the fixes of {program.Path} do not come to an end; nothing was written to it");
    }

    /// <summary>For every finding its first certain fix that changes the text, unless it meets one already chosen: that one waits for the next round.</summary>
    static List<(Finding Finding, Fix Fix)> Choose(ProgramAnalysis analysis)
    {
        var taken = new List<(Finding, Fix)>();
        var edits = new Dictionary<int, HashSet<Edit>>();
        foreach (var finding in analysis.Findings)
        {
            // A rule promises no more for any of its fixes than it says of itself.
            if (finding.Rule.Info.FixSafety != FixSafety.Safe)
                continue;
            var fix = analysis.FixesOf(finding).FirstOrDefault(fix => fix.Safety == FixSafety.Safe && fix.Edits.Any(edit => Changes(edit, analysis.Text)));
            if (fix is null || fix.Edits.Any(edit => On(edit.Line).Any(other => Meets(edit, other))))
                continue;
            // Two findings may share one fix.
            if (fix.Edits.All(edit => On(edit.Line).Contains(edit)))
                continue;
            foreach (var edit in fix.Edits)
                On(edit.Line).Add(edit);
            taken.Add((finding, fix));
        }
        return taken;

        HashSet<Edit> On(int line)
        {
            if (!edits.TryGetValue(line, out var onLine))
                edits[line] = onLine = [];
            return onLine;
        }
    }

    static bool Changes(Edit edit, SourceText text)
    {
        var line = text.Line(edit.Line);
        var end = Math.Min(edit.EndColumn, line.Length);
        return !line[Math.Min(edit.StartColumn, end)..end].SequenceEqual(Encoding.UTF8.GetBytes(edit.NewText));
    }

    static bool Meets(Edit a, Edit b) =>
        a != b && a.StartColumn <= b.EndColumn && b.StartColumn <= a.EndColumn;

    static AppliedFix Describe(Finding finding, Fix fix, SourceText text)
    {
        var (before, after) = (ImmutableArray.CreateBuilder<string>(), ImmutableArray.CreateBuilder<string>());
        foreach (var line in fix.Edits.GroupBy(edit => edit.Line).OrderBy(line => line.Key))
        {
            before.Add(text.LineText(line.Key));
            var changed = TextEdits.Apply(SourceText.From(text.Line(line.Key).ToArray()), line.Select(edit => edit with { Line = 0 }));
            for (var i = 0; i < changed.LineCount; i++)
                after.Add(changed.LineText(i));
        }
        return new AppliedFix(finding.Line + 1, fix.Title, before.ToImmutable(), after.ToImmutable());
    }
}
