using NcLanguage.Machine.Cutting;
using NcLanguage.Machine.Loading;

namespace NcLanguage.Machine.Files;

/// <summary>Finds and reads the user's cutting data.</summary>
sealed class CuttingSearch(FileSearch search)
{
    /// <summary>The nearest nc.cutting.json in front of the table in the executable; null where there is none.</summary>
    public CuttingTable? Find(string? programPath, string? workspaceRoot)
    {
        if (search.FirstPresent(SetupLocator.CuttingCandidates(programPath, workspaceRoot)) is not { } found)
            return null;
        if (found.Answer.State != FileState.Read)
        {
            search.ReportUnreadable(found.Path, found.Answer.State, "only the cutting data in the executable are used");
            return null;
        }
        var result = CuttingFile.Read(found.Path, found.Answer.Bytes.Span, CuttingTable.BuiltIn);
        search.Problems.AddRange(result.Problems);
        return result.Table;
    }
}
