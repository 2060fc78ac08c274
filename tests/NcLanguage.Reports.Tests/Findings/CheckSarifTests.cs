using System.Text.Json;
using NcLanguage.Checks;
using NcLanguage.Reports.Findings;

namespace NcLanguage.Reports.Tests.Findings;

public sealed class CheckSarifTests
{
    /// <summary>SARIF 2.1.0, help of a rule: plain text, and Markdown beside it (from memory); helpUri is left out, for the pages are
    /// nowhere on the web.</summary>
    [Fact]
    public void Each_rule_carries_its_page()
    {
        var rules = Written().GetProperty("runs")[0].GetProperty("tool").GetProperty("driver").GetProperty("rules").EnumerateArray().ToList();
        Assert.Equal(RuleList.All.Select(rule => rule.Info.Id), rules.Select(rule => rule.GetProperty("id").GetString()));
        Assert.All(rules, rule =>
        {
            var info = RuleList.Find(rule.GetProperty("id").GetString()!)!.Info;
            var (text, markdown) = (rule.GetProperty("help").GetProperty("text").GetString()!, rule.GetProperty("help").GetProperty("markdown").GetString()!);
            Assert.All(new[] { info.Finds, info.AtTheMachine, info.NotFound, info.Source }, said => Assert.Contains(said, text, StringComparison.Ordinal));
            var files = new[] { info.Setup, info.InsteadSetup, info.Machine }.Count(file => file is not null);
            Assert.Equal(2 + files, markdown.Split("```text\n").Length - 1);
            Assert.DoesNotContain(".md)", markdown, StringComparison.Ordinal);
            Assert.False(rule.TryGetProperty("helpUri", out _));
        });
    }

    static JsonElement Written()
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream))
            new CheckSarif("1.0.0", json).End(new CheckTotals());
        return JsonDocument.Parse(stream.ToArray()).RootElement;
    }
}
