using NcLanguage.Control.Codes;
using NcLanguage.Reports.Grammars;

namespace NcLanguage.Reports.Tests.Grammars;

/// <summary>The colouring files of the repository are those that the tables make, and no row of a table is without a colour.</summary>
public sealed class GrammarTests
{
    [Theory]
    [InlineData("textmate", "grammars/nc.tmLanguage.json")]
    [InlineData("vim", "editor-clients/vim/syntax/nc.vim")]
    [InlineData("vim", "editor-clients/neovim/syntax/nc.vim")]
    [InlineData("emacs", "editor-clients/emacs/nc-words.el")]
    [InlineData("kate", "editor-clients/kate/nc.xml")]
    public void The_file_is_what_the_tables_make(string kind, string file) =>
        Assert.True(File.ReadAllText(Path.Combine(Root, file)) == Grammar.For(kind), $"{file} is stale: nclanguage grammar {kind} > {file}");

    [Fact]
    public void Every_kind_can_be_had_and_no_other() => Assert.All(Grammar.Kinds, kind => Assert.NotNull(Grammar.For(kind)));

    [Fact]
    public void Every_kind_of_word_has_one_family()
    {
        Assert.Equal(Enum.GetValues<WordKind>(), WordFamily.All.Select(family => family.Kind));
        Assert.Null(Grammar.For("none"));
    }

    [Fact]
    public void Every_code_stands_in_its_family_once()
    {
        var written = WordFamily.OfCodes.SelectMany(family => "GM".SelectMany(letter => family.Numbers(letter).Select(number => letter + number)));
        Assert.Equal(CodeTable.All.Select(code => code.Text).Order(StringComparer.Ordinal), written.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Every_letter_that_is_no_code_number_or_name_stands_in_a_family_once() =>
        Assert.Equal("ABCDEFHIJKLPQRSTUVWXYZ", string.Concat(WordFamily.OfLetters.SelectMany(family => family.Letters).Order()));

    static string Root
    {
        get
        {
            var folder = new DirectoryInfo(AppContext.BaseDirectory);
            while (!File.Exists(Path.Combine(folder.FullName, "NcLanguage.sln")))
                folder = folder.Parent!;
            return folder.FullName;
        }
    }
}
