using NcLanguage.Control.Codes;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Control.Tests.Codes;

public class CodeTableTests
{
    /// <summary>NISTIR 6556 table 4, one family of codes a line. Its group 1 is two here: cycles are a group of their own, as in
    /// ISO 6983-1 (from memory).</summary>
    static readonly string[] PublishedGroups =
    [
        "G0 G1 G2 G3 G38.2",
        "G80 G81 G82 G83 G84 G85 G86 G87 G88 G89",
        "G17 G18 G19",
        "G90 G91",
        "G93 G94",
        "G20 G21",
        "G40 G41 G42",
        "G43 G49",
        "G98 G99",
        "G54 G55 G56 G57 G58 G59 G59.1 G59.2 G59.3",
        "G61 G61.1 G64",
        "G4 G10 G28 G30 G53 G92 G92.1 G92.2 G92.3",
        "M0 M1 M2 M30 M60",
        "M6",
        "M3 M4 M5",
        "M7 M8 M9",
        "M48 M49",
    ];

    /// <summary>Codes of the trade that the published specification lacks.</summary>
    const string OtherCodes =
        "G9 G15 G16 G31 G33 G38.3 G38.4 G38.5 G44 G50 G50.1 G51 G51.1 G52 G54.1 G60 G62 G65 G68 G69 G70 G71 G73 G74 G76 G95 G96 G97 M19 M29 M98 M99";

    public static TheoryData<string> Rows => [.. CodeTable.All.Select(row => row.Text)];

    [Fact]
    public void Holds_every_code_once()
    {
        var expected = PublishedGroups.Append(OtherCodes).SelectMany(line => line.Split(' ')).Order(StringComparer.Ordinal);
        Assert.Equal(expected, CodeTable.All.Select(row => row.Text).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Groups_are_those_of_the_published_table()
    {
        var groups = PublishedGroups.Select(line => Assert.Single(line.Split(' ').Select(code => Find(code).Group).Distinct())).ToList();
        Assert.Equal(groups.Count, groups.Distinct().Count());
    }

    // ISO 6983-1 (from memory): thread cutting is a motion, G95 a feed mode, G96 and G97 exclude each other; the rest common practice.
    [Theory]
    [InlineData("G33", "G1")]
    [InlineData("G38.5", "G38.2")]
    [InlineData("G44", "G43")]
    [InlineData("G54.1", "G54")]
    [InlineData("G70", "G20")]
    [InlineData("G71", "G21")]
    [InlineData("G73", "G83")]
    [InlineData("G74", "G84")]
    [InlineData("G76", "G86")]
    [InlineData("G60", "G61")]
    [InlineData("G95", "G94")]
    [InlineData("G96", "G97")]
    [InlineData("G50", "G51")]
    [InlineData("G68", "G69")]
    [InlineData("G15", "G16")]
    public void Excludes(string code, string other) => Assert.Equal(Find(other).Group, Find(code).Group);

    [Theory]
    [MemberData(nameof(Rows))]
    public void Says_what_the_control_does_and_where_that_is_laid_down(string code)
    {
        var row = Find(code);

        AssertSentence(row.Meaning);
        Assert.Matches("^(NISTIR 6556 §3\\.[56]\\.\\d+(\\.\\d+)?|ISO 6983-1 \\(from memory\\)|common practice)$", row.Source);
        Assert.Matches("^(XY|XZ|YZ|[a-z])", row.Name);
        Assert.False(row.Name.EndsWith('.'));
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void Takes_each_word_once_and_only_known_ones(string code)
    {
        var row = Find(code);

        Assert.Equal(row.Words.Length, row.Words.Select(word => word.Letter).Distinct().Count());
        Assert.All(row.Words, word =>
        {
            Assert.NotNull(AddressTable.Find(word.Letter));
            Assert.True(row.Takes(word.Letter));
            Assert.NotEmpty(word.Meaning);
            Assert.DoesNotContain(word.Letter, "GMN");
        });
        Assert.Equal(row.Words.Length, "ABCDEFGHIJKLMNOPQRSTUVWXYZ".Count(row.Takes));
        Assert.NotEqual(1, row.Words.Count(word => word.Need == WordNeed.OneOf));
    }

    // NISTIR 6556 §3.5.16 and §3.5.16.4: Z and R are needed at first use, and Q for pecks; §3.5.16.8: K for back boring.
    [Theory]
    [InlineData("G81", "ZR")]
    [InlineData("G82", "ZR")]
    [InlineData("G83", "ZRQ")]
    [InlineData("G84", "ZR")]
    [InlineData("G85", "ZR")]
    [InlineData("G86", "ZR")]
    [InlineData("G87", "ZRK")]
    [InlineData("G88", "ZR")]
    [InlineData("G89", "ZR")]
    [InlineData("G73", "ZRQ")]
    public void A_cycle_needs_its_words_at_first_use(string code, string letters) => Assert.Equal(
        letters.Order(), Find(code).Words.Where(word => word.Need == WordNeed.CarriedOver).Select(word => word.Letter).Order());

    // NISTIR 6556 §3.5.4, §3.5.5, §3.5.11 and, for the rest, common practice.
    [Theory]
    [InlineData("G10", "LP")]
    [InlineData("G43", "H")]
    [InlineData("G54.1", "P")]
    [InlineData("G65", "P")]
    [InlineData("G68", "R")]
    [InlineData("M98", "P")]
    public void Needs_its_words_in_the_block(string code, string letters) => Assert.Equal(
        letters.Order(), Find(code).Words.Where(word => word.Need == WordNeed.Required).Select(word => word.Letter).Order());

    [Fact]
    public void Unit_codes_exist_under_one_reading_only()
    {
        var published = new Readings { Units = UnitReading.G20G21 };
        var other = new Readings { Units = UnitReading.G70G71 };

        Assert.Equal(["G20", "G21"], CodeTable.All.Where(row => !row.ExistsUnder(other)).Select(row => row.Text));
        Assert.Equal(["G70", "G71"], CodeTable.All.Where(row => !row.ExistsUnder(published)).Select(row => row.Text));
    }

    [Theory]
    [InlineData('G', 811)]
    [InlineData('G', 430 + 1)]
    [InlineData('G', 1000)]
    [InlineData('G', 10000)]
    [InlineData('G', -10)]
    [InlineData('G', int.MaxValue)]
    [InlineData('G', int.MinValue)]
    [InlineData('M', 31)]
    [InlineData('M', 100)]
    [InlineData('X', 0)]
    [InlineData('\uFF27', 0)] // A full-width G.
    [InlineData('\0', 0)]
    public void Knows_no_code_outside(char letter, int tenths) => Assert.Null(CodeTable.Find(letter, tenths));

    [Fact]
    public void Finds_in_either_case_without_allocation()
    {
        Assert.Same(CodeTable.Find('G', 810), CodeTable.Find('g', 810));
        Assert.Same(CodeTable.Find('M', 30), CodeTable.Find('m', 30));

        var before = GC.GetAllocatedBytesForCurrentThread();
        var found = 0;
        for (var tenths = -5; tenths < 1100; tenths++)
            found += CodeTable.Find('G', tenths) is null ? 0 : 1;
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
        Assert.Equal(CodeTable.All.Count(row => row.Letter == 'G'), found);
    }

    internal static void AssertSentence(string text)
    {
        Assert.Matches("^[A-Z][^.!?\r\n]*(\\.\\d[^.!?\r\n]*)*\\.$", text);
        Assert.DoesNotContain("  ", text, StringComparison.Ordinal);
    }

    static CodeEntry Find(string code)
    {
        var parts = code[1..].Split('.');
        var tenths = int.Parse(parts[0]) * 10 + (parts.Length > 1 ? int.Parse(parts[1]) : 0);
        var row = CodeTable.Find(code[0], tenths);
        Assert.NotNull(row);
        Assert.Equal(code, row.Text);
        return row;
    }
}
