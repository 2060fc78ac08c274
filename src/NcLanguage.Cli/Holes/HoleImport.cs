using System.Text;
using NcLanguage.Checks;
using NcLanguage.Cli.Common;
using NcLanguage.Cli.Files;
using NcLanguage.Machine.Files;
using NcLanguage.Machine.Loading;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Cli.Holes;

/// <summary><c>holes --import FILE.csv</c>: the drawing's holes from a table of values, printed as the setup's "holes" or written into a setup file.</summary>
static class HoleImport
{
    /// <param name="isInch">The unit asked for, for columns that name none; null where none was: then it is that of the setup, or mm.</param>
    /// <exception cref="CannotRunException">The table or the setup cannot be read or written, has a mistake, or there are no holes; nothing is written then.</exception>
    public static int Run(string table, string? setup, bool? isInch)
    {
        var text = new UTF8Encoding(false).GetString(ProgramFile.Read(table).Text.ToBytes());
        var file = setup is not null && File.Exists(setup) ? ProgramFile.Read(setup) : null;
        var old = file?.Text.ToBytes();
        var inInch = isInch ?? (old is not null && SetupHoles.IsInch(old));
        var list = HoleListFile.Read(text, inInch);
        if (list.Unused.Length > 0)
            Application.Tell($"{table}, line 1: columns not used: {string.Join(", ", list.Unused)}");
        if (list.Mistakes.Length > 0)
        {
            foreach (var (line, message) in list.Mistakes)
                Application.Tell($"{table}, line {line}: {message}");
            throw new CannotRunException($"{table} has {(list.Mistakes.Length == 1 ? "a mistake" : $"{list.Mistakes.Length} mistakes")}, so nothing is written");
        }
        if (list.Holes.IsEmpty)
            throw new CannotRunException($"there are no holes in {table}, so nothing is written");
        if (setup is null)
        {
            Console.Out.WriteLine($"  \"holes\": {SetupHoles.Text(list.Holes, inInch, "\n")},");
            return ExitCode.Clean;
        }
        Write(setup, old, file?.Stamp, list);
        var unit = inInch ? "inches" : "mm";
        Console.Error.WriteLine($"{Say.Count(list.Holes.Length, "hole")} written to {ShownText.Of(setup)}" + (list.HasBareLengths ? $"; columns that name no unit were read as {unit}" : ""));
        return ExitCode.Clean;
    }

    static void Write(string setup, byte[]? old, FileStamp? read, HoleList list)
    {
        var merged = SetupHoles.Merge(old ?? Encoding.UTF8.GetBytes("{\n  \"units\": \"mm\"\n}\n"), list.Holes, out var error)
            ?? throw new CannotRunException($"{setup} cannot take the holes: {error}");
        if (old is not null)
            WrittenFile.Replace(setup, merged, read);
        else
            WrittenFile.Create(setup, merged);
    }
}
