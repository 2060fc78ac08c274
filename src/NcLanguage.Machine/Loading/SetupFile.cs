using System.Collections.Immutable;
using NcLanguage.Machine.Json;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Machine.Loading;

/// <summary>A setup as far as its file could be read, and every mistake in it.</summary>
public sealed record SetupReadResult(Setup Setup, ImmutableArray<SetupProblem> Problems)
{
    /// <summary>Makes a problem at the file's "machine", for whoever looks that machine up; null where the file names none.</summary>
    internal Func<string, string?, SetupProblem>? ReportMachine { get; init; }
}

/// <summary>Reads setup files.</summary>
public static class SetupFile
{
    /// <summary>Whether a file is meant as a setup or another file of ours, sound or not: it begins with a brace, behind blanks and comments.</summary>
    public static bool BeginsAsObject(ReadOnlySpan<byte> bytes) => MalformedJson.BeginsAsObject(bytes);

    /// <summary>Reads a setup file's bytes (UTF-8 JSON; comments and trailing commas allowed). Never throws: a file that is no JSON gives
    /// one problem and a setup that is present but says nothing. The path is for messages; it is not opened.</summary>
    public static SetupReadResult Read(string path, ReadOnlySpan<byte> bytes)
    {
        var problems = new ProblemList(path, new LineMap(bytes));
        var root = JsonRoot.Read(bytes, "setup", "Nothing of this setup is used", problems);
        if (root is null)
            return new SetupReadResult(Unreadable(path), problems.ToArray());

        var read = new ValueReader(problems, UnitReader.Read(root, problems));
        var start = new Setup { IsPresent = true, Path = path };
        var setup = SetupShape.Shape.Read(start, root, read);
        return new SetupReadResult(setup, problems.ToArray()) { ReportMachine = Reporter(root, problems) };
    }

    /// <summary>The setup of a file that is there but could not be read.</summary>
    internal static Setup Unreadable(string path) => new() { IsPresent = true, Path = path, ObstaclesAreKnown = false };

    static Func<string, string?, SetupProblem>? Reporter(JsonValue root, ProblemList problems) =>
        root.Single("machine") is { } machine
            ? (message, replacement) => problems.At(ProblemKind.Value, machine.Range, message) with { Replacement = replacement }
            : null;
}
