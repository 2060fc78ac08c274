using NcLanguage.Machine.Files;
using NcLanguage.Server.Documents;
using NcLanguage.Server.Jobs;
using NcLanguage.Server.Protocol;

namespace NcLanguage.Server.Features;

/// <summary>PROGRAM.setup.json goes along where its program gets another name: left behind, the program would be checked without it.</summary>
static class SetupRename
{
    /// <summary>What renames the setup of a program; null where it has none of its own, and where the new name has one already.</summary>
    public static RenameFile? Of(string from, string to, JobLoader jobs)
    {
        (var before, var after) = (SetupLocator.OwnSetupOf(from), SetupLocator.OwnSetupOf(to));
        return before != after && Path.GetDirectoryName(from) == Path.GetDirectoryName(to) && jobs.TextOf(before) is not null && jobs.TextOf(after) is null
            ? new RenameFile(jobs.UriOf(before), DocumentUri.FromPath(after))
            : null;
    }
}
