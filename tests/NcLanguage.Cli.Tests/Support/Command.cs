using System.Diagnostics;
using System.Text;
using System.Text.Json;

namespace NcLanguage.Cli.Tests.Support;

/// <summary>What one run of the executable left.</summary>
sealed record Outcome(int ExitCode, string Output, string Errors)
{
    /// <summary>The output as JSON; fails the test where it is none.</summary>
    public JsonElement Json => JsonDocument.Parse(Output).RootElement;

    /// <summary>The lines of standard error.</summary>
    public string[] ErrorLines => Errors.Split('\n', StringSplitOptions.RemoveEmptyEntries);
}

/// <summary>Runs the built executable, as a user does.</summary>
static class Command
{
    static readonly TimeSpan Limit = TimeSpan.FromMinutes(2);

    public static string Executable { get; } = Find();

    public static Outcome Run(params string[] arguments) => Run(folder: null, input: null, arguments);

    public static Outcome In(string folder, params string[] arguments) => Run(folder, input: null, arguments);

    public static Outcome Run(string? folder, byte[]? input, string[] arguments, params (string Name, string Value)[] environment) =>
        Start(Executable, folder, input, arguments, environment);

    /// <summary>Begins a run that the test ends itself. Who runs the tests in the background of a shell hands on that an interrupt is ignored; this run must not.</summary>
    public static Process Begin(params string[] arguments)
    {
        var (program, all) = OperatingSystem.IsLinux() ? ("env", ["--default-signal=INT", Executable, .. arguments]) : (Executable, arguments);
        return Process.Start(new ProcessStartInfo(program, all) { RedirectStandardOutput = true, RedirectStandardError = true, StandardOutputEncoding = Encoding.UTF8 })!;
    }

    /// <summary>Runs any program to its end.</summary>
    public static Outcome Start(string program, string? folder, byte[]? input, string[] arguments, params (string Name, string Value)[] environment)
    {
        var start = new ProcessStartInfo(program, arguments)
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = Encoding.UTF8,
            WorkingDirectory = folder ?? Path.GetTempPath(),
        };
        foreach (var (name, value) in environment)
            start.Environment[name] = value;
        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEndAsync();
        var errors = process.StandardError.ReadToEndAsync();
        if (input is not null)
            process.StandardInput.BaseStream.Write(input);
        process.StandardInput.Close();
        if (!process.WaitForExit(Limit))
        {
            process.Kill(entireProcessTree: true);
            throw new TimeoutException($"nclanguage {string.Join(' ', arguments)} took longer than {Limit.TotalSeconds} s.");
        }
        return new Outcome(process.ExitCode, output.Result, errors.Result);
    }

    static string Find()
    {
        // …/tests/NcLanguage.Cli.Tests/bin/CONFIGURATION/FRAMEWORK/
        var framework = new DirectoryInfo(AppContext.BaseDirectory);
        var root = framework.Parent!.Parent!.Parent!.Parent!.Parent!;
        var folder = Path.Combine(root.FullName, "src", "NcLanguage.Cli", "bin", framework.Parent!.Name, framework.Name);
        return new[] { "nclanguage", "nclanguage.exe" }.Select(name => Path.Combine(folder, name)).FirstOrDefault(File.Exists)
            ?? throw new FileNotFoundException($"No nclanguage in {folder}.");
    }
}

/// <summary>A folder of a test's own, removed at its end.</summary>
sealed class Scratch : IDisposable
{
    public string Folder { get; } = Directory.CreateTempSubdirectory("nclanguage-cli-").FullName;

    public string Write(string name, string text) => Write(name, Encoding.UTF8.GetBytes(text));

    public string Write(string name, byte[] bytes)
    {
        var path = At(name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllBytes(path, bytes);
        return path;
    }

    public string At(string name) => Path.Combine(Folder, name);

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}

/// <summary>Small programs.</summary>
static class Samples
{
    /// <summary>An error (no program has code G999) and nothing else.</summary>
    public const string WithError = "G21 G90 G17 G54\nG999\nM30\n";

    /// <summary>A move and nothing wrong.</summary>
    public const string Sound = "G21 G90 G17 G54\nM30\n";
}
