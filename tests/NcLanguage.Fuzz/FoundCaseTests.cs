using System.Runtime.CompilerServices;
using NcLanguage.Fuzz.Cases;
using NcLanguage.Fuzz.Running;

namespace NcLanguage.Fuzz;

/// <summary>Cases that once showed a fault, kept in found/, each checked again every time.</summary>
public sealed class FoundCaseTests
{
    public static TheoryData<string> Kept => [.. Directory.GetFiles(Folder(), "*.json").Select(path => Path.GetFileNameWithoutExtension(path)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Kept))]
    public async Task Stays_mended(string name)
    {
        var kept = CaseFile.Read(Path.Combine(Folder(), name + ".json"));
        await Task.Run(() => AllChecks.Named(kept.Check).Replay(kept.Case)).WaitAsync(Fuzzer.Longest);
    }

    /// <summary>A kept case is the case that was found, byte for byte.</summary>
    [Theory]
    [MemberData(nameof(Kept))]
    public void Is_written_as_it_is_read(string name)
    {
        var path = Path.Combine(Folder(), name + ".json");
        Assert.Equal(File.ReadAllText(path), CaseFile.Read(path).Write());
    }

    static string Folder([CallerFilePath] string here = "") => Path.Combine(Path.GetDirectoryName(here)!, "found");
}
