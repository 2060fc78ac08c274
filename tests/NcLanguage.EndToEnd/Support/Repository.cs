namespace NcLanguage.EndToEnd.Support;

/// <summary>Folders of the repository that the tests run in.</summary>
static class Repository
{
    /// <summary>The folder that holds the solution.</summary>
    public static string Root { get; } = FindRoot();

    public static string At(params string[] parts) => Path.Combine([Root, .. parts]);

    static string FindRoot()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "NcLanguage.sln")))
                return folder.FullName;
        }

        throw new InvalidOperationException($"NcLanguage.sln was not found above {AppContext.BaseDirectory}.");
    }
}
