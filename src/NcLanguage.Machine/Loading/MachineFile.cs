using System.Collections.Immutable;
using NcLanguage.Machine.Json;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Machine.Loading;

/// <summary>A machine profile as far as its file could be read, and every mistake in it.</summary>
public sealed record MachineReadResult(MachineProfile Machine, ImmutableArray<SetupProblem> Problems);

/// <summary>What became of looking up a base: the profile, or one clause that says why there is none.</summary>
readonly record struct BaseAnswer(MachineProfile? Machine, string? Complaint = null);

/// <summary>Reads machine files.</summary>
public static class MachineFile
{
    /// <summary>Reads a machine file's bytes (UTF-8 JSON; comments and trailing commas allowed). Never throws: a file that is no JSON, or
    /// whose base cannot be found, gives a problem and a profile that falls back on iso-mill and is not chosen.</summary>
    /// <remarks>The path is for messages; it is not opened. <paramref name="resolveBase"/> answers "base" with a profile, or null where there is none of that name.</remarks>
    public static MachineReadResult Read(string path, ReadOnlySpan<byte> bytes, Func<string, MachineProfile?> resolveBase)
    {
        ArgumentNullException.ThrowIfNull(resolveBase);
        return Read(path, bytes, name => new BaseAnswer(resolveBase(name)));
    }

    internal static MachineReadResult Read(string path, ReadOnlySpan<byte> bytes, Func<string, BaseAnswer> resolveBase)
    {
        var problems = new ProblemList(path, new LineMap(bytes));
        var root = JsonRoot.Read(bytes, "machine", "Nothing of this machine is used, iso-mill stands in for it", problems);
        if (root is null)
            return new MachineReadResult(Unreadable(path), problems.ToArray());

        var read = new ValueReader(problems, UnitReader.Read(root, problems));
        var basis = Base(root, resolveBase, read);
        var start = (basis ?? MachineProfile.IsoMill) with { Name = Path.GetFileName(path), Path = path, IsChosen = IsReadable(basis) };
        var machine = MachineShape.Shape.Read(start, root, read);
        return new MachineReadResult(machine, problems.ToArray());
    }

    /// <summary>What stands in for a machine whose file is there but could not be read: how its control reads is not known.</summary>
    internal static MachineProfile Unreadable(string path) => MachineProfile.IsoMill with { Path = path };

    // A built-in profile is as it stands; one from a file may itself be only a stand-in.
    static bool IsReadable(MachineProfile? basis) => basis is not null && (basis.Path is null || basis.IsChosen);

    /// <summary>The profile to start from, or null where the file names one that cannot be had.</summary>
    static MachineProfile? Base(JsonValue root, Func<string, BaseAnswer> resolveBase, ValueReader read)
    {
        const string instead = "iso-mill is used instead";
        var given = root.Members.Where(member => member.Name == "base").ToList();
        if (given.Count == 0 || (given.Count == 1 && given[0].Value.Kind == JsonKind.Null))
            return MachineProfile.IsoMill;
        // A repeated name is reported by the shape of the file.
        if (given.Count > 1 || read.Text(given[0], instead) is not { } name)
            return null;
        var answer = resolveBase(name);
        if (answer.Machine is not null)
            return answer.Machine;
        var builtIns = MachineProfile.BuiltIns.Select(profile => profile.Name);
        var nearest = NearestName.Find(name, builtIns);
        var complaint = answer.Complaint is { } why ? $"\"base\" cannot be used: {why}" : $"\"base\" names \"{MessageText.Clip(name)}\", which is neither a built-in profile ({string.Join(", ", builtIns)}) nor a file that can be read";
        read.Wrong(given[0].Value.Range, complaint + NearestName.Hint(nearest), instead, NearestName.Replacement(nearest));
        return null;
    }
}
