using NcLanguage.Control.Flow;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing;

/// <summary>A program of the folder, as it stands in the editor or else on disk.</summary>
public sealed record FolderProgram(string Path, SourceText Text)
{
    /// <summary>The number that a call finds the file by: that of its name, such as O1200.nc or 0012.nc; −1 where it has none.</summary>
    public int CalledBy => SiblingPrograms.NumberOf(Path);
}

/// <summary>The programs that lie beside one, itself left out: those that may call it or be called by it.</summary>
public interface IProgramFolder
{
    /// <summary>Those that could be read, in the order of their names.</summary>
    IReadOnlyList<FolderProgram> Others(CancellationToken cancel);
}
