namespace NcLanguage.Machine.Files;

/// <summary>What became of reading a file.</summary>
public enum FileState
{
    Read,
    Missing,

    /// <summary>A folder stands under the file's name.</summary>
    IsFolder,

    /// <summary>The user may not read it.</summary>
    Denied,

    /// <summary>Not where files may be read: <see cref="Fence"/>. Nobody has looked whether it is there.</summary>
    Outside,

    /// <summary>Larger than <see cref="DiskFiles.GreatestSize"/>: no setup or machine file.</summary>
    TooLarge,

    /// <summary>A pipe, a socket or a device stands under the name: <see cref="FileKind"/>.</summary>
    IsStream,

    /// <summary>A link whose target is not there.</summary>
    LinkToNothing,

    /// <summary>A link that leads back to itself, by way of others or not.</summary>
    LinkRing,

    /// <summary>Anything else: a broken disk, a name that is none.</summary>
    Failed,
}

/// <summary>The bytes of a file where it could be read; empty otherwise.</summary>
public readonly record struct FileAnswer(FileState State, ReadOnlyMemory<byte> Bytes)
{
    /// <summary>An answer without bytes.</summary>
    public FileAnswer(FileState state) : this(state, ReadOnlyMemory<byte>.Empty)
    {
    }
}

/// <summary>The seam to the file system: the disk, or an editor's open documents in front of it.</summary>
public interface IFileAccess
{
    /// <summary>Reads a whole file. Never throws for what a file system can do.</summary>
    FileAnswer Read(string path);

    /// <summary>The names of the files in a folder, in no order; empty where it cannot be listed. Never throws for what a file system can do.</summary>
    IReadOnlyList<string> NamesIn(string folder) => [];
}
