using System.Text.Json;
using NcLanguage.Checks;
using NcLanguage.Control.Codes;
using NcLanguage.Machine;
using NcLanguage.Machine.Profiles;
using NcLanguage.Reports.Explain;

namespace NcLanguage.Reports.Tests.Explain;

/// <summary>Whether every row of every table can be explained. The rows are counted where they stand, not where the explanations are made.</summary>
public sealed class GlossaryTests
{
    [Fact]
    public void Every_row_of_every_table_is_explained()
    {
        Check(RuleList.All, rule => rule.Info.Name, ExplainedKind.Rule, rule => [rule.Info.Finds, rule.Info.AtTheMachine, rule.Info.NotFound, rule.Info.Source]);
        Check(CodeTable.All, row => row.Text, ExplainedKind.Code, row => [row.Meaning, row.Source, .. row.Words.Select(word => word.Meaning)]);
        Check(AddressTable.All, row => row.Letter.ToString(), ExplainedKind.Address, row => [row.Meaning, row.Source]);
        Check(StatementTable.All, row => row.Keyword, ExplainedKind.Statement, row => [row.Meaning, row.Form, row.Source]);
        Check(FunctionTable.All, row => row.Text, ExplainedKind.Function, row => [row.Meaning, row.Example, row.Source]);
        Check(VariableTable.All, row => row.Text, ExplainedKind.Variable, row => [row.Meaning, row.Source]);
        Check(SignTable.All, row => row.Text, ExplainedKind.Sign, row => [row.Meaning, row.Source]);
        Check(ReadingTable.All, row => row.Name, ExplainedKind.Reading, row => [row.Meaning, row.Consequence, .. row.Choices.Select(choice => $"{choice.Name}: {choice.Meaning}")]);
        Check(ProgramMarkTable.All, row => "programMarks." + row.Name, ExplainedKind.Reading, row => [row.Meaning]);
    }

    [Theory]
    [InlineData("setup")]
    [InlineData("machine")]
    [InlineData("cutting")]
    public void Every_member_of_the_schemas_is_explained(string file)
    {
        using var schema = JsonDocument.Parse(file switch { "setup" => Schemas.Setup, "machine" => Schemas.Machine, _ => Schemas.Cutting });
        foreach (var member in schema.RootElement.GetProperty("properties").EnumerateObject().Where(member => member.Name != "$schema"))
        {
            var entry = Assert.Single(Glossary.All, entry => entry.Kind == ExplainedKind.Member && entry.Name == $"{file}.{member.Name}");
            Assert.Contains(entry.Sections, section => section.Text == member.Value.GetProperty("description").GetString());
        }
    }

    /// <summary>Names that a schema has by a pattern are told too, what the objects so named hold, and what the entries of a list within a member do.</summary>
    [Theory]
    [InlineData("machine.codes.does", "any code ", "any code: does ", "any code: as ", "any code: words ")]
    [InlineData("setup.variables", "any variable ")]
    [InlineData("stock.hollows.cornerRadius", "hollows ", "hollows: center ", "hollows: bottom ")]
    [InlineData("setup.workOffsets", "G59.3 ", "G54.1 P1 to P999 ")]
    public void Members_that_are_named_by_a_pattern_are_told_by_what_they_are(string name, params string[] labels)
    {
        var members = Assert.Single(Assert.Single(Glossary.Find(name)).Sections, section => section.Heading == "Its members").Text.Split('\n');
        Assert.All(labels, label => Assert.Single(members, member => member.StartsWith(label, StringComparison.Ordinal)));
    }

    [Fact]
    public void What_a_name_of_a_family_may_be_is_told_beside_the_choices() =>
        Assert.Contains(Assert.Single(Glossary.Find("setup.frame")).Sections, section => section.Text == "One of G54, G55, G56, G57, G58, G59, G59.1, G59.2, G59.3, or G54.1 P1 to P999; null is as if it were left out.");

    [Fact]
    public void Each_explanation_ends_with_its_source() => Assert.All(Glossary.All, entry =>
    {
        Assert.Equal("Source", entry.Sections[^1].Heading);
        Assert.All(entry.Sections, section => Assert.False(string.IsNullOrWhiteSpace(section.Text), $"{entry.Name}: {section.Heading}"));
        Assert.Equal(entry.Sections.Length, entry.Sections.DistinctBy(section => section.Heading).Count());
    });

    [Theory]
    [InlineData("#5221", "#5221 to #5226")]
    [InlineData("#5226", "#5221 to #5226")]
    [InlineData("#5220", "#5220")]
    [InlineData("#100", "#34 to #5399")]
    [InlineData("#33", "#1 to #33")]
    [InlineData("#name", "#<name>")]
    [InlineData("#<name>", "#<name>")]
    [InlineData("#<step over>", "#<name>")]
    [InlineData("programMarks", "programMarks.percent", "programMarks.number", "programMarks.longestBlock", "programMarks.lowerCase", "programMarks.characters")]
    [InlineData("(", "( )")]
    [InlineData("()", "( )")]
    [InlineData("%", "%")]
    [InlineData("holderGauge", "setup.tools")]
    [InlineData("setup.tools.pitch", "setup.tools")]
    [InlineData("stock", "setup.stock")]
    [InlineData("rapid", "machine.rapid")]
    [InlineData("spindle.max", "machine.spindle")]
    [InlineData("lowerCase", "programMarks.lowerCase")]
    [InlineData("tools", "setup.tools", "machine.tools")]
    [InlineData("/", "/", "/")]
    [InlineData("if", "IF", "IF")]
    [InlineData("#6000")]
    public void A_name_leads_to(string name, params string[] found) => Assert.Equal(found, Glossary.Find(name).Select(entry => entry.Name));

    /// <summary>What a member may be is told from the schema's own words.</summary>
    [Fact]
    public void A_members_values()
    {
        Assert.Equal("One of mm, inch; null is as if it were left out.", Text("setup.units", "What it may be"));
        Assert.Equal("A number, from 0 to 100000; null is as if it were left out.", Text("setup.clearance", "What it may be"));
        Assert.Equal("A list of 3 numbers; null is as if it were left out.", Text("machine.home", "What it may be"));
        Assert.Contains("number          needed: a whole number, from 1 to 99999. The number that the T word calls it by.", Text("setup.tools", "Its members"), StringComparison.Ordinal);
        Assert.Contains("x  a list of 2 numbers. Least", Text("machine.travel", "Its members"), StringComparison.Ordinal);
    }

    /// <summary>What outlives its block without being modal says until when (NISTIR 6556 §3.5.5 and §3.5.18; G52, M19 and M29 common practice).</summary>
    [Theory]
    [InlineData("G52", "another G52")]
    [InlineData("G92", "G92.1")]
    [InlineData("G92.3", "G92.1")]
    [InlineData("G10", "written anew")]
    [InlineData("M29", "G80")]
    [InlineData("M19", "M3 or M4")]
    public void How_long_a_code_holds(string code, string words) => Assert.Contains(words, Text(code, "How long it holds"), StringComparison.Ordinal);

    /// <summary>Common practice: A is #1, B #2, I #4, D #7, X #24, Z #26; G, L, N, O and P are none.</summary>
    [Fact]
    public void What_the_words_of_a_call_become()
    {
        var text = Text("G65", "Arguments");
        Assert.All(new[] { "A #1,", "B #2,", "I #4,", "D #7,", "M #13,", "X #24,", "Z #26." }, pair => Assert.Contains(pair, text, StringComparison.Ordinal));
        Assert.DoesNotContain("P #", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("P", "factor of scaling (G51)")]
    [InlineData("R", "G10")]
    [InlineData("R", "of the spindle (M19)")]
    public void What_a_letter_may_say(string letter, string words) => Assert.Contains(words, Text(letter, "What it says"), StringComparison.Ordinal);

    static string Text(string name, string heading) => Glossary.Find(name).Single().Sections.Single(section => section.Heading == heading).Text;

    static void Check<T>(IReadOnlyCollection<T> rows, Func<T, string> name, ExplainedKind kind, Func<T, string[]> said)
    {
        var entries = Glossary.All.Where(entry => entry.Kind == kind).ToList();
        Assert.NotEmpty(rows);
        Assert.All(rows, row => Assert.Contains(entries, entry =>
            entry.Name == name(row) && said(row).All(text => entry.Sections.Any(section => section.Text.Contains(text, StringComparison.Ordinal)))));
    }
}
