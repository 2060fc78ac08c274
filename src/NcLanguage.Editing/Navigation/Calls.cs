using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Flow;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing;

/// <summary>A program or subroutine: its number, its lines (0-based, both included) and where the number stands; in the text asked about where the path is null.</summary>
public sealed record CalledProgram(string? Path, int Number, string Name, int FirstLine, int LastLine, TextStretch NumberAt);

/// <summary>Calls between two programs, each by the place of the number in the caller.</summary>
public sealed record CallsBetween(CalledProgram Other, IReadOnlyList<TextStretch> From);

/// <summary>Who calls whom: programs and subroutines of a text and of those beside it.</summary>
public sealed class Calls
{
    /// <summary>Lines of marks and comments that may stand above a program's number.</summary>
    const int LinesAboveNumber = 20;

    readonly string? _path;
    readonly SourceText _text;
    readonly IReadOnlyList<FolderProgram> _others;
    readonly CancellationToken _cancel;
    readonly Dictionary<SourceText, FlowText> _flows = [];
    readonly Dictionary<(int, string), CalledProgram?> _found = [];

    public Calls(ProgramAnalysis analysis, string? path, IProgramFolder? folder, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        _path = path;
        _text = analysis.Text;
        _others = path is null || folder is null ? [] : folder.Others(cancel);
        _cancel = cancel;
    }

    /// <summary>The program whose number stands at a place, or that the place lies in; null where the text has no program numbers.</summary>
    public CalledProgram? At(int line, int column)
    {
        foreach (var use in SymbolReader.In(_text, line, line + 1))
            if (use.Symbol.Kind == NamedKind.Program && column >= use.Start - 1 && column <= use.End && Find(use.Symbol.Number, null) is { } named)
                return named;
        return Around(_text, null, line);
    }

    /// <summary>The program that a line of a file lies in (the text asked about where the path is null); null where there is no such file or line.</summary>
    public CalledProgram? InFile(string? path, int line)
    {
        foreach (var (known, text) in Texts())
            if (known == path && line < text.LineCount)
                return Around(text, path, line);
        return null;
    }

    /// <summary>The calls that lead to a program.</summary>
    public IReadOnlyList<CallsBetween> To(CalledProgram program)
    {
        var calls = new List<(CalledProgram Caller, TextStretch From)>();
        foreach (var (path, text) in Texts())
            foreach (var use in SymbolReader.In(text, _cancel))
                if (IsCall(use) && use.Symbol.Number == program.Number && Find(use.Symbol.Number, path) is { } target && target.Path == program.Path
                    && target.FirstLine == program.FirstLine && Around(text, path, use.Line) is { } caller)
                    calls.Add((caller, Stretch(use)));
        return Grouped(calls);
    }

    /// <summary>The calls that a program makes, each with the program called.</summary>
    public IReadOnlyList<CallsBetween> From(CalledProgram program)
    {
        var text = Texts().First(file => file.Path == program.Path).Text;
        var calls = new List<(CalledProgram, TextStretch)>();
        foreach (var use in SymbolReader.In(text, program.FirstLine, program.LastLine + 1, _cancel))
            if (IsCall(use) && Find(use.Symbol.Number, program.Path) is { } target)
                calls.Add((target, Stretch(use)));
        return Grouped(calls);
    }

    static bool IsCall(SymbolUse use) => use.Symbol.Kind == NamedKind.Program && use.Role == UseRole.Call;

    static TextStretch Stretch(SymbolUse use) => new(use.Line, use.Start, use.Line, use.End);

    static IReadOnlyList<CallsBetween> Grouped(IEnumerable<(CalledProgram Other, TextStretch From)> calls) =>
        [.. calls.GroupBy(call => call.Other).Select(group => new CallsBetween(group.Key, [.. group.Select(call => call.From)]))];

    IEnumerable<(string? Path, SourceText Text)> Texts() => _others.Select(file => ((string?)file.Path, file.Text)).Prepend((null, _text));

    /// <summary>A program called by its number from a file: in that file, else in the one that the number names.</summary>
    CalledProgram? Find(int number, string? from) =>
        _found.TryGetValue((number, from ?? ""), out var known) ? known : _found[(number, from ?? "")] = Search(number, from);

    CalledProgram? Search(int number, string? from)
    {
        foreach (var (path, text) in Texts())
            if (path == from && FlowOf(text).LinesOfProgram(number) is { } lines)
                return Program(text, path, lines.First, lines.End - 1);
        foreach (var (path, text) in Texts())
            if (path != from && (path ?? _path) is { } file && new FolderProgram(file, text).CalledBy == number)
                return Around(text, path, 0);
        return null;
    }

    FlowText FlowOf(SourceText text) => _flows.TryGetValue(text, out var flow) ? flow : _flows[text] = FlowText.Of(text, null);

    CalledProgram? Around(SourceText text, string? path, int line)
    {
        var (first, end) = FlowOf(text).LinesOfProgramAt(line);
        return end > first ? Program(text, path, first, end - 1) : null;
    }

    static CalledProgram Program(SourceText text, string? path, int first, int last)
    {
        // Marks and comments may stand above the number.
        foreach (var use in SymbolReader.In(text, first, Math.Min(last, first + LinesAboveNumber) + 1))
            if (use is { Symbol.Kind: NamedKind.Program, Role: UseRole.Definition })
                return new CalledProgram(path, use.Symbol.Number, ProgramNames.NameOf(text, use), first, last, Stretch(use));
        return new CalledProgram(path, -1, path is null ? "program" : Path.GetFileName(path), first, last, new TextStretch(first, 0, first, 0));
    }
}
