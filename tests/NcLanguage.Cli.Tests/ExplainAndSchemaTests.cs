using System.Text.Json;
using NcLanguage.Cli.Tests.Support;

namespace NcLanguage.Cli.Tests;

public sealed class ExplainAndSchemaTests
{
    [Theory]
    [InlineData("code", "G81", "G81")]
    [InlineData("code", "G81", "g", "081")]
    [InlineData("code", "G59.1", "g59.1")]
    [InlineData("code", "M6", "M06")]
    [InlineData("rule", "hop-hits-obstacle", "NC4001")]
    [InlineData("rule", "cycle-not-cancelled", "cycle-not-cancelled")]
    [InlineData("address", "R", "r")]
    [InlineData("statement", "WHILE", "while")]
    [InlineData("function", "SQRT", "sqrt")]
    [InlineData("function", "MOD", "MOD")]
    [InlineData("reading", "dwell", "dwell")]
    [InlineData("reading", "programMarks.percent", "programMarks.percent")]
    [InlineData("variable", "#5221 to #5226", "#5223")]
    [InlineData("sign", "%", "%")]
    [InlineData("member", "setup.tools", "pitch")]
    [InlineData("member", "machine.readings", "machine.readings")]
    public void Everything_has_its_explanation(string kind, string name, params string[] written)
    {
        var outcome = Command.Run(["explain", .. written, "--format", "json"]);
        Assert.Equal((0, ""), (outcome.ExitCode, outcome.Errors));
        Assert.All(outcome.Json.GetProperty("entries").EnumerateArray(), entry =>
        {
            Assert.Equal((kind, name), (entry.GetProperty("kind").GetString(), entry.GetProperty("name").GetString()));
            Assert.NotEqual(0, entry.GetProperty("sections").GetArrayLength());
        });
        Assert.Contains(name, Command.Run(["explain", .. written]).Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_rule_has_all_the_headings_of_its_page()
    {
        var lines = Command.Run("explain", "hop-hits-obstacle").Output.Split('\n').Select(line => line.TrimEnd('\r')).ToList();
        string[] headings = ["What it finds", "At the machine", "Example", "Instead", "The fix", "Not found, and false alarms", "Source"];
        Assert.Equal(headings.Length, headings.Count(lines.Contains));
        Assert.Contains(lines, line => line.Trim().Length > 1 && line.Trim().All(character => character == '^'));
        Assert.DoesNotContain(lines, line => line.Contains('~', StringComparison.Ordinal));
    }

    [Fact]
    public void Without_a_name_all_are_listed_in_groups()
    {
        var output = Command.Run("explain").Output;
        foreach (var part in new[] { "Findings: clearance", "G codes", "M codes", "Addresses", "Statements", "Functions", "Operators", "Variables", "Signs", "Readings", "Setup files", "Machine files", "NC4001", "G81", "returnLevel" })
            Assert.Contains(part, output, StringComparison.Ordinal);
    }

    [Fact]
    public void The_whole_reference_goes_into_a_folder()
    {
        using var scratch = new Scratch();
        var outcome = Command.In(scratch.Folder, "explain", "--all", "-o", "pages");
        Assert.Equal((0, ""), (outcome.ExitCode, outcome.Errors));
        var names = Command.Run("explain", "--format", "json").Json.GetProperty("entries").GetArrayLength();
        Assert.Equal(names + 1, Directory.GetFiles(scratch.At("pages"), "*.html").Length);
        Assert.Contains("hop-hits-obstacle", File.ReadAllText(scratch.At("pages/NC4001.html")), StringComparison.Ordinal);

        File.WriteAllText(scratch.At("pages/G81.html"), "old");
        Assert.Equal(0, Command.In(scratch.Folder, "explain", "--all", "-o", "pages", "--format", "markdown").ExitCode);
        Assert.Equal("old", File.ReadAllText(scratch.At("pages/G81.html")));
        Assert.Equal(0, Command.In(scratch.Folder, "explain", "--all", "-o", "pages").ExitCode);
        Assert.NotEqual("old", File.ReadAllText(scratch.At("pages/G81.html")));
        Assert.Equal(2 * (names + 1), Directory.GetFiles(scratch.At("pages")).Length);
    }

    [Fact]
    public void All_at_once_tells_every_name_with_its_source()
    {
        var output = Command.Run("explain", "--all").Output;
        var names = Command.Run("explain", "--format", "json").Json.GetProperty("entries").GetArrayLength();
        Assert.Equal(names, output.Split('\n').Count(line => line.TrimEnd('\r') == "Source"));
    }

    [Theory]
    [InlineData("name or --all", "explain", "G81", "--all")]
    [InlineData("--all", "explain", "-o", "pages")]
    [InlineData("--all and -o", "explain", "G81", "--format", "html")]
    [InlineData("html or markdown", "explain", "--all", "-o", "pages", "--format", "json")]
    public void What_does_not_go_together_is_said(string said, params string[] arguments)
    {
        using var scratch = new Scratch();
        var outcome = Command.In(scratch.Folder, arguments);
        Assert.Equal((2, ""), (outcome.ExitCode, outcome.Output));
        Assert.Contains(said, Assert.Single(outcome.ErrorLines), StringComparison.Ordinal);
        Assert.Empty(Directory.GetFileSystemEntries(scratch.Folder));
    }

    [Fact]
    public void A_folder_that_cannot_be_made_is_said()
    {
        using var scratch = new Scratch();
        scratch.Write("file", "");
        var outcome = Command.In(scratch.Folder, "explain", "--all", "-o", "file/pages");
        Assert.Equal(2, outcome.ExitCode);
        Assert.Contains("could not be written into file/pages", Assert.Single(outcome.ErrorLines), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("setup", "obstacles")]
    [InlineData("machine", "readings")]
    public void Schemas_are_JSON(string name, string member)
    {
        var schema = Command.Run("schema", name).Json;
        Assert.Equal(JsonValueKind.Object, schema.GetProperty("properties").GetProperty(member).ValueKind);
    }

    /// <summary>Names by the hundred hid what the command does.</summary>
    [Fact]
    public void Its_help_is_one_screen()
    {
        var output = Command.Run("explain", "--help").Output;
        Assert.True(output.Split('\n').Length < 25 && output.Length < 2000, output);
        Assert.Contains("explain [<NAME>...]", output, StringComparison.Ordinal);
    }
}
