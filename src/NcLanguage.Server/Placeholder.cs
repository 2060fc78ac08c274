#pragma warning disable
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;

namespace NcLanguage.Editing
{
    internal sealed record HoverAnswer(string Markdown, int Line, int StartColumn, int EndColumn);
    internal static class Hover
    {
        public static HoverAnswer? At(ProgramAnalysis a, int line, int column) => a.Text.Line(line).Length == 0 ? null : new($"{line}:{column}", line, 0, a.Text.Line(line).Length);
    }
    internal sealed record HintAnswer(int Line, int Column, string Text, string? Tooltip);
    internal static class InlayHints
    {
        public static IReadOnlyList<HintAnswer> In(ProgramAnalysis a, int first, int last) => [];
    }
    internal enum OutlineKind { Program, Tool, Operation }
    internal sealed record OutlineItem(string Name, string? Detail, OutlineKind Kind, int FirstLine, int LastLine, IReadOnlyList<OutlineItem> Children);
    internal static class Outline
    {
        public static IReadOnlyList<OutlineItem> Of(ProgramAnalysis a) => [new("program", null, OutlineKind.Program, 0, a.Text.LineCount - 1, [])];
    }
    internal sealed record FixAnswer(string Title, Finding Finding, FixSafety Safety, IReadOnlyList<Edit> Edits);
    internal static class Fixes
    {
        public static IReadOnlyList<FixAnswer> In(ProgramAnalysis a, int first, int last) =>
            [.. a.Findings.Where(f => f.Line >= first && f.Line <= last).SelectMany(f => a.FixesOf(f).Select(fix => new FixAnswer(fix.Title, f, fix.Safety, fix.Edits)))];
        public static IReadOnlyList<Edit> AllSafe(ProgramAnalysis a) => [.. In(a, 0, int.MaxValue).Where(f => f.Safety == FixSafety.Safe).SelectMany(f => f.Edits)];
    }
}
