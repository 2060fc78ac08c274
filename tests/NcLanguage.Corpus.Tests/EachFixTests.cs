using System.Text.RegularExpressions;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;

namespace NcLanguage.Corpus.Tests;

/// <summary>Each word of each program is forgotten, and every fix that is then offered taken alone: it mends what it is offered for, and no error or
/// warning comes with it.</summary>
public sealed partial class EachFixTests
{
    public static TheoryData<string> Programs => [.. CorpusProgram.Names];

    [Theory]
    [MemberData(nameof(Programs))]
    public void A_fix_mends_and_brings_nothing_new(string name)
    {
        var program = CorpusProgram.Of(name);
        var faults = Faults(program.Text.Split('\n')).ToList();
        Assert.NotEmpty(faults);
        var wrong = faults.AsParallel().SelectMany(fault => Wrong(program, fault)).Order(StringComparer.Ordinal).ToList();
        Assert.True(wrong.Count == 0, string.Join("\n", wrong));
    }

    /// <summary>A control reads small letters as large ones; words that a fix puts in are then small as well.</summary>
    [Theory]
    [MemberData(nameof(Programs))]
    public void In_small_letters_the_same_is_offered_in_small_letters(string name)
    {
        var program = CorpusProgram.Of(name);
        foreach (var (what, text) in Faults(program.Text.Split('\n')))
        {
            var offered = Edits(program.Analyse(text)).Select(edit => edit with { NewText = Small(edit.NewText) });
            Assert.Equal((what, string.Join('\n', offered)), (what, string.Join('\n', Edits(program.Analyse(Small(text))))));
        }
    }

    static IEnumerable<Edit> Edits(ProgramAnalysis analysis) => analysis.Findings.SelectMany(analysis.FixesOf).SelectMany(fix => fix.Edits);

    static string Small(string text) => Regex.Replace(text, @"\([^)\n]*\)?|[A-Z]", found => found.Value[0] == '(' ? found.Value : found.Value.ToLowerInvariant());

    /// <summary>Texts with one word missing. What starts something is also forgotten together with all that would end it.</summary>
    static IEnumerable<(string What, string Text)> Faults(string[] lines)
    {
        for (var i = 0; i < lines.Length; i++)
            foreach (Match word in Word().Matches(Comment().Replace(lines[i], comment => new string(' ', comment.Length))))
            {
                var without = (string[])lines.Clone();
                without[i] = lines[i].Remove(word.Index, word.Length);
                yield return ($"line {i + 1}, {lines[i]}, without {word.Value}", string.Join('\n', without));
                foreach (var end in word.Value switch { "M3" => ["M5"], "M8" => ["M9"], "M30" => (string[])["M5", "M9", "G80"], _ => [] })
                {
                    var first = word.Value == "M30" ? 0 : i;
                    yield return ($"line {i + 1}, {lines[i]}, without {word.Value} and all {end}", string.Join('\n',
                        without.Select((line, at) => at < first ? line : Regex.Replace(line, $@"\b{end}\b", ""))));
                }
            }
    }

    static IEnumerable<string> Wrong(CorpusProgram program, (string What, string Text) fault)
    {
        var analysis = program.Analyse(fault.Text);
        var before = Counts(analysis);
        foreach (var finding in analysis.Findings)
            foreach (var fix in analysis.FixesOf(finding))
            {
                var offer = $"{fault.What}: {finding.Line + 1} {finding.Name}, \"{fix.Title}\"";
                var mended = analysis.WithText(TextEdits.Apply(analysis.Text, fix.Edits));
                // Which feed goes with another speed is a second choice, as the fix of the speed says.
                foreach (var brought in mended.Findings.Where(other => other.Severity != Severity.Note && (finding.Name, other.Name) != ("cutting-speed", "feed-per-tooth")))
                    if (Counts(mended)[brought.Name] > before.GetValueOrDefault(brought.Name))
                        yield return $"{offer} brings {brought.Name}: {brought.Line + 1} {brought.Message}";
                if (Counts(mended).GetValueOrDefault(finding.Name) >= before[finding.Name])
                    yield return $"{offer} does not mend";
            }
    }

    static Dictionary<string, int> Counts(ProgramAnalysis analysis) => analysis.Findings
        .GroupBy(finding => finding.Name).ToDictionary(group => group.Key, group => group.Count());

    [GeneratedRegex(@"[A-Z][-+]?[0-9.]+")]
    private static partial Regex Word();

    [GeneratedRegex(@"\([^)]*\)")]
    private static partial Regex Comment();
}
