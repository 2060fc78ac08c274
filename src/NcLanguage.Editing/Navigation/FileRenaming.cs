using System.Globalization;
using NcLanguage.Checks;
using NcLanguage.Control.Flow;

namespace NcLanguage.Editing;

/// <summary>What has to change when a file gets another name by whose number programs call it: the calls, and the program's own number.</summary>
public static class FileRenaming
{
    /// <summary>None where the names hold no numbers or the same.</summary>
    /// <param name="programs">All programs of the folder, the file itself included.</param>
    /// <param name="from">Path of the file.</param>
    /// <param name="to">Path it gets, in the same folder.</param>
    public static IReadOnlyList<FileEdit> Of(IReadOnlyList<FolderProgram> programs, string from, string to)
    {
        ArgumentNullException.ThrowIfNull(programs);
        var edits = new List<FileEdit>();
        if (programs.FirstOrDefault(program => program.Path == from) is not { CalledBy: >= 0 and var number } file
            || (file with { Path = to }).CalledBy is not (>= 0 and var newNumber) || newNumber == number || Path.GetDirectoryName(from) != Path.GetDirectoryName(to))
            return edits;
        foreach (var program in programs)
        {
            // One that holds a program of this number itself calls that one.
            if (program.Path != from && FlowText.Of(program.Text, null).LinesOfProgram(number) is not null)
                continue;
            foreach (var use in SymbolReader.In(program.Text))
                if (use.Symbol == new ProgramSymbol(NamedKind.Program, number))
                    edits.Add(new FileEdit(program.Path, new Edit(use.Line, use.Start, use.End, Digits(newNumber, use.End - use.Start, number))));
        }
        return edits;
    }

    // O0012 stays four digits long, P12 as short as it is.
    static string Digits(int number, int written, int before) =>
        number.ToString(written > before.ToString(CultureInfo.InvariantCulture).Length ? new string('0', written) : "0", CultureInfo.InvariantCulture);
}
