using NcLanguage.Machine.Json;
using NcLanguage.Machine.Loading;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Machine.Files;

/// <summary>Finds and reads the machine of a program, and the machines it is based on.</summary>
sealed class MachineSearch(FileSearch search)
{
    /// <summary>Longest chain of bases; it also ends circles that a file system hides behind several names of one file.</summary>
    const int LongestChain = 16;

    /// <summary>The machine in force: the chosen one, else the setup's, else the nearest nc.machine.json, else iso-mill, which nobody chose.</summary>
    public MachineProfile Find(
        string? programPath, string? workspaceRoot, string? chosen, Setup setup, Func<string, string?, SetupProblem>? reportMachine)
    {
        if (chosen is not null)
            return Named(chosen, null, complaint => search.OptionErrors.Add($"The machine {MessageText.Clip(chosen)} cannot be used: {complaint}."));
        if (setup.Machine is { } named)
        {
            return Named(named, Path.GetDirectoryName(SetupLocator.FullPath(setup.Path)), complaint =>
            {
                var nearest = NearestName.Find(named, BuiltInNames);
                search.Problems.Add(reportMachine!($"\"machine\" cannot be used: {complaint}{NearestName.Hint(nearest)}; iso-mill stands in for it.", NearestName.Replacement(nearest)));
            });
        }
        if (search.FirstPresent(SetupLocator.MachineCandidates(programPath, workspaceRoot)) is not { } found)
            return MachineProfile.IsoMill;
        if (found.Answer.State == FileState.Read)
            return Parse(found.Path, found.Answer, []);
        search.ReportUnreadable(found.Path, found.Answer.State, "iso-mill stands in for it");
        return MachineFile.Unreadable(found.Path);
    }

    static IEnumerable<string> BuiltInNames => MachineProfile.BuiltIns.Select(profile => profile.Name);

    /// <summary>The machine of a name: a built-in profile or a file.</summary>
    MachineProfile Named(string name, string? folder, Action<string> complain)
    {
        var answer = Look(name, folder, []);
        if (answer.Machine is not null)
            return answer.Machine;
        complain(answer.Complaint!);
        return MachineProfile.IsoMill;
    }

    BaseAnswer Look(string name, string? folder, List<string> chain)
    {
        if (MachineProfile.FindBuiltIn(name) is { } builtIn)
            return new BaseAnswer(builtIn with { IsChosen = true });
        if (SetupLocator.FullPath(name, folder) is not { } path)
            return new BaseAnswer(null, $"\"{MessageText.Clip(name)}\" is no path");
        if (chain.Contains(path))
            return new BaseAnswer(null, $"the bases go in a circle: {string.Join(" is based on ", chain.Append(path).Select(Path.GetFileName))}");
        if (chain.Count >= LongestChain)
            return new BaseAnswer(null, $"more than {LongestChain} machines are based on one another");
        var answer = search.Read(path);
        if (answer.State == FileState.Read)
            return new BaseAnswer(Parse(path, answer, chain));
        var builtIns = string.Join(", ", BuiltInNames);
        var clause = FileStateText.Clause(path, answer.State);
        return new BaseAnswer(null, answer.State == FileState.Missing ? $"{clause}, nor is it a built-in machine ({builtIns})" : clause);
    }

    MachineProfile Parse(string path, FileAnswer answer, List<string> chain)
    {
        List<string> longer = [.. chain, path];
        var result = MachineFile.Read(path, answer.Bytes.Span, name => Look(name, Path.GetDirectoryName(path), longer));
        search.Problems.AddRange(result.Problems);
        return result.Machine;
    }
}
