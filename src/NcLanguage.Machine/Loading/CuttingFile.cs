using System.Collections.Immutable;
using NcLanguage.Machine.Cutting;
using NcLanguage.Machine.Json;

namespace NcLanguage.Machine.Loading;

/// <summary>Cutting data as far as its file could be read, and every mistake in it.</summary>
public sealed record CuttingReadResult(CuttingTable Table, ImmutableArray<SetupProblem> Problems);

/// <summary>Reads files of cutting data, the user's and the one in the executable alike.</summary>
public static class CuttingFile
{
    /// <summary>Reads a file's bytes (UTF-8 JSON; comments and trailing commas allowed). Never throws: a file that is no JSON gives one problem
    /// and a table without rows of its own. The path is for messages; it is not opened.</summary>
    /// <param name="behind">The table that answers where this file has no row; null for none.</param>
    public static CuttingReadResult Read(string path, ReadOnlySpan<byte> bytes, CuttingTable? behind)
    {
        var problems = new ProblemList(path, new LineMap(bytes));
        var root = JsonRoot.Read(bytes, "file of cutting data", "Nothing of it is used", problems);
        if (root is null)
            return new CuttingReadResult(new CuttingTable([], [], behind), problems.ToArray());
        var read = new ValueReader(problems, UnitReader.Read(root, problems));
        var content = CuttingShape.Shape.Read(new CuttingShape.Content([], []), root, read);
        return new CuttingReadResult(new CuttingTable(content.Materials, content.Rows, behind), problems.ToArray());
    }
}
