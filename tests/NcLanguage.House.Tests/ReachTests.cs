using System.Text.RegularExpressions;

namespace NcLanguage.House.Tests;

/// <summary>What the product may do beyond reading and writing the files of a job. The text of a program comes from anywhere: nothing in it may make the server reach out, run something
/// or search without end.</summary>
public sealed partial class ReachTests
{
    /// <summary>What must not be used, and the only files that may for all that.</summary>
    public static TheoryData<string, string[]> Reaches => new()
    {
        // A pattern that backtracks can take forever over a text made for it. This one reads the tables of the product, and nothing that a user has written.
        { @"\bRegex\b", ["NcLanguage.Reports/Reference/SeeAlso.cs"] },
        // An editor that listens on a port of this computer is gone to where the command line names the port.
        { @"\b(TcpClient|TcpListener|UdpClient|NetworkStream)\b", ["NcLanguage.Server/ServerTransports.cs"] },
        { @"\b(HttpClient|WebRequest|WebClient|Dns|Ping|SmtpClient)\b", [] },
        { @"\bProcess\.Start\b|\bProcessStartInfo\b", [] },
        { @"\bAssembly\.Load|\bAssemblyLoadContext\b|\bActivator\.CreateInstance\b|\bReflection\.Emit\b|\bNativeLibrary\b", [] },
    };

    [Theory]
    [MemberData(nameof(Reaches))]
    public void Only_the_files_named_use_it(string pattern, string[] files)
    {
        var source = Repository.Path("src");
        var users = Directory.EnumerateFiles(source, "*.cs", SearchOption.AllDirectories)
            .Select(file => Path.GetRelativePath(source, file).Replace('\\', '/'))
            .Where(file => !file.Contains("/obj/", StringComparison.Ordinal) && !file.Contains("/bin/", StringComparison.Ordinal))
            .Where(file => Regex.IsMatch(Comments().Replace(File.ReadAllText(Path.Combine(source, file)), ""), pattern));
        Assert.Equal(files.Order(), users.Order());
    }

    [GeneratedRegex(@"//[^\n]*")]
    private static partial Regex Comments();
}
