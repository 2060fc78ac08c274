namespace NcLanguage.EndToEnd.Support;

/// <summary>
/// How to start <c>nclanguage</c>: the file that NCLANGUAGE_SERVER names, else the native one where it is there and current
/// (on a build server it always is, for it is published first), else the one built with these tests.
/// </summary>
static class ServerCommand
{
    /// <summary>The executable, and the arguments that come before those of the command itself.</summary>
    public static IReadOnlyList<string> Words { get; } = Find();

    /// <summary>The one built from src/NcLanguage.Cli in the configuration of these tests, which needs the .NET runtime.</summary>
    public static IReadOnlyList<string> Managed => FindManaged();

    /// <summary>One executable file, for clients that take no arguments before their own: never <c>dotnet</c>.</summary>
    public static string Executable => Words.Count == 1
        ? Words[0]
        : throw new InvalidOperationException($"An editor needs an executable, not {string.Join(' ', Words)}.");

    /// <summary>The command line of <c>nclanguage</c> with these arguments.</summary>
    public static string[] With(params string[] arguments) => [.. Words, .. arguments];

    static string[] Find()
    {
        if (Environment.GetEnvironmentVariable("NCLANGUAGE_SERVER") is { Length: > 0 } named)
        {
            if (!File.Exists(named))
                throw new FileNotFoundException($"NCLANGUAGE_SERVER names {named}, which is not there.");
            return Command(Path.GetFullPath(named));
        }

        if (Editors.MustRun)
            return [NativeExecutable.FileAsync().GetAwaiter().GetResult()];
        return NativeExecutable.Current is { } native ? [native] : FindManaged();
    }

    static string[] FindManaged()
    {
        // …/tests/NcLanguage.EndToEnd/bin/CONFIGURATION/FRAMEWORK/
        var framework = new DirectoryInfo(AppContext.BaseDirectory);
        var folder = Repository.At("src", "NcLanguage.Cli", "bin", framework.Parent!.Name, framework.Name);
        string[] candidates = ["nclanguage.exe", "nclanguage", "nclanguage.dll"];
        var found = candidates.Select(name => Path.Combine(folder, name)).FirstOrDefault(File.Exists)
            ?? throw new FileNotFoundException($"No nclanguage in {folder}: build src/NcLanguage.Cli, or set NCLANGUAGE_SERVER.");
        return Command(found);
    }

    static string[] Command(string file) => file.EndsWith(".dll", StringComparison.Ordinal) ? ["dotnet", file] : [file];
}
