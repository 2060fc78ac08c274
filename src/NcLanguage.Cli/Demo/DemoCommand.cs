using System.CommandLine;
using System.Reflection;
using NcLanguage.Cli.Check;
using NcLanguage.Cli.Common;
using NcLanguage.Cli.Files;

namespace NcLanguage.Cli.Demo;

/// <summary><c>demo FOLDER</c>: writes the demonstration job.</summary>
static class DemoCommand
{
    const string Prefix = "demo/";

    public static Command Create()
    {
        var folder = new Argument<string>("FOLDER") { Description = "Where to write it; made where it is not there yet." };
        var check = new Option<bool>("--check") { Description = "Then check it: the planted faults make the exit code 1." };
        var command = new Command("demo", "Writes the demonstration job: a sound program, one with planted faults, their setup and machine.") { folder, check };
        command.SetAction((parse, cancel) =>
        {
            Write(parse.GetValue(folder)!);
            return Task.FromResult(parse.GetValue(check) ? CheckCommand.Run(parse.GetValue(folder)!, cancel) : ExitCode.Clean);
        });
        return command;
    }

    /// <summary>Names of the job's files.</summary>
    internal static IEnumerable<string> Files => typeof(DemoCommand).Assembly.GetManifestResourceNames()
        .Where(name => name.StartsWith(Prefix, StringComparison.Ordinal))
        .Select(name => name[Prefix.Length..])
        .Order(StringComparer.Ordinal);

    static void Write(string folder)
    {
        var files = Files.Select(name => (Path: Path.Combine(folder, name), Bytes: Read(name))).ToList();
        if (files.FirstOrDefault(file => Path.Exists(file.Path)).Path is { } standing)
            throw new CannotRunException($"{standing} is there already; nothing was written");
        var isNew = !Directory.Exists(folder);
        MakeFolder(folder);
        var written = 0;
        try
        {
            for (; written < files.Count; written++)
                WrittenFile.Create(files[written].Path, files[written].Bytes);
        }
        catch (CannotRunException)
        {
            // Half a job is none.
            files.Take(written).ToList().ForEach(file => File.Delete(file.Path));
            if (isNew)
                Directory.Delete(folder);
            throw;
        }
        using var screen = Screen.Open();
        foreach (var (path, _) in files)
            screen.WriteLine(path);
        screen.WriteLine();
    }

    static void MakeFolder(string folder)
    {
        if (File.Exists(folder))
            throw new CannotRunException($"{folder} is a file, not a folder");
        try
        {
            Directory.CreateDirectory(folder);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw new CannotRunException($"the folder {folder} could not be made: {WriteFailure.Clause(e)}");
        }
    }

    static byte[] Read(string name)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(Prefix + name)!;
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }
}
