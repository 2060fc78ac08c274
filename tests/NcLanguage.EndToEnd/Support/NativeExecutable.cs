using System.Runtime.InteropServices;

namespace NcLanguage.EndToEnd.Support;

/// <summary>
/// <c>nclanguage</c> as it is shipped: published as Native AOT into artifacts/native, once, and again only when a source is
/// newer. What the publishing said is kept beside it.
/// </summary>
static class NativeExecutable
{
    // On a loaded machine with two cores the native compiler alone has taken more than five minutes.
    static readonly TimeSpan Limit = TimeSpan.FromMinutes(20);

    // Run on the pool: the first to ask may be a constructor, which blocks the thread it would come back to.
    static readonly Lazy<Task<string>> Published = new(() => Task.Run(PublishAsync));

    static string Folder => Repository.At("artifacts", "native", RuntimeInformation.RuntimeIdentifier);

    /// <summary>The platform's name in the extension's <c>server</c> folder.</summary>
    public static string Platform => RuntimeInformation.RuntimeIdentifier;

    /// <summary>What the publishing that made the file wrote.</summary>
    public static string Log => Path.Combine(Folder, "publish.log");

    /// <summary>What the publishing made on its way.</summary>
    public static string Build => Repository.At("artifacts", "native", "build");

    /// <summary>The executable, when it is there and no source is newer; else null.</summary>
    public static string? Current => IsCurrent ? Executable : null;

    static string Executable => Path.Combine(Folder, OperatingSystem.IsWindows() ? "nclanguage.exe" : "nclanguage");

    static bool IsCurrent => File.Exists(Executable) && File.Exists(Log) && File.GetLastWriteTimeUtc(Log) > NewestSource();

    /// <summary>The executable, published first where that is due.</summary>
    public static Task<string> FileAsync() => Published.Value;

    static async Task<string> PublishAsync()
    {
        if (IsCurrent)
            return Executable;
        // Its own folders: the tests' build of the same projects is neither waited for nor disturbed. The native compiler
        // must run again, for a skipped one warns of nothing.
        Remove(Path.Combine(Build, "obj", "NcLanguage.Cli"));
        Remove(Folder);
        var started = DateTime.UtcNow;
        var run = await CommandLine.RunAsync(
            [
                "dotnet", "publish", Repository.At("src", "NcLanguage.Cli"), "-c", "Release", "-r", RuntimeInformation.RuntimeIdentifier,
                "--artifacts-path", Build, "-o", Folder, "-p:RunAnalyzersDuringBuild=false", "-nodeReuse:false", "--nologo", "-v", "minimal",
            ],
            Limit);
        Assert.True(run.ExitCode == 0 && File.Exists(Executable), $"Publishing ended with {run.ExitCode}:\n{run.Output}{run.Errors}");
        await File.WriteAllTextAsync(Log, run.Output + run.Errors);
        // What was saved while it ran may or may not be in it.
        File.SetLastWriteTimeUtc(Log, started);
        return Executable;
    }

    static void Remove(string folder)
    {
        if (Directory.Exists(folder))
            Directory.Delete(folder, recursive: true);
    }

    static DateTime NewestSource() => Directory.EnumerateFiles(Repository.Root, "Directory.*")
        .Concat(Directory.EnumerateDirectories(Repository.At("src")).SelectMany(Sources))
        .Max(File.GetLastWriteTimeUtc);

    static IEnumerable<string> Sources(string project) => Directory.EnumerateFiles(project)
        .Concat(Directory.EnumerateDirectories(project)
            .Where(folder => Path.GetFileName(folder) is not ("bin" or "obj"))
            .SelectMany(folder => Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)));
}
