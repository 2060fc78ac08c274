using System.Collections.Immutable;
using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;
using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Loading;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Reports.Sheet;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Reports.Tests.Sheet;

/// <summary>A setup sheet, read back from its page.</summary>
sealed partial class SheetPage
{
    SheetPage(string html) => Html = html;

    public string Html { get; }

    /// <summary>The text between the tags, as a reader sees it.</summary>
    public string Text => WebUtility.HtmlDecode(Tag().Replace(Style().Replace(Html, ""), " "));

    public static SheetPage Of(string program, string? setup = null, string path = "part.nc", ImmutableArray<SetupProblem> problems = default)
    {
        var read = setup is null ? Setup.None : Trace.Operations.SetupOf(setup);
        var analysis = ProgramAnalysis.Create(SourceText.From(program), read, MachineProfile.IsoMill with { IsChosen = true });
        return Of(new SheetInput(path, analysis, problems.IsDefault ? [] : problems, new DateTimeOffset(2026, 3, 4, 15, 6, 0, TimeSpan.Zero)));
    }

    public static SheetPage Of(SheetInput input) => new(SetupSheet.Html(input, CancellationToken.None));

    /// <summary>The rows of a table: cells by the name of their column, which has its unit behind it.</summary>
    public List<Dictionary<string, string>> Rows(string table)
    {
        var markup = Regex.Match(Html, $"<table id=\"{table}\".*?</table>", RegexOptions.Singleline).Value;
        Assert.NotEqual("", markup);
        var names = Cells(Regex.Match(markup, "<thead>.*?</thead>", RegexOptions.Singleline).Value, "th");
        return [.. Row().Matches(markup[markup.IndexOf("<tbody>", StringComparison.Ordinal)..]).Select(row =>
            names.Zip(Cells(row.Value, "t[dh]")).ToDictionary(pair => pair.First, pair => pair.Second))];
    }

    public static double Number(string cell) => double.Parse(cell, CultureInfo.InvariantCulture);

    static List<string> Cells(string markup, string tag) => [.. Regex.Matches(markup, $"<{tag}[^a].*?</{tag}>|<{tag}>.*?</{tag}>", RegexOptions.Singleline)
        .Select(cell => WebUtility.HtmlDecode(Tag().Replace(cell.Value.Replace(" <span>", " ", StringComparison.Ordinal), "")).Trim())];

    [GeneratedRegex("<[^>]+>")]
    private static partial Regex Tag();

    [GeneratedRegex("<style>.*?</style>", RegexOptions.Singleline)]
    private static partial Regex Style();

    [GeneratedRegex("<tr.*?</tr>", RegexOptions.Singleline)]
    private static partial Regex Row();
}
