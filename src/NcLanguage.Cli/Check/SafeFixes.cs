using System.Collections.Immutable;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Cli.Common;
using NcLanguage.Cli.Files;
using NcLanguage.Editing;
using NcLanguage.Reports.Findings;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Cli.Check;

/// <summary>Makes the fixes that are certain and says what each of them did.</summary>
static class SafeFixes
{
    /// <exception cref="CannotRunException">The fixes do not come to an end.</exception>
    public static (ProgramAnalysis Analysis, ImmutableArray<AppliedFix> Applied, ImmutableArray<LeftFix> Left) Apply(ProgramFile program, ProgramAnalysis analysis, CancellationToken cancel)
    {
        var fixes = CertainFixes.MakeAll(analysis, cancel);
        return fixes.HasEnded
            ? (fixes.Analysis, [.. fixes.Made.Select(made => Describe(made.Finding, made.Fix, made.Text))], [.. fixes.Left.Select(left => new LeftFix(left.Finding.Line + 1, left.Fix.Title, left.Finding.Name))])
            : throw new CannotRunException($"the fixes of {program.Path} do not come to an end; nothing was written to it");
    }

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
