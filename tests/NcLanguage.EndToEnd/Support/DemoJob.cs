using System.Text.Json;
using System.Text.RegularExpressions;

namespace NcLanguage.EndToEnd.Support;

/// <summary>A finding as <c>check --format json</c> tells it; line and column count from 1.</summary>
sealed record ToldFinding(string Name, string Severity, int Line, int Column, string Message, IReadOnlyList<string> Fixes);

/// <summary>
/// The demonstration job, written by the command itself into a folder, and what <c>check</c> says about its faulty program.
/// The editors are held against that: they must show what the command line tells.
/// </summary>
sealed partial class DemoJob
{
    static readonly TimeSpan Limit = TimeSpan.FromSeconds(60);

    DemoJob(string folder, string program, IReadOnlyList<ToldFinding> findings)
    {
        Folder = folder;
        Program = program;
        Findings = findings;
        Lines = File.ReadAllLines(program);
    }

    public string Folder { get; }

    /// <summary>The program with the most errors: the faulty one of the demonstration.</summary>
    public string Program { get; }

    public IReadOnlyList<ToldFinding> Findings { get; }

    /// <summary>The program's lines as first written.</summary>
    public IReadOnlyList<string> Lines { get; }

    /// <summary>An error with a fix: the hop that runs into a clamp, which the job exists to show, else the first.</summary>
    public ToldFinding Fixable => Findings.Where(f => f.Severity == "error" && f.Fixes.Count > 0)
        .OrderByDescending(f => f.Name == "hop-hits-obstacle")
        .FirstOrDefault() ?? throw new InvalidOperationException($"No error of {Program} has a fix.");

    /// <summary>Place of the first drilling cycle's G word: line and column from 1, and the word.</summary>
    public (int Line, int Column, string Word) Cycle
    {
        get
        {
            for (var i = 0; i < Lines.Count; i++)
            {
                if (CycleWord().Match(Lines[i]) is { Success: true } match)
                    return (i + 1, match.Index + 1, match.Value);
            }

            throw new InvalidOperationException($"{Program} has no cycle.");
        }
    }

    /// <summary>Where a text first stands: line and column from 1.</summary>
    public (int Line, int Column) PlaceOf(string text)
    {
        var line = Lines.ToList().FindIndex(one => one.Contains(text, StringComparison.Ordinal));
        Assert.True(line >= 0, $"{Program} has no {text}.");
        return (line + 1, Lines[line].IndexOf(text, StringComparison.Ordinal) + 1);
    }

    public static async Task<DemoJob> WriteAsync(string folder)
    {
        await CommandLine.OutputAsync(ServerCommand.With("demo", folder), Limit);
        var (path, findings) = (await CheckAsync(folder)).MaxBy(file => file.Findings.Count(finding => finding.Severity == "error"));
        return new DemoJob(folder, path, findings);
    }

    /// <summary>The findings of the program as it stands on the disk now.</summary>
    public async Task<IReadOnlyList<ToldFinding>> CheckAgainAsync() => (await CheckAsync(Folder)).Single(file => file.Path == Program).Findings;

    static async Task<List<(string Path, IReadOnlyList<ToldFinding> Findings)>> CheckAsync(string folder)
    {
        // Exit code 1: there are errors, as in this job there must be.
        using var told = JsonDocument.Parse(await CommandLine.OutputAsync(ServerCommand.With("check", folder, "--format", "json"), Limit, 1));
        return [.. told.RootElement.GetProperty("files").EnumerateArray().Select(file => (
            Path.GetFullPath(file.GetProperty("path").GetString()!, Repository.Root),
            (IReadOnlyList<ToldFinding>)[.. file.GetProperty("findings").EnumerateArray().Select(Read)]))];
    }

    static ToldFinding Read(JsonElement finding) => new(
        finding.GetProperty("name").GetString()!,
        finding.GetProperty("severity").GetString()!,
        finding.GetProperty("line").GetInt32(),
        finding.GetProperty("column").GetInt32(),
        finding.GetProperty("message").GetString()!,
        [.. finding.GetProperty("fixes").EnumerateArray().Select(fix => fix.GetString()!)]);

    [GeneratedRegex(@"(?<!\()\bG8[1-9]\b")]
    private static partial Regex CycleWord();
}
