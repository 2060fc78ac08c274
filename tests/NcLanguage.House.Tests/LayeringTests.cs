using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace NcLanguage.House.Tests;

/// <summary>A room may only use the rooms to its left.</summary>
public sealed partial class LayeringTests
{
    /// <summary>Each project and the only projects it may refer to.</summary>
    static readonly Dictionary<string, string[]> May = new()
    {
        ["Syntax"] = [],
        ["Machine"] = [],
        ["Control"] = ["Syntax", "Machine"],
        ["Checks"] = ["Control", "Syntax", "Machine", "Generators"],
        ["Editing"] = ["Checks", "Control", "Syntax", "Machine"],
        ["Reports"] = ["Checks", "Control", "Syntax", "Machine"],
        ["Server"] = ["Editing", "Checks", "Control", "Syntax", "Machine"],
        ["Cli"] = ["Server", "Reports", "Editing", "Checks", "Control", "Syntax", "Machine"],
        ["Generators"] = [],
    };

    /// <summary>Packages stay at the outside: the rooms of the trade stand on the platform alone.</summary>
    static readonly string[] WithoutPackages = ["Syntax", "Machine", "Control", "Checks", "Editing"];

    public static TheoryData<string> Projects =>
        [.. Directory.GetDirectories(Repository.Path("src")).Select(folder => Path.GetFileName(folder)["NcLanguage.".Length..])];

    [Theory]
    [MemberData(nameof(Projects))]
    public void A_project_refers_only_to_rooms_on_its_left(string name)
    {
        var references = Load(name).Descendants("ProjectReference")
            .Select(item => Path.GetFileNameWithoutExtension(item.Attribute("Include")!.Value)["NcLanguage.".Length..]);
        Assert.True(May.ContainsKey(name), $"{name} is not in the plan of the house.");
        Assert.All(references, reference => Assert.Contains(reference, May[name]));
    }

    [Theory]
    [MemberData(nameof(Projects))]
    public void The_rooms_of_the_trade_use_no_packages(string name)
    {
        if (WithoutPackages.Contains(name))
            Assert.Empty(Load(name).Descendants("PackageReference"));
    }

    [Fact]
    public void The_transport_stays_behind_the_server() =>
        Assert.All(SourceFiles().Where(file => !file.Contains("NcLanguage.Server", StringComparison.Ordinal)), file =>
            Assert.DoesNotContain("using StreamJsonRpc", File.ReadAllText(file), StringComparison.Ordinal));

    [Fact]
    public void The_top_level_holds_only_what_belongs_there()
    {
        string[] allowed = ["README.md", "DEVELOPERS.md", "NcLanguage.sln", "LICENSE", "src", "tests", "editor-clients", "grammars", "artifacts",
            "Directory.Build.props", "Directory.Build.targets", "Directory.Packages.props"];
        var found = Directory.GetFileSystemEntries(Repository.Root).Select(entry => Path.GetFileName(entry)!).Where(entry => !entry.StartsWith('.'));
        Assert.All(found, entry => Assert.Contains(entry, allowed));
    }

    [Fact]
    public void Source_files_are_small() => Assert.All(SourceFiles(), file => Assert.InRange(File.ReadLines(file).Count(), 0, 400));

    [Fact]
    public void Source_lines_end_where_their_text_ends() =>
        Assert.All(SourceFiles(), file => Assert.DoesNotContain(File.ReadLines(file), line => line.Length > 0 && char.IsWhiteSpace(line[^1])));

    /// <summary>A member that an automatic tool has left at the margin, where types begin.</summary>
    [Fact]
    public void Members_stand_inside_their_types() =>
        Assert.All(SourceFiles(), file => Assert.DoesNotContain(File.ReadLines(file), line => OutsideAnyType().IsMatch(line)));

    [Fact]
    public void What_a_condition_leads_to_stands_on_a_line_of_its_own() =>
        Assert.All(SourceFiles(), file => Assert.DoesNotContain(File.ReadLines(file), line => LeadsOnInTheSameLine().IsMatch(line)));

    [GeneratedRegex(@"^\s*((else )?if|foreach|while|lock) \(.*\) (return|continue|break|throw|yield)\b.*;$")]
    private static partial Regex LeadsOnInTheSameLine();

    [GeneratedRegex(@"^(?!using |.*\b(class|struct|record|interface|enum|delegate|namespace)\b)[A-Za-z][\w<>\[\]?., ]* \w+(<\w+>)?(\(|;| =)")]
    private static partial Regex OutsideAnyType();

    static IEnumerable<string> SourceFiles() =>
        Directory.GetFiles(Repository.Path("src"), "*.cs", SearchOption.AllDirectories)
            .Where(file => !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal));

    static XDocument Load(string name) => XDocument.Load(Repository.Path("src", "NcLanguage." + name, $"NcLanguage.{name}.csproj"));
}
