using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Flow;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing;

/// <summary>What a P of M99 leads to: a block of each program that calls the one it stands in, in this text and in those beside it. Where nobody calls it, the block of its own
/// program (common practice).</summary>
sealed class WaysBack
{
    readonly Symbols _symbols;
    readonly ProgramText _own;
    readonly Lazy<List<ProgramText>> _texts;
    readonly CancellationToken _cancel;

    /// <param name="analysis">The program.</param>
    /// <param name="symbols">Its numbers.</param>
    /// <param name="path">Its file; null for a text never saved.</param>
    /// <param name="folder">The programs beside it; null for this text alone.</param>
    /// <param name="cancel">Stops the search.</param>
    public WaysBack(ProgramAnalysis analysis, Symbols symbols, string? path, IProgramFolder? folder, CancellationToken cancel)
    {
        _symbols = symbols;
        _cancel = cancel;
        _own = new ProgramText(null, analysis.Text, path is null ? -1 : new FolderProgram(path, analysis.Text).CalledBy, new(() => symbols.Flow));
        _texts = new(() => [_own, .. (path is null || folder is null ? [] : folder.Others(cancel)).Select(file => new ProgramText(file.Path, file.Text, file.CalledBy, new(() => FlowText.Of(file.Text, null))))]);
    }

    /// <summary>The block numbers of the callers that a place leads to, where it is the P of an M99 in a program that is called; null for anything else.</summary>
    public IReadOnlyList<TextPlace>? TargetsOf(SymbolUse place) => CallersOf(place) is { } callers
        ? [.. callers.SelectMany(call => BlockOf(call, place.Symbol)).Distinct()]
        : null;

    /// <summary>All uses of a block number that the P of an M99 ties together: it, and the uses in the programs that it leads back to, or, from one of them, every such P in the
    /// programs called there; a P that leads elsewhere is none of them. In the order of the files and lines. Null where no M99 matters to it.</summary>
    public IReadOnlyList<(string? Path, SymbolUse Use)>? UsesOf(SymbolUse place)
    {
        var programs = CallersOf(place)?.Select(call => (call.Text, call.Text.Flow.Value.LinesOfProgramAt(call.Line))).Distinct().ToList()
            ?? [(_own, _symbols.Flow.LinesOfProgramAt(place.Line))];
        var back = new List<(ProgramText Text, SymbolUse Use)>();
        foreach (var text in Reached(programs))
            foreach (var line in text.Flow.Value.Returns())
                foreach (var use in ReturnsIn(text, line, place.Symbol))
                    if (CallersOf(text, line).Any(call => programs.Exists(program => program.Item1 == call.Text && Holds(program.Item2, call.Line))))
                        back.Add((text, use));
        if (back.Count == 0 && !programs.Exists(program => LeadsAway(program.Item1, program.Item2, place.Symbol)))
            return null;
        var uses = programs.SelectMany(program => UsesIn(program.Item1, program.Item2, place.Symbol)).Concat(back);
        return [.. uses.Distinct().OrderBy(use => _texts.Value.IndexOf(use.Text)).ThenBy(use => use.Use.Line).ThenBy(use => use.Use.Start).Select(use => (use.Text.Path, use.Use))];
    }

    bool LeadsAway(ProgramText text, (int First, int End) lines, ProgramSymbol symbol) =>
        text.Flow.Value.Returns().Any(line => Holds(lines, line) && ReturnsIn(text, line, symbol).Any() && CallersOf(text, line).Any());

    /// <summary>Whether a use is the P of an M99.</summary>
    public static bool IsWayBack(SourceText text, SymbolUse use)
    {
        if (use is not { Symbol.Kind: NamedKind.BlockNumber, Role: UseRole.Read })
            return false;
        foreach (ref readonly var token in text.BlockAt(use.Line).Tokens)
            if (token.IsWord('M') && token.Value == 99)
                return true;
        return false;
    }

    List<Call>? CallersOf(SymbolUse place) =>
        IsWayBack(_own.Text, place) && CallersOf(_own, place.Line).ToList() is { Count: > 0 } callers ? callers : null;

    /// <summary>The calls of the program that a line lies in.</summary>
    IEnumerable<Call> CallersOf(ProgramText called, int line)
    {
        var (first, end) = called.Flow.Value.LinesOfProgramAt(line);
        var numbers = called.NumbersOf(first, end);
        if (called.CalledBy >= 0 && (numbers.Count > 0 || first == 0))
            numbers.Add(called.CalledBy);
        foreach (var text in _texts.Value)
        {
            _cancel.ThrowIfCancellationRequested();
            int[] leading = [.. numbers.Where(number => Called(text, number) is var (target, begins) && target == called && begins == first)];
            // Whoever asks whether there is any need not wait for the rest: nearly all have one number.
            foreach (var at in leading.Length == 1 ? text.CallsOf(leading[0]) : leading.SelectMany(text.CallsOf).Order())
                if (!(text == called && at >= first && at < end))
                    yield return new Call(text, at);
        }
    }

    /// <summary>The program that a call from a text runs: one of the text, else the one whose file the number names.</summary>
    (ProgramText Text, int First)? Called(ProgramText from, int number)
    {
        if (FirstOf(from, number) is { } here)
            return (from, here);
        return _texts.Value.Find(text => text != from && text.CalledBy == number) is { } file ? (file, FirstOf(file, number) ?? 0) : null;
    }

    static int? FirstOf(ProgramText text, int number) =>
        text.Flow.Value.LinesOfProgram(number) is var (first, _) ? text.Flow.Value.LinesOfProgramAt(first).First : null;

    /// <summary>The texts that hold what these programs call: one with no call in it leads nowhere.</summary>
    IEnumerable<ProgramText> Reached(List<(ProgramText Text, (int First, int End) Lines)> programs) =>
        programs.Exists(program => program.Text.Flow.Value.Calls().Any(line => Holds(program.Lines, line))) ? _texts.Value : [];

    static bool Holds((int First, int End) lines, int line) => line >= lines.First && line < lines.End;

    static IEnumerable<TextPlace> BlockOf(Call call, ProgramSymbol number)
    {
        var line = call.Text.Flow.Value.TargetOf(call.Line, number.Number);
        return line < 0 ? [] : SymbolReader.In(call.Text.Text, line, line + 1).Where(use => use.Symbol == number && use.Role == UseRole.Definition)
            .Select(use => new TextPlace(call.Text.Path, use.Line, use.Start, use.End));
    }

    static IEnumerable<SymbolUse> ReturnsIn(ProgramText text, int line, ProgramSymbol number) =>
        SymbolReader.In(text.Text, line, line + 1).Where(use => use.Symbol == number && use.Role == UseRole.Read);

    IEnumerable<(ProgramText Text, SymbolUse Use)> UsesIn(ProgramText text, (int First, int End) lines, ProgramSymbol symbol) =>
        SymbolReader.In(text.Text, lines.First, lines.End, _cancel).Where(use => use.Symbol == symbol && !(IsWayBack(text.Text, use) && CallersOf(text, use.Line).Any())).Select(use => (text, use));

    readonly record struct Call(ProgramText Text, int Line);

    /// <summary>A text and its calls, which are read once however many returns are asked about.</summary>
    /// <param name="path">Null for the text asked about.</param>
    /// <param name="calledBy">The number that calls find the file by; −1 where it has none.</param>
    sealed class ProgramText(string? path, SourceText text, int calledBy, Lazy<FlowText> flow)
    {
        readonly Lazy<ILookup<int, int>> _calls = new(() => flow.Value.Calls().SelectMany(line => SymbolReader.In(text, line, line + 1))
            .Where(use => use is { Symbol.Kind: NamedKind.Program, Role: UseRole.Call }).ToLookup(use => use.Symbol.Number, use => use.Line));

        readonly Lazy<List<(int Line, int Number)>> _programs = new(() => [.. flow.Value.NumberedPrograms().Select(program => (program.Line, program.Number))]);
        readonly Lazy<Dictionary<int, int>> _subroutines = new(() => flow.Value.Subroutines().GroupBy(routine => routine.First).ToDictionary(routines => routines.Key, routines => routines.First().Number));

        public string? Path => path;

        public SourceText Text => text;

        public int CalledBy => calledBy;

        public Lazy<FlowText> Flow => flow;

        /// <summary>The lines with a call of a number.</summary>
        public IEnumerable<int> CallsOf(int number) => _calls.Value[number];

        /// <summary>The numbers by which a program of these lines, the end excluded, or a subroutine is called.</summary>
        public HashSet<int> NumbersOf(int first, int end)
        {
            var numbers = new HashSet<int>();
            var at = _programs.Value.BinarySearch((first, int.MinValue));
            for (at = at < 0 ? ~at : at; at < _programs.Value.Count && _programs.Value[at].Line < end; at++)
                numbers.Add(_programs.Value[at].Number);
            if (_subroutines.Value.TryGetValue(first, out var subroutine))
                numbers.Add(subroutine);
            return numbers;
        }
    }
}
