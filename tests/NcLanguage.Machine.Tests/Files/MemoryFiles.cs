using System.Text;
using NcLanguage.Machine.Files;

namespace NcLanguage.Machine.Tests.Files;

/// <summary>Files that exist in a test only; any other path is missing.</summary>
sealed class MemoryFiles : IFileAccess
{
    readonly Dictionary<string, FileAnswer> _answers = [];

    /// <summary>A folder that is a root on every operating system.</summary>
    public static string Root { get; } = Path.GetFullPath(Path.DirectorySeparatorChar + "shop");

    public static string At(string path) => Path.GetFullPath(Path.Combine(Root, path));

    public MemoryFiles With(string path, string text)
    {
        _answers[At(path)] = new FileAnswer(FileState.Read, Encoding.UTF8.GetBytes(text));
        return this;
    }

    public MemoryFiles With(string path, FileState state)
    {
        _answers[At(path)] = new FileAnswer(state);
        return this;
    }

    public FileAnswer Read(string path) => _answers.TryGetValue(path, out var answer) ? answer : new FileAnswer(FileState.Missing);

    public JobInputs Resolve(string program = "jobs/plate/part.nc", string? root = ".", JobOptions? options = null) =>
        JobFiles.Resolve(At(program), root is null ? null : At(root), this, options ?? JobOptions.None);
}
