using System.Globalization;
using NcLanguage.Checks;
using NcLanguage.Control.Flow;

namespace NcLanguage.Editing;

/// <summary>What a file's new name asks for.</summary>
/// <param name="Edits">What to change along with it.</param>
/// <param name="Refusal">Why nothing can be changed along with it, one sentence; null where there is no obstacle.</param>
public sealed record FileRenamingAnswer(IReadOnlyList<FileEdit> Edits, string? Refusal);

/// <summary>What has to change when a file gets another name by whose number programs call it: the calls, and the program's own number.</summary>
public static class FileRenaming
{
    /// <summary>No edits where the names hold no numbers or the same, and where the new number is another program's already: the calls would lead to that.</summary>
    /// <param name="programs">All programs of the folder, the file itself included.</param>
    /// <param name="from">Path of the file.</param>
    /// <param name="to">Path it gets, in the same folder.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static FileRenamingAnswer Of(IReadOnlyList<FolderProgram> programs, string from, string to, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(programs);
        var edits = new List<FileEdit>();
        if (programs.FirstOrDefault(program => program.Path == from) is not { CalledBy: >= 0 and var number } file
            || (file with { Path = to }).CalledBy is not (>= 0 and var newNumber) || newNumber == number || Path.GetDirectoryName(from) != Path.GetDirectoryName(to))
            return new(edits, null);
        if (programs.FirstOrDefault(program => program.Path != from && program.CalledBy == newNumber) is { } bearer)
            return Refuse(number, $"{Path.GetFileName(bearer.Path)} has the number {newNumber} already");
        foreach (var program in programs)
        {
            // One that holds a program of this number itself calls that one.
            if (program.Path != from && FlowText.Of(program.Text, null).LinesOfProgram(number) is not null)
                continue;
            var first = edits.Count;
            SymbolUse? taken = null;
            foreach (var use in SymbolReader.In(program.Text, cancel))
            {
                if (use.Symbol == new ProgramSymbol(NamedKind.Program, newNumber))
                    taken ??= use;
                if (use.Symbol == new ProgramSymbol(NamedKind.Program, number))
                    edits.Add(new FileEdit(program.Path, new Edit(use.Line, use.Start, use.End, Digits(newNumber, use.End - use.Start, number))));
            }
            if (taken is { } other && edits.Count > first)
                return Refuse(number, $"O{newNumber} is in use already, in line {other.Line + 1} of {Path.GetFileName(program.Path)}");
        }
        return new(edits, null);
    }

    static FileRenamingAnswer Refuse(int number, string why) => new([], $"The calls of program {number} were not changed along with its file: {why}.");

    // O0012 stays four digits long, P12 as short as it is.
    static string Digits(int number, int written, int before) =>
        number.ToString(written > before.ToString(CultureInfo.InvariantCulture).Length ? new string('0', written) : "0", CultureInfo.InvariantCulture);
}
