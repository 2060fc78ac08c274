using System.Globalization;

namespace NcLanguage.Corpus.Tests;

/// <summary>A fault to plant: the program, the line, the text there and what to write in its stead, the finding's name, and the finding's line.</summary>
/// <remarks>Where a slip is told from two sides, against the drawing and against the clamps, say, both names stand with + between them.</remarks>
/// <param name="Row">The row as it stands in the file.</param>
/// <param name="New">What to write; "-" as a whole deletes the line's block, so that all lines keep their numbers.</param>
sealed record PlantedFault(string Row, string Program, int Line, string Old, string New, string Finding, int FindingLine, string? Second, int SecondLine)
{
    public static IEnumerable<PlantedFault> ReadAll() =>
        File.ReadLines(System.IO.Path.Combine(CorpusProgram.Folder, "planted-faults.txt")).Where(row => row.Length > 0 && !row.StartsWith('#')).Select(Parse);

    static PlantedFault Parse(string row)
    {
        var parts = row.Split('|', StringSplitOptions.TrimEntries);
        Assert.True(parts.Length == 6, $"Six parts are wanted: {row}");
        var line = Number(parts[1]);
        var names = parts[4].Split('+', StringSplitOptions.TrimEntries);
        var lines = parts[5].Split('+', StringSplitOptions.TrimEntries).Select(text => text == "same" ? line : Number(text)).ToArray();
        Assert.True(names.Length == lines.Length && names.Length <= 2, $"One line for each finding is wanted: {row}");
        return new PlantedFault(row, parts[0], line, parts[2], parts[3], names[0], lines[0], names.ElementAtOrDefault(1), lines[^1]);
    }

    /// <summary>The text with the fault in it.</summary>
    public string PlantIn(string text)
    {
        var lines = text.Split('\n');
        var line = lines[Line - 1];
        Assert.True(line.Contains(Old, StringComparison.Ordinal), $"Line {Line} of {Program} is {line}, and does not hold {Old}.");
        lines[Line - 1] = New == "-" ? line.Replace(Old, "", StringComparison.Ordinal).TrimEnd() : line.Replace(Old, New, StringComparison.Ordinal);
        return string.Join('\n', lines);
    }

    static int Number(string text) => int.Parse(text, CultureInfo.InvariantCulture);
}
