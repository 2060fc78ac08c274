namespace NcLanguage.EndToEnd.Support;

/// <summary>The VS Code extension, packaged once, when a test first asks, from the sources with the server's own schemas.</summary>
public sealed class PackagedExtension
{
    private readonly Lazy<Task<string>> file = new(PackageAsync);

    /// <summary>The .vsix.</summary>
    public Task<string> FileAsync() => file.Value;

    private static async Task<string> PackageAsync()
    {
        Assert.True(Editors.Missing(Editor.Workbench) is null, Editors.Missing(Editor.Workbench));
        var script = Repository.At("editor-clients", "vscode", "package.mjs");
        var vsix = Repository.At("artifacts", "e2e", "nclanguage.vsix");
        await CommandLine.OutputAsync(["node", script, "--server", ServerCommand.Executable, "--out", vsix], TimeSpan.FromMinutes(2));
        return vsix;
    }
}
