using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Editing.Tests.Support;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing.Tests.Navigation;

/// <summary>A program with a cursor, and answers written as places: line:columns 'text', lines and columns from 1.</summary>
sealed class Marked
{
    public ProgramAnalysis Analysis { get; }

    public int Line { get; }

    public int Column { get; }

    public Marked(string text, string? setup = null, AnalysisOptions? options = null)
    {
        text = text.ReplaceLineEndings("\n");
        var at = text.IndexOf(Editor.Cursor, StringComparison.Ordinal);
        Assert.True(at >= 0, "The program needs a cursor.");
        Line = text[..at].Count(c => c == '\n');
        Column = Encoding.UTF8.GetByteCount(text[(text[..at].LastIndexOf('\n') + 1)..at]);
        Analysis = Editor.Analyse(text.Remove(at, Editor.Cursor.Length), setup, options: options);
    }

    public string Place(TextPlace place) => place.Path is { } path
        ? $"{path} {place.Line + 1}"
        : Place(place.Line, place.StartColumn, place.EndColumn);

    public string Place(SymbolUse use) => Place(use.Line, use.Start, use.End);

    string Place(int line, int start, int end) => $"{line + 1} {Encoding.UTF8.GetString(Analysis.Text.Line(line)[start..end])}";

    public string Apply(IEnumerable<FileEdit> edits)
    {
        var lines = Analysis.Text.ToString().Split('\n');
        foreach (var edit in edits.Where(edit => edit.Path is null).Select(edit => edit.Edit).OrderByDescending(edit => (edit.Line, edit.StartColumn)))
            lines[edit.Line] = lines[edit.Line][..edit.StartColumn] + edit.NewText + lines[edit.Line][edit.EndColumn..];
        return string.Join('\n', lines);
    }
}

/// <summary>Programs beside one.</summary>
sealed class Beside(params (string Path, string Text)[] files) : IProgramFolder
{
    public IReadOnlyList<FolderProgram> Others(CancellationToken cancel) =>
        [.. files.Select(file => new FolderProgram(file.Path, SourceText.From(file.Text.ReplaceLineEndings("\n"))))];
}
