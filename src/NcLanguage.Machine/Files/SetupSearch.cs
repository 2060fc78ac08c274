using NcLanguage.Machine.Json;
using NcLanguage.Machine.Loading;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Machine.Files;

/// <summary>Finds and reads the setup of a program.</summary>
sealed class SetupSearch(FileSearch search)
{
    /// <summary>The setup; <paramref name="reportMachine"/> makes a problem at the machine it names.</summary>
    public Setup Find(string? programPath, string? workspaceRoot, string? chosen, out Func<string, string?, SetupProblem>? reportMachine)
    {
        reportMachine = null;
        (string Path, FileAnswer Answer)? found;
        if (chosen is null)
        {
            found = search.FirstPresent(SetupLocator.SetupCandidates(programPath, workspaceRoot));
        }
        else
        {
            var path = SetupLocator.FullPath(chosen);
            found = path is null ? null : (path, search.Read(path));
            if (found is not { Answer.State: FileState.Read })
            {
                var why = path is null ? "it is no path" : FileStateText.Clause(path, found!.Value.Answer.State);
                search.OptionErrors.Add($"The setup {MessageText.Clip(chosen)} cannot be used: {why}.");
                return Setup.None;
            }
        }

        if (found is not { } file)
            return Setup.None;
        if (file.Answer.State != FileState.Read)
        {
            search.ReportUnreadable(file.Path, file.Answer.State, "the program is checked without a setup");
            return SetupFile.Unreadable(file.Path);
        }
        var result = SetupFile.Read(file.Path, file.Answer.Bytes.Span);
        search.Problems.AddRange(result.Problems);
        reportMachine = result.ReportMachine;
        return result.Setup;
    }
}
