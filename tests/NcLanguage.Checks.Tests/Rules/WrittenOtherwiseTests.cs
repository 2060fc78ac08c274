using System.Globalization;
using System.Text.RegularExpressions;
using NcLanguage.Checks.Analysis;

namespace NcLanguage.Checks.Tests.Rules;

/// <summary>Each rule's example says the same when it is written otherwise: the same is found in the same blocks. An inch is 25.4 mm (ISO 31-1); small letters and blanks mean nothing (NISTIR 6556 §3.1).</summary>
public sealed partial class WrittenOtherwiseTests
{
    /// <summary>What these rules speak of is the writing itself.</summary>
    static readonly string[] OfNumbers = ["number-without-point", "units-mixed", "units-against-setup", "datum-against-setup"];

    static readonly string[] OfBlanks = ["block-too-long"];

    static IEnumerable<string> Rules => RuleList.All.Where(rule => rule is not SetupRule).Select(rule => rule.Info.Name);

    public static TheoryData<string> InAnyUnit => [.. Rules.Except(OfNumbers)];

    public static TheoryData<string> InAnyLayout => [.. Rules.Except(OfBlanks)];

    [Theory]
    [MemberData(nameof(InAnyUnit))]
    public void In_inches(string name) => SaysTheSame(name, text => Millimetres().Replace(InWords(text, InInches), "G20"));

    [Theory]
    [MemberData(nameof(InAnyLayout))]
    public void In_small_letters_without_blanks(string name) =>
        SaysTheSame(name, text => InWords(text, words => words.Replace(" ", "", StringComparison.Ordinal).ToLowerInvariant()));

    static void SaysTheSame(string name, Func<string, string> otherwise)
    {
        var info = RuleList.Find(name)!.Info;
        var text = MarkedProgram.Parse(info.Example, name).Text;
        var changed = Examples.Analyse(otherwise(text), info);
        Assert.Equal(Found(Examples.Analyse(text, info)), Found(changed));
        // Nor does a fix leave the finding, or bring another.
        var known = changed.Findings.Select(finding => finding.Name).ToHashSet();
        for (var pass = 0; pass < 20; pass++)
        {
            var fix = changed.Findings.Where(finding => finding.Name == name).SelectMany(finding => changed.FixesOf(finding).Take(1)).FirstOrDefault();
            if (fix is null)
                break;
            changed = Examples.Analyse(TextEdits.Apply(changed.Text, fix.Edits).ToString(), info);
        }
        if (info.FixSafety != FixSafety.None)
            known.Remove(name);
        Assert.True(changed.Findings.All(finding => known.Contains(finding.Name)), Examples.Show(changed));
    }

    static string Found(ProgramAnalysis analysis) => string.Join(", ", analysis.Findings.Select(finding => $"{finding.Line + 1} {finding.Name}"));

    /// <summary>The text with something done to what is no comment.</summary>
    static string InWords(string text, Func<string, string> change) => string.Join(
        "\n", text.Split('\n').Select(line => string.Concat(CommentsApart().Split(line).Select((piece, i) => i % 2 == 0 ? change(piece) : piece))));

    /// <summary>Words of lengths and feeds; what P, Q, R and the like are to some codes is no length.</summary>
    static string InInches(string words) => Lengths().Replace(words, word =>
        (OfLengthsOnly().IsMatch(words) ? "YZ" : Turned().IsMatch(words) ? "XYZ" : "XYZIJKRQF").Contains(word.Groups[1].Value, StringComparison.Ordinal)
            ? string.Create(CultureInfo.InvariantCulture, $"{word.Groups[1].Value}{double.Parse(word.Groups[2].Value.TrimEnd('.'), CultureInfo.InvariantCulture) / 25.4:0.0000000}")
            : word.Value);

    [GeneratedRegex(@"\bG21\b")]
    private static partial Regex Millimetres();

    [GeneratedRegex(@"(\([^)]*\)?|;.*$)")]
    private static partial Regex CommentsApart();

    [GeneratedRegex(@"([XYZIJKRQF])(-?\d*\.?\d+\.?)(?![\d#\[])")]
    private static partial Regex Lengths();

    [GeneratedRegex(@"\b(G0?4|M98|G65|G10|G33|G93)\b")]
    private static partial Regex OfLengthsOnly();

    [GeneratedRegex(@"\bG(68|51)\b")]
    private static partial Regex Turned();
}
