namespace NcLanguage.EndToEnd.Support;

/// <summary>The VS Code extension, packaged once, when a test first asks, from the sources with the server's own schemas.</summary>
public sealed class PackagedExtension
{
    readonly Lazy<Task<string>> file = new(() => PackageAsync("nclanguage.vsix", ServerCommand.Executable));
    readonly Lazy<Task<string>> bundled = new(async () =>
        await PackageAsync($"nclanguage-{NativeExecutable.Platform}.vsix", await NativeExecutable.FileAsync(), "--target", NativeExecutable.Platform));

    /// <summary>The .vsix without a server.</summary>
    public Task<string> FileAsync() => file.Value;

    /// <summary>The .vsix for this platform, with the native server inside.</summary>
    public Task<string> BundledAsync() => bundled.Value;

    static async Task<string> PackageAsync(string name, string server, params string[] more)
    {
        Assert.True(Editors.Missing(Editor.Workbench) is null, Editors.Missing(Editor.Workbench));
        var script = Repository.At("editor-clients", "vscode", "package.mjs");
        var vsix = Repository.At("artifacts", "e2e", name);
        await CommandLine.OutputAsync(["node", script, "--server", server, "--out", vsix, .. more], TimeSpan.FromMinutes(2));
        return vsix;
    }
}

/// <summary>Tests in the workbench share the packages, and run one after the other: two workbenches at once only slow each other.</summary>
[CollectionDefinition(nameof(WorkbenchTests))]
public sealed class WorkbenchCollection : ICollectionFixture<PackagedExtension>;
