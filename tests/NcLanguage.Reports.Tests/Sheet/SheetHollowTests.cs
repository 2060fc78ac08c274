namespace NcLanguage.Reports.Tests.Sheet;

/// <summary>What the stock has already stands on the sheet with the numbers of the setup file.</summary>
public sealed class SheetHollowTests
{
    const string Setup = """
        { "stock": { "min": [0, 0, -20], "max": [100, 40, 0],
                     "hollows": [ { "name": "cored <b>", "center": [30, 20], "diameter": 18 }, { "min": [60, -5], "max": [80, 12], "cornerRadius": 4, "bottom": -6.5 } ] } }
        """;

    const string Program = "G21 G90 G17 G54\nG0 X0 Y0\nM30";

    [Fact]
    public void The_sheet_lists_them()
    {
        var page = SheetPage.Of(Program, Setup);

        Assert.Contains("100 × 40 × 20 mm, 2 hollows in it", page.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("cored <b>", page.Html, StringComparison.Ordinal);
        var rows = page.Rows("hollows");
        Assert.Equal(
            ["cored <b>|bore, 18 mm about X30 Y20|21|39|11|29|through", "hollow 2|pocket, corners R4 mm|60|80|-5|12|Z-6.5"], rows.Select(row => string.Join('|', row.Values)));
    }
}
