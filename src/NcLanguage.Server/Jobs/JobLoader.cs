using System.Collections.Concurrent;
using System.Collections.Immutable;
using NcLanguage.Machine.Files;
using NcLanguage.Server.Documents;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Server.Jobs;

/// <summary>Finds and reads the setup and the machine that go with a program. A file that is open in the editor counts as it stands
/// there, saved or not; a setup, machine or cutting file that is no JSON for a moment, as it last could be read. All others are read only in the workspace, beside
/// what is open, and beside what the command line names. May be used by several workers at once.</summary>
sealed class JobLoader(IFileAccess files, ServerSettings settings)
{
    readonly ConcurrentDictionary<string, OpenText> _open = new(DocumentUri.PathComparer);

    volatile string[] _roots = [];

    /// <summary>The folders of the workspace: setups and machines are looked for upward no farther than these.</summary>
    public string[] Roots
    {
        get => _roots;
        set => _roots = value;
    }

    /// <summary>Puts the editor's text of a file in front of the disk's.</summary>
    public void SetOpenText(string path, string uri, SourceText text) => _open[path] = new OpenText(uri, text, text);

    /// <summary>Puts the editor's text of a setup, machine or cutting file in front of the disk's. As long as it cannot be read, programs go by what could be
    /// read before: in the editor, or on disk where it was opened so.</summary>
    /// <returns>What the text says, and whether programs go by another one.</returns>
    public (LoadedJob Job, bool IsOutOfForce) SetJobText(string path, string uri, SourceText text)
    {
        var job = LoadFile(path, new OpenText(uri, text, text));
        var before = job.IsUnreadable(path) ? LastReadable(path) : null;
        if (before is not null)
            job = job.WithStateBefore(path);
        _open[path] = new OpenText(uri, text, before ?? text, job);
        return (job, before is not null);
    }

    /// <summary>The file on disk counts again.</summary>
    public void RemoveOpenText(string path) => _open.TryRemove(path, out _);

    /// <summary>The programs beside one.</summary>
    public ProgramFolder FolderOf(string programPath) => new(programPath, FenceAround([programPath]), _open);

    /// <summary>The names of the machine files that lie beside a file, itself left out.</summary>
    public string[] MachinesBeside(string path)
    {
        var folder = Path.GetDirectoryName(path) ?? "";
        return [.. files.NamesIn(folder).Concat(_open.Keys.Where(open => Path.GetDirectoryName(open) == folder).Select(open => Path.GetFileName(open)!))
            .Where(name => JobFileName.IsMachine(name) && !DocumentUri.PathComparer.Equals(name, Path.GetFileName(path))).Distinct(DocumentUri.PathComparer).Order(StringComparer.Ordinal)];
    }

    /// <summary>The editor's address of a file: the one it opened it by, where it did.</summary>
    public string UriOf(string path) => _open.TryGetValue(path, out var document) ? document.Uri : DocumentUri.FromPath(path);

    /// <summary>How many mistakes there are in a file that a job was read from: as it stands in the editor, where it is open there.</summary>
    public int ProblemsIn(string path, LoadedJob job) => ((_open.TryGetValue(path, out var document) ? document.Job : null) ?? job).ProblemsIn(path).Count();

    /// <summary>Whether a file lies in one of the workspace's folders.</summary>
    public bool IsInWorkspace(string path) => RootOf(path) is not null;

    /// <summary>Whether the editor holds a file open.</summary>
    public bool IsOpen(string path) => _open.ContainsKey(path);

    /// <summary>The text of a file as it stands in the editor or on disk; null where it cannot be read.</summary>
    public SourceText? TextOf(string path) =>
        _open.TryGetValue(path, out var document) ? document.Text
        : FenceAround(_open.Keys).Read(path) is { State: FileState.Read } answer ? WideText.Read(answer.Bytes.ToArray()) : null;

    public LoadedJob Load(string? programPath) => Load(programPath, settings.Job);

    /// <summary>What a setup, machine or cutting file says when looked at alone: open in the editor, as programs go by it.</summary>
    public LoadedJob LoadFile(string path) => LoadFile(path, _open.GetValueOrDefault(path));

    LoadedJob LoadFile(string path, OpenText? text) => JobFileName.IsCutting(path)
        ? Load(path, JobOptions.None, text)
        : Load(null, JobFileName.IsSetup(path) ? new JobOptions { SetupPath = path } : new JobOptions { Machine = path }, text, path);

    /// <param name="programPath">The program; null for a text never saved.</param>
    /// <param name="chosen">What the user chose.</param>
    /// <param name="instead">What stands in <paramref name="path"/>, whatever is open or on disk; null for nothing of the kind.</param>
    /// <param name="path">The program's own path where it is left out.</param>
    LoadedJob Load(string? programPath, JobOptions chosen, OpenText? instead = null, string? path = null)
    {
        var fence = FenceAround([.. new[] { programPath, path }.OfType<string>()]);
        var recorder = new Recorder(fence, at => instead is not null && DocumentUri.PathComparer.Equals(at, path ?? programPath) ? instead : _open.GetValueOrDefault(at));
        var inputs = JobFiles.Resolve(programPath, RootOf(programPath) ?? Path.GetDirectoryName(programPath), recorder, chosen);
        if (JobFileName.IsCutting(programPath ?? ""))
            inputs = inputs with { Problems = [.. inputs.Problems.Where(problem => DocumentUri.PathComparer.Equals(problem.Path, programPath))] };
        return new LoadedJob(inputs, recorder.Files.ToImmutable(), programPath is null ? null : new CalledPrograms(programPath, new OpenFirst(fence, _open)));
    }

    SourceText? LastReadable(string path)
    {
        if (_open.TryGetValue(path, out var open) && !LoadFile(path, open).IsUnreadable(path))
            return open.InForce;
        return open is null && FenceAround([path]).Read(path) is { State: FileState.Read } answer && SourceText.From(answer.Bytes.ToArray()) is var saved
            && !LoadFile(path, new OpenText(path, saved, saved)).IsUnreadable(path) ? saved : null;
    }

    /// <summary>Lets reading go on in the workspace, in the folders of these files, and in those of the files that the command line names.</summary>
    Fence FenceAround(IEnumerable<string> paths) => new(
        files, [.. _roots.Concat(paths.Concat(settings.FilesOfCommandLine).Select(path => Path.GetDirectoryName(path)).OfType<string>()).Distinct(DocumentUri.PathComparer)]);

    /// <summary>The innermost workspace folder the program lies in; for a text never saved the first.</summary>
    string? RootOf(string? programPath)
    {
        var roots = _roots;
        if (programPath is null)
            return roots.Length > 0 ? roots[0] : null;
        return roots.Where(root => FilePath.IsBelow(root, programPath)).MaxBy(root => root.Length);
    }

    /// <summary>Reads, the editor's texts first.</summary>
    sealed class OpenFirst(IFileAccess disk, ConcurrentDictionary<string, OpenText> open) : IFileAccess
    {
        public FileAnswer Read(string path) =>
            open.TryGetValue(path, out var document) ? new FileAnswer(FileState.Read, document.InForce.ToBytes()) : disk.Read(path);

        public IReadOnlyList<string> NamesIn(string folder) => disk.NamesIn(folder);
    }

    /// <summary>Reads, the editor's texts first, and notes what was looked at.</summary>
    sealed class Recorder(Fence disk, Func<string, OpenText?> open) : IFileAccess
    {
        public ImmutableDictionary<string, JobFile>.Builder Files { get; } = ImmutableDictionary.CreateBuilder<string, JobFile>(DocumentUri.PathComparer);

        public FileAnswer Read(string path)
        {
            var document = open(path);
            if (document is null && !disk.Holds(path))
            {
                if (disk.IsWrittenWithin(path))
                    Files[path] = new JobFile(null, null, FileStamp.OfLink(path), IsRefused: true);
                return new FileAnswer(FileState.Outside);
            }
            // Before the reading: a file written meanwhile then counts as changed.
            var stamp = FileStamp.Of(path);
            if (document is not null)
            {
                Files[path] = new JobFile(document.InForce, document.Uri, stamp);
                return new FileAnswer(FileState.Read, document.InForce.ToBytes());
            }
            var answer = disk.Read(path);
            Files[path] = new JobFile(answer.State == FileState.Read ? SourceText.From(answer.Bytes.ToArray()) : null, null, stamp);
            return answer;
        }
    }
}
