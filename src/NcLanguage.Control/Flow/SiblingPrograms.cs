using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Globalization;
using NcLanguage.Machine.Files;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Control.Flow;

/// <summary>Finds called programs beside the calling one: files of its folder that are named by the program's number, such as O1200.nc, 1200.nc or o0012.nc.</summary>
/// <param name="programPath">The calling program.</param>
/// <param name="files">How files are read.</param>
/// <param name="onLook">Gets each place before it is looked at, and whether a link stands there that is refused: what changes meanwhile then counts as changed.</param>
public sealed class SiblingPrograms(string programPath, IFileAccess files, Action<string, bool>? onLook = null) : ICalledPrograms
{
    /// <summary>The endings that files of programs have, with their point.</summary>
    public static ImmutableArray<string> Extensions { get; } = [".nc", ".cnc", ".tap", ".iso", ".eia", ".ncp"];

    readonly string _folder = Path.GetDirectoryName(Path.GetFullPath(programPath)) ?? ".";
    readonly string _extension = Path.GetExtension(programPath);

    // Asked for at each run of a call, and by rules on other threads.
    readonly ConcurrentDictionary<int, string?> _whyNotRead = new();

    public CalledFile? Find(int number)
    {
        var (file, why) = Look(number);
        _whyNotRead[number] = why;
        return file;
    }

    public string? WhyNotRead(int number) => _whyNotRead.GetOrAdd(number, asked => Look(asked).WhyNotRead);

    /// <summary>The first file that can be read; else why the first that stands there cannot.</summary>
    (CalledFile? File, string? WhyNotRead) Look(int number)
    {
        string? why = null;
        foreach (var name in Names(number))
        {
            var path = Path.Combine(_folder, name);
            if (Path.GetFileName(programPath) == name)
                continue;
            var isRefused = LeavesFolder(path);
            onLook?.Invoke(path, isRefused);
            if (isRefused)
            {
                why ??= $"{name} is a link out of the program's folder, where nothing is read";
                continue;
            }
            var answer = files.Read(path);
            if (answer.State == FileState.Read)
                return (new CalledFile(name, path, WideText.Read(answer.Bytes.ToArray())), null);
            if (answer.State != FileState.Missing)
                why ??= FileStateText.Clause(path, answer.State);
        }
        return (null, why);
    }

    public IReadOnlyList<(int Number, string Name)> List()
    {
        var found = new SortedDictionary<int, string>();
        foreach (var name in files.NamesIn(_folder))
        {
            // Only under the names that a call would find it by.
            if (name != Path.GetFileName(programPath) && NumberOf(name) is >= 0 and var number && Names(number).Contains(name))
                found.TryAdd(number, name);
        }
        return [.. found.Select(pair => (pair.Key, pair.Value))];
    }

    /// <summary>The number that calls find a file of this name or path by, whatever its ending: O1200.nc, 12.nc, o0012.nc; −1 where they find it by none.</summary>
    public static int NumberOf(string name)
    {
        var stem = Path.GetFileNameWithoutExtension(name.AsSpan());
        var digits = stem.Length > 0 && stem[0] is 'O' or 'o' ? stem[1..] : stem;
        return int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            && (digits.SequenceEqual(Plain(number)) || digits.SequenceEqual(Padded(number))) ? number : -1;
    }

    static string Plain(int number) => number.ToString(CultureInfo.InvariantCulture);

    static string Padded(int number) => number.ToString("0000", CultureInfo.InvariantCulture);

    IEnumerable<string> Names(int number)
    {
        var (plain, padded) = (Plain(number), Padded(number));
        string[] stems = plain == padded ? ["O" + plain, plain, "o" + plain] : ["O" + plain, "O" + padded, plain, padded, "o" + plain, "o" + padded];
        return from extension in Extensions.Where(known => known != _extension).Prepend(_extension)
               from stem in stems
               select stem + extension;
    }

    /// <summary>True for a link that leads out of the program's folder: nothing outside is ever read.</summary>
    bool LeavesFolder(string path)
    {
        try
        {
            return File.ResolveLinkTarget(path, returnFinalTarget: true) is { } target && Path.GetDirectoryName(target.FullName) != _folder;
        }
        // Where nothing stands on disk no link leads anywhere; an editor may hold a program never saved. What cannot be followed cannot be read either.
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }
}
