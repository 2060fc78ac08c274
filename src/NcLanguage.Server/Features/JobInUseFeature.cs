using NcLanguage.Editing;
using NcLanguage.Machine.Files;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Server.Documents;
using NcLanguage.Server.Protocol;

namespace NcLanguage.Server.Features;

/// <summary>nclanguage/jobInUse and nclanguage/newSetup: the setup and machine that a program is run with, and how to begin a setup.</summary>
static class JobInUseFeature
{
    public static JobInUseAnswer Answer(FeatureContext context)
    {
        var setup = context.Job.Inputs.Setup;
        var machine = context.Job.Inputs.Machine;
        return new JobInUseAnswer(
            setup.Path is { } path ? new FileInUse(Path.GetFileName(path), context.Jobs.UriOf(path), Problems(context, path), IsChosen: true) : null,
            new FileInUse(machine.Name, machine.Path is { } own ? context.Jobs.UriOf(own) : null, machine.Path is { } file ? Problems(context, file) : 0, machine.IsChosen));
    }

    /// <summary>Null for a text never saved: nothing can lie beside it.</summary>
    public static NewSetupAnswer? NewSetup(FeatureContext context) =>
        context.Path is { } path
            ? new NewSetupAnswer(DocumentUri.FromPath(SetupLocator.OwnSetupOf(path)), Editing.NewSetup.Of(context.Analysis, Path.GetFileName(path), context.Cancel))
            : null;

    static int Problems(FeatureContext context, string path) => context.Jobs.ProblemsIn(path, context.Job);
}
