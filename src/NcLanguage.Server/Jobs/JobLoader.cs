using System.Collections.Concurrent;
using System.Collections.Immutable;
using NcLanguage.Machine.Files;
using NcLanguage.Server.Documents;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Server.Jobs;

/// <summary>Finds and reads the setup and the machine that go with a program. A file that is open in the editor counts as it stands
/// there, saved or not. May be used by several workers at once.</summary>
internal sealed class JobLoader(IFileAccess files, ServerSettings settings)
{
    private readonly ConcurrentDictionary<string, (string Uri, SourceText Text)> _open = new(DocumentUri.PathComparer);

    private volatile string[] _roots = [];

    /// <summary>The folders of the workspace: setups and machines are looked for upward no farther than these.</summary>
    public string[] Roots
    {
        get => _roots;
        set => _roots = value;
    }

    /// <summary>Puts the editor's text of a file in front of the disk's.</summary>
    public void SetOpenText(string path, string uri, SourceText text) => _open[path] = (uri, text);

    /// <summary>The file on disk counts again.</summary>
    public void RemoveOpenText(string path) => _open.TryRemove(path, out _);

    /// <summary>The programs beside one.</summary>
    public ProgramFolder FolderOf(string programPath) => new(programPath, files, _open);

    /// <summary>The editor's address of a file: the one it opened it by, where it did.</summary>
    public string UriOf(string path) => _open.TryGetValue(path, out (string Uri, SourceText Text) document) ? document.Uri : DocumentUri.FromPath(path);

    /// <summary>Whether a file lies in one of the workspace's folders.</summary>
    public bool IsInWorkspace(string path) => RootOf(path) is not null;

    /// <summary>Whether the editor holds a file open.</summary>
    public bool IsOpen(string path) => _open.ContainsKey(path);

    /// <summary>The text of a file as it stands in the editor or on disk; null where it cannot be read.</summary>
    public SourceText? TextOf(string path) =>
        _open.TryGetValue(path, out (string Uri, SourceText Text) document) ? document.Text
        : files.Read(path) is { State: FileState.Read } answer ? WideText.Read(answer.Bytes.ToArray()) : null;

    public LoadedJob Load(string? programPath) => Load(programPath, settings.Job);

    /// <summary>What a setup or machine file says when looked at alone.</summary>
    public LoadedJob LoadFile(string path) =>
        Load(null, WatchedFiles.IsCutting(path) ? JobOptions.None : WatchedFiles.IsSetup(path) ? new JobOptions { SetupPath = path } : new JobOptions { Machine = path });

    private LoadedJob Load(string? programPath, JobOptions chosen)
    {
        var recorder = new Recorder(files, _open);
        JobInputs inputs = JobFiles.Resolve(programPath, RootOf(programPath), recorder, chosen);
        return new LoadedJob(inputs, recorder.Files.ToImmutable(), programPath is null ? null : new CalledPrograms(programPath, new OpenFirst(files, _open)));
    }

    /// <summary>The innermost workspace folder the program lies in; for a text never saved the first.</summary>
    private string? RootOf(string? programPath)
    {
        string[] roots = _roots;
        if (programPath is null) return roots.Length > 0 ? roots[0] : null;
        StringComparison comparison = DocumentUri.PathComparer == StringComparer.Ordinal ? StringComparison.Ordinal : StringComparison.OrdinalIgnoreCase;
        return roots
            .Where(root => programPath.StartsWith(Path.TrimEndingDirectorySeparator(root) + Path.DirectorySeparatorChar, comparison))
            .MaxBy(root => root.Length);
    }

    /// <summary>Reads, the editor's texts first.</summary>
    private sealed class OpenFirst(IFileAccess disk, ConcurrentDictionary<string, (string Uri, SourceText Text)> open) : IFileAccess
    {
        public FileAnswer Read(string path) =>
            open.TryGetValue(path, out (string Uri, SourceText Text) document) ? new FileAnswer(FileState.Read, document.Text.ToBytes()) : disk.Read(path);

        public IReadOnlyList<string> NamesIn(string folder) => disk.NamesIn(folder);
    }

    /// <summary>Reads, the editor's texts first, and notes what was looked at.</summary>
    private sealed class Recorder(IFileAccess disk, ConcurrentDictionary<string, (string Uri, SourceText Text)> open) : IFileAccess
    {
        public ImmutableDictionary<string, JobFile>.Builder Files { get; } = ImmutableDictionary.CreateBuilder<string, JobFile>(DocumentUri.PathComparer);

        public FileAnswer Read(string path)
        {
            // Before the reading: a file written meanwhile then counts as changed.
            FileStamp stamp = FileStamp.Of(path);
            if (open.TryGetValue(path, out (string Uri, SourceText Text) document))
            {
                Files[path] = new JobFile(document.Text, document.Uri, stamp);
                return new FileAnswer(FileState.Read, document.Text.ToBytes());
            }
            FileAnswer answer = disk.Read(path);
            Files[path] = new JobFile(answer.State == FileState.Read ? SourceText.From(answer.Bytes.ToArray()) : null, null, stamp);
            return answer;
        }
    }
}
