using NcLanguage.Control.Flow;
using NcLanguage.Machine.Files;
using NcLanguage.Server.Documents;
using NcLanguage.Server.Logging;
using NcLanguage.Server.Rpc;
using StreamJsonRpc.Protocol;

namespace NcLanguage.Server.Jobs;

/// <summary>The program that a page is made of where a setup file is what the user looks at.</summary>
static class ProgramOfSetup
{
    /// <summary>The program beside a setup: the one of its name, or the only one of the folder, or the only one of it that is open.</summary>
    /// <exception cref="StreamJsonRpc.LocalRpcException">There is none, or more than one; the message says so in a sentence for the user.</exception>
    public static string Find(string jobFile, JobLoader jobs)
    {
        var name = Excerpt.OfName(Path.GetFileName(jobFile));
        if (!JobFileName.IsSetup(jobFile))
            throw Errors.Refused($"{name} is no program and no setup: open a program first.");
        string[] beside = [.. jobs.FolderOf(jobFile).Paths()];
        if (WatchedFiles.ProgramOf(jobFile) is { } program)
        {
            return beside.Where(path => DocumentUri.PathComparer.Equals(Path.GetFileNameWithoutExtension(path), program)).MinBy(path => SiblingPrograms.Extensions.IndexOf(Path.GetExtension(path)))
                ?? throw Errors.Refused($"There is no program beside {name}, such as {Excerpt.OfName(program)}.nc.");
        }
        if (beside.Length == 0)
            throw Errors.Refused($"There is no program beside {name}.");
        var open = beside.Length == 1 ? beside : [.. beside.Where(jobs.IsOpen)];
        return open.Length == 1 ? open[0] : throw Errors.Refused($"{name} is for {beside.Length} programs: open the one that is meant.");
    }

}
