using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Server.Jobs;

/// <summary>Finds the setup and the machine that go with a program.</summary>
internal sealed class JobLoader(string? workspaceRoot)
{
    public Job Load(string? programPath)
    {
        _ = workspaceRoot;
        _ = programPath;
        return new Job(Setup.None, new MachineProfile { Name = "iso-mill" }, [], []);
    }
}
