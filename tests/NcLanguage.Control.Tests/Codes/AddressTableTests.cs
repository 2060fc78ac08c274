using NcLanguage.Control.Codes;

namespace NcLanguage.Control.Tests.Codes;

public class AddressTableTests
{
    [Fact]
    public void Has_a_row_for_every_letter_in_order()
    {
        Assert.Equal("ABCDEFGHIJKLMNOPQRSTUVWXYZ", string.Concat(AddressTable.All.Select(row => row.Letter)));
        Assert.All(AddressTable.All, row =>
        {
            Assert.Same(row, AddressTable.Find(row.Letter));
            Assert.Same(row, AddressTable.Find(char.ToLowerInvariant(row.Letter)));
            CodeTableTests.AssertSentence(row.Meaning);
            Assert.NotEmpty(row.Name);
            Assert.NotEmpty(row.Source);
        });
    }

    [Fact]
    public void Letters_of_axes_the_mill_lacks_say_so()
    {
        Assert.Equal("ABCEUVW", string.Concat(AddressTable.All.Where(row => !row.HasMeaning).Select(row => row.Letter)));
        Assert.All(AddressTable.All.Where(row => !row.HasMeaning), row => Assert.Contains("three-axis mill", row.Meaning, StringComparison.Ordinal));
    }

    // NISTIR 6556 table 3 lists every letter but these.
    [Fact]
    public void Letters_outside_the_published_table_name_another_source() => Assert.Equal(
        "EOUVW", string.Concat(AddressTable.All.Where(row => !row.Source.StartsWith("NISTIR 6556 table 3", StringComparison.Ordinal)).Select(row => row.Letter)));

    [Theory]
    [InlineData('@')]
    [InlineData('[')]
    [InlineData('{')]
    [InlineData('5')]
    [InlineData('\0')]
    [InlineData('Ä')]
    [InlineData('\u017F')]
    public void Knows_no_other_character(char character) => Assert.Null(AddressTable.Find(character));
}
