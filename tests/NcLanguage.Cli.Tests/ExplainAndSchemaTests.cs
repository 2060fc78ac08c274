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
        foreach (var part in new[] { "Findings: clearance", "G codes", "M codes", "Addresses", "Statements", "Functions", "Readings", "NC4001", "G81", "returnLevel" })
            Assert.Contains(part, output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("setup", "obstacles")]
    [InlineData("machine", "readings")]
    public void Schemas_are_JSON(string name, string member)
    {
        var schema = Command.Run("schema", name).Json;
        Assert.Equal(JsonValueKind.Object, schema.GetProperty("properties").GetProperty(member).ValueKind);
    }
}
