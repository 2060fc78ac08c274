using System.Globalization;
using System.Text;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Codes;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing;

/// <summary>An edit in a file: in the text asked about where the path is null.</summary>
public sealed record FileEdit(string? Path, Edit Edit);

/// <summary>The edits of a renaming, or why there can be none.</summary>
/// <param name="Refusal">One sentence for the person; null where the edits stand.</param>
/// <param name="Files">Files to be named anew, since calls find them by the number: path and new path.</param>
public sealed record RenameAnswer(string? Refusal, IReadOnlyList<FileEdit> Edits, IReadOnlyList<(string From, string To)> Files)
{
    internal static RenameAnswer No(string why) => new(why, [], []);
}

/// <summary>Renames block numbers, programs, loops and variables, wherever they stand, and nothing that only may be meant.</summary>
public sealed class Renaming(ProgramAnalysis analysis, string? path, IProgramFolder? folder)
{
    const int LargestBlockNumber = 99_999;

    readonly Symbols _symbols = new(analysis);

    /// <summary>What a renaming at a place would replace; null where nothing there can be renamed.</summary>
    public SymbolUse? Prepare(int line, int column) => _symbols.At(line, column) is { } use && IsNamed(use.Symbol) ? use : null;

    static bool IsNamed(ProgramSymbol symbol) => symbol.Kind switch
    {
        NamedKind.Variable => IsFree(symbol.Number),
        NamedKind.BlockNumber or NamedKind.Program or NamedKind.Loop or NamedKind.NamedVariable => true,
        _ => false,
    };

    /// <summary>Whether a variable is the program's and not the control's.</summary>
    static bool IsFree(int number) => VariableTable.Find(number) is { IsFree: true };

    /// <param name="line">From 0.</param>
    /// <param name="column">Byte column from 0.</param>
    /// <param name="newName">A number or name, with or without its letter or sign.</param>
    /// <param name="cancel">Stops the search.</param>
    public RenameAnswer Rename(int line, int column, string newName, CancellationToken cancel = default)
    {
        if (Prepare(line, column) is not { } place)
            return RenameAnswer.No("Nothing here has a number or name that could be changed everywhere at once.");
        if (Read(place.Symbol, newName.Trim()) is not var (symbol, text))
            return RenameAnswer.No(Asks(place.Symbol.Kind));
        var uses = _symbols.UsesOf(place, cancel);
        var others = path is null || folder is null ? [] : new FolderUses(analysis, path, folder, cancel).Of(place.Symbol).ToList();
        if (symbol != place.Symbol && WhyNot(place, symbol, others, cancel) is { } refusal)
            return RenameAnswer.No(refusal);
        var edits = new List<FileEdit>();
        foreach (var use in uses)
            edits.Add(new FileEdit(null, new Edit(use.Line, use.Start, use.End, text)));
        foreach (var (file, use) in others)
            edits.Add(new FileEdit(file.Path, new Edit(use.Line, use.Start, use.End, text)));
        return new RenameAnswer(null, edits, place.Symbol.Kind == NamedKind.Program ? FilesOf(place.Symbol.Number, symbol.Number, cancel) : []);
    }

    static (ProgramSymbol Symbol, string Text)? Read(ProgramSymbol old, string name)
    {
        if (old.Kind == NamedKind.NamedVariable)
        {
            var inner = name.StartsWith("#<", StringComparison.Ordinal) && name.EndsWith('>') ? name[2..^1] : name;
            return inner.Length > 0 && inner.All(sign => char.IsAsciiLetterOrDigit(sign) || sign is '_' or '-') && char.IsAsciiLetter(inner.TrimStart('_').FirstOrDefault('0'))
                ? (old with { Name = Variables.NameIn(Encoding.UTF8.GetBytes(inner)) }, inner)
                : null;
        }
        var letters = old.Kind switch { NamedKind.BlockNumber => "Nn", NamedKind.Program => "Oo:", NamedKind.Variable => "#", _ => "" };
        var digits = name.Length > 0 && letters.Contains(name[0], StringComparison.Ordinal) ? name[1..] : name;
        if (!int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out var number) || digits.Length > 8)
            return null;
        var most = old.Kind switch { NamedKind.BlockNumber => LargestBlockNumber, NamedKind.Loop => 999, _ => 99_999_999 };
        return number > most || (number == 0 && old.Kind != NamedKind.BlockNumber) ? null : (old with { Number = number }, digits);
    }

    static string Asks(NamedKind kind) => kind switch
    {
        NamedKind.BlockNumber => "A block number is a whole number from 0 to 99999.",
        NamedKind.Program => "A program's number is a whole number above 0.",
        NamedKind.Loop => "The number of a loop is a whole number above 0.",
        NamedKind.Variable => "A variable's number is a whole number above 0.",
        _ => "A variable's name begins with a letter or _ and goes on with letters, digits, _ or -.",
    };

    /// <summary>Why the new number cannot be had; null where it can.</summary>
    string? WhyNot(SymbolUse place, ProgramSymbol wanted, List<(FolderProgram, SymbolUse)> others, CancellationToken cancel)
    {
        var (first, end) = _symbols.ScopeOf(place);
        if (wanted.Kind == NamedKind.Loop)
            return WhyNotLoop(place, wanted);
        if (place.Symbol is { Kind: NamedKind.Variable, Number: <= Variables.LastLocal } && MayBeArgument(cancel) is { } why)
            return why;
        if (place.Symbol.LineIn(analysis.Setup) is not null)
            return $"The setup gives {Shown(place.Symbol)} its value: change it there too, then here by hand.";
        if (wanted.LineIn(analysis.Setup) is not null)
            return $"The setup gives {Shown(wanted)} a value, which the program would begin with.";
        if (wanted.Kind == NamedKind.Variable && !IsFree(wanted.Number))
            return $"#{wanted.Number} belongs to the control.";
        if (wanted.Kind == NamedKind.Variable && wanted.Number <= Variables.LastLocal != place.Symbol.Number <= Variables.LastLocal)
            return $"#1 to #{Variables.LastLocal} belong to one program alone, the others are shared: #{wanted.Number} would not mean the same.";
        if (_symbols.Uses(wanted, first, end, cancel) is [var taken, ..])
            return $"{Shown(wanted)} is in use already, in line {taken.Line + 1}.";
        if (wanted.Kind is NamedKind.Variable && Computed(first, end, NamedKind.Variable) is >= 0 and var computed)
            return $"Line {computed + 1} works out the number of a variable: whether {Shown(place.Symbol)} is meant there is not known.";
        if (wanted.Kind is NamedKind.BlockNumber && Computed(first, end, NamedKind.BlockNumber) is >= 0 and var jump)
            return $"Line {jump + 1} works out the number that it jumps to: whether {Shown(place.Symbol)} is meant there is not known.";
        if (path is not null && folder is not null && wanted.Kind == NamedKind.Program)
            foreach (var file in folder.Others(cancel))
                if (file.CalledBy == wanted.Number)
                    return $"{Path.GetFileName(file.Path)} has that number.";
        if (wanted.Kind == NamedKind.BlockNumber && LedBackTo(place, cancel) is { } back)
            return back;
        return wanted.Kind == NamedKind.Program ? null : TakenBeside(wanted, others, cancel);
    }

    /// <summary>M99 P leads from a called program to a block of the one that called it, wherever that stands.</summary>
    string? LedBackTo(SymbolUse place, CancellationToken cancel)
    {
        const string Why = "leads back into the program that called it, by this number: it cannot be changed at one end alone.";
        var (first, end) = _symbols.ScopeOf(place);
        var uses = _symbols.Uses(place.Symbol, first, end, cancel);
        // Where the number stands in the same program, and nobody calls that, M99 P leads there: the program begins anew.
        var stands = uses.Any(use => use.Role == UseRole.Definition);
        if (!stands && WaysBack.IsWayBack(analysis.Text, place))
            return $"The P of M99 {Why}";
        var back = new WaysBack(analysis, _symbols, path, folder, cancel);
        foreach (var use in uses)
            if (back.TargetsOf(use) is not null)
                return use.Line == place.Line ? $"The P of M99 {Why}" : $"M99 in line {use.Line + 1} {Why}";
        foreach (var use in SymbolReader.In(analysis.Text, cancel))
            if (use.Symbol == place.Symbol && (use.Line < first || use.Line >= end) && WaysBack.IsWayBack(analysis.Text, use))
                return $"M99 in line {use.Line + 1} {Why}";
        if (path is null || folder is null)
            return null;
        foreach (var file in folder.Others(cancel))
            foreach (var use in SymbolReader.In(file.Text, cancel))
                if (use.Symbol == place.Symbol && WaysBack.IsWayBack(file.Text, use))
                    return $"M99 in line {use.Line + 1} of {Path.GetFileName(file.Path)} {Why}";
        return null;
    }

    /// <summary>Loops within each other need numbers of their own.</summary>
    string? WhyNotLoop(SymbolUse place, ProgramSymbol wanted)
    {
        var lines = _symbols.UsesOf(place).Select(use => use.Line).ToList();
        foreach (var (first, last) in _symbols.Flow.Structures())
            if (first <= lines[^1] && last >= lines[0] && _symbols.Uses(wanted, first, first + 1, default).Count > 0)
                return $"A loop with the number {wanted.Number} begins in line {first + 1}, and one lies in the other.";
        return null;
    }

    /// <summary>#1 to #33 take what the words of a call hand over: which, hangs on their letters.</summary>
    string? MayBeArgument(CancellationToken cancel)
    {
        const string Why = "A call by G65 may hand this variable its value by a letter: it cannot be given another number alone.";
        const string Shared = "A program called by M98 has the same #1 to #33 as the one that calls it: this variable cannot be given another number alone.";
        if (_symbols.Flow.IsCalled)
            return Why;
        for (var line = 0; line < analysis.Text.LineCount; line++)
        {
            if (line % 4096 == 0)
                cancel.ThrowIfCancellationRequested();
            foreach (ref readonly var token in analysis.Main.BlockAt(line).Tokens)
            {
                if (token.IsWord('G') && token.Value == 65)
                    return Why;
                if (token.IsWord('M') && token.Value == 98)
                    return Shared;
            }
        }
        return null;
    }

    /// <summary>The programs that the run comes to may use the new number already, also those that do not use the old one.</summary>
    string? TakenBeside(ProgramSymbol wanted, List<(FolderProgram File, SymbolUse)> others, CancellationToken cancel)
    {
        if (path is not null && folder is not null)
            foreach (var (file, use) in new FolderUses(analysis, path, folder, cancel).Of(wanted))
                return $"{Shown(wanted)} is in use already, in line {use.Line + 1} of {Path.GetFileName(file.Path)}.";
        foreach (var file in others.Select(other => other.File).Distinct())
            foreach (var use in SymbolReader.In(file.Text, cancel))
                if (use.Symbol == wanted)
                    return $"{Shown(wanted)} is in use already, in line {use.Line + 1} of {Path.GetFileName(file.Path)}.";
        return null;
    }

    int Computed(int first, int end, NamedKind kind)
    {
        for (var line = first; line < end; line++)
        {
            var block = analysis.Main.BlockAt(line);
            if (kind == NamedKind.Variable ? SymbolReader.HasComputedVariable(block) : SymbolReader.HasComputedJump(block))
                return line;
        }
        return -1;
    }

    static string Shown(ProgramSymbol symbol) => symbol.Kind switch
    {
        NamedKind.BlockNumber => "N" + Say.Number(symbol.Number),
        NamedKind.Program => "O" + Say.Number(symbol.Number),
        _ => symbol.VariableName,
    };

    /// <summary>The file that calls find by the number gets the new one, with four digits or as it is, as before: O0012.nc, 12.nc.</summary>
    List<(string From, string To)> FilesOf(int number, int newNumber, CancellationToken cancel)
    {
        if (path is null || number == newNumber)
            return [];
        // A number that this text holds a program of leads nowhere else; its own file goes along where it is named by it.
        var own = new FolderProgram(path, analysis.Text);
        var files = _symbols.Flow.LinesOfProgram(number) is null ? (folder?.Others(cancel) ?? []).Append(own) : [own];
        var renamed = new List<(string, string)>();
        foreach (var file in files)
        {
            // A file that the number is only one program's of keeps its name.
            if (file.CalledBy != number)
                continue;
            var stem = Path.GetFileNameWithoutExtension(file.Path);
            var letter = char.IsAsciiDigit(stem[0]) ? "" : stem[..1];
            var digits = newNumber.ToString(stem.Length - letter.Length == 4 ? "0000" : "0", CultureInfo.InvariantCulture);
            renamed.Add((file.Path, Path.Combine(Path.GetDirectoryName(file.Path)!, letter + digits + Path.GetExtension(file.Path))));
        }
        return renamed;
    }
}
