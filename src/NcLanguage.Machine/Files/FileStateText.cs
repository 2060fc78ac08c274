using NcLanguage.Machine.Json;
using NcLanguage.Machine.Loading;

namespace NcLanguage.Machine.Files;

/// <summary>Says why a file could not be read.</summary>
public static class FileStateText
{
    /// <summary>A clause that begins with the file's name.</summary>
    public static string Clause(string path, FileState state)
    {
        var name = MessageText.Clip(Path.GetFileName(Path.TrimEndingDirectorySeparator(path)));
        return state switch
        {
            FileState.Missing => $"there is no file {name}",
            FileState.IsFolder => $"{name} is a folder, not a file",
            FileState.Denied => $"{name} may not be read by you",
            FileState.Outside => $"{name} leads outside the program's folder and the folder that is open or checked, where nothing is read",
            FileState.TooLarge => $"{name} is larger than {DiskFiles.GreatestSize / 1024 / 1024} MB, too large for a file of its kind",
            FileState.IsStream => $"{name} is a pipe or a device, not a file",
            FileState.LinkToNothing => $"{name} is a link to a file that is not there",
            FileState.LinkRing => $"{name} is a link that leads back to itself",
            _ => $"{name} could not be read",
        };
    }
}
