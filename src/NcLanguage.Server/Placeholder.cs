#pragma warning disable
using System.Collections.Immutable;
using System.Text;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Syntax.Text
{
    internal sealed class SourceText
    {
        private readonly byte[] _bytes;
        private readonly List<(int Start, int End)> _lines = [];
        private SourceText(byte[] bytes)
        {
            _bytes = bytes;
            int start = 0;
            for (int i = 0; i < bytes.Length; i++)
            {
                if (bytes[i] is not ((byte)'\n' or (byte)'\r')) continue;
                _lines.Add((start, i));
                if (bytes[i] == '\r' && i + 1 < bytes.Length && bytes[i + 1] == '\n') i++;
                start = i + 1;
            }
            _lines.Add((start, bytes.Length));
        }
        public static SourceText From(byte[] bytes) => new(bytes);
        public static SourceText From(string text) => new(Encoding.UTF8.GetBytes(text));
        public int Length => _bytes.Length;
        public int LineCount => _lines.Count;
        public ReadOnlySpan<byte> Line(int line) => _bytes.AsSpan(_lines[line].Start, _lines[line].End - _lines[line].Start);
        public int OffsetOf(int line, int column) => _lines[line].Start + column;
        public SourceText WithChange(int start, int end, ReadOnlySpan<byte> text) => new([.. _bytes.AsSpan(0, start), .. text, .. _bytes.AsSpan(end)]);
        public void WriteTo(Stream stream) => stream.Write(_bytes);
    }
}

namespace NcLanguage.Checks
{
    using NcLanguage.Syntax.Text;
    internal enum Severity { Note, Warning, Error }
    internal sealed record RelatedPlace(int Line, int StartColumn, int EndColumn, string Message);
    internal sealed record Finding(string Id, string Name, Severity Severity, int Line, int StartColumn, int EndColumn, string Message, IReadOnlyList<RelatedPlace> Related);
    internal sealed record AnalysisOptions;
    internal sealed class ProgramAnalysis
    {
        public required SourceText Text { get; init; }
        public required Setup Setup { get; init; }
        public required MachineProfile Machine { get; init; }
        public required IReadOnlyList<Finding> Findings { get; init; }
        public static ProgramAnalysis Create(SourceText text, Setup setup, MachineProfile machine, AnalysisOptions options, CancellationToken cancel)
        {
            List<Finding> findings = [];
            for (int line = 0; line < text.LineCount; line++)
            {
                cancel.ThrowIfCancellationRequested();
                int at = text.Line(line).IndexOf("X??"u8);
                if (at >= 0) findings.Add(new("NC1003", "number-malformed", Severity.Error, line, at, at + 3, "There is no number after X.", [new(0, 0, 1, "here")]));
            }
            return new() { Text = text, Setup = setup, Machine = machine, Findings = findings };
        }
        public ProgramAnalysis WithText(SourceText text, CancellationToken cancel) => Create(text, Setup, Machine, new(), cancel);
    }
}

namespace NcLanguage.Editing
{
    using NcLanguage.Checks;
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
    internal enum FixSafety { Safe, Unsafe }
    internal sealed record FixEdit(int Line, int StartColumn, int EndColumn, string NewText);
    internal sealed record FixAnswer(string Title, Finding Finding, FixSafety Safety, IReadOnlyList<FixEdit> Edits);
    internal static class Fixes
    {
        public static IReadOnlyList<FixAnswer> In(ProgramAnalysis a, int first, int last) =>
            [.. a.Findings.Where(f => f.Line >= first && f.Line <= last).Select(f => new FixAnswer("Write X0", f, FixSafety.Safe, [new(f.Line, f.StartColumn, f.EndColumn, "X0.")]))];
        public static IReadOnlyList<FixEdit> AllSafe(ProgramAnalysis a) => [.. In(a, 0, int.MaxValue).SelectMany(f => f.Edits)];
    }
}
