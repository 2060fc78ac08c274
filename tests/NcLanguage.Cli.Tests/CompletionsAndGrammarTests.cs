using System.Diagnostics;
using NcLanguage.Cli.Tests.Support;

namespace NcLanguage.Cli.Tests;

/// <summary>Completion in a real bash, and the commands that print files for other programs.</summary>
public sealed class CompletionsAndGrammarTests
{
    [Theory]
    [InlineData("nclanguage che", "check")]
    [InlineData("nclanguage check --port", "--portable")]
    [InlineData("nclanguage check --format s", "sarif")]
    [InlineData("nclanguage grammar t", "textmate")]
    [InlineData("nclanguage explain G8", "G80 G81 G82 G83 G84 G85 G86 G87 G88 G89")]
    [InlineData("nclanguage figure sp", "speed spot")]
    public void Bash_offers(string line, string expected) => Assert.Equal(expected, Offers(line));

    /// <summary>Nothing to offer: bash then completes files. Options only come where one was begun.</summary>
    [Theory]
    [InlineData("nclanguage check ")]
    [InlineData("nclanguage check zzz")]
    public void Bash_completes_files_where_a_path_is_written(string line) => Assert.Equal("", Offers(line));

    [Theory]
    [InlineData("zsh", "compdef _nclanguage nclanguage")]
    [InlineData("fish", "complete -c nclanguage")]
    public void Other_shells_have_their_own(string shell, string expected) => Assert.Contains(expected, Command.Run("completions", shell).Output, StringComparison.Ordinal);

    [Theory]
    [InlineData("completions", "bsh", "did you mean bash?")]
    [InlineData("grammar", "texmate", "did you mean textmate?")]
    public void What_there_is_not_is_said(string command, string name, string expected)
    {
        var outcome = Command.Run(command, name);
        Assert.Equal(2, outcome.ExitCode);
        Assert.Contains(expected, Assert.Single(outcome.ErrorLines), StringComparison.Ordinal);
    }

    [Fact]
    public void A_grammar_is_printed_as_it_stands_in_its_file() =>
        Assert.Contains("\"scopeName\": \"source.nc\"", Command.Run("grammar", "textmate").Output, StringComparison.Ordinal);

    /// <summary>What bash would offer for a line whose cursor stands at its end.</summary>
    static string Offers(string line)
    {
        const string Script = """
            source <("$1" completions bash)
            read -ra COMP_WORDS <<< "$2"
            [[ $2 == *' ' ]] && COMP_WORDS+=("")
            COMP_CWORD=$((${#COMP_WORDS[@]} - 1))
            COMP_WORDS[0]=$1
            _nclanguage
            echo "${COMPREPLY[*]}"
            complete -p nclanguage >&2
            """;
        var start = new ProcessStartInfo("bash", ["-c", Script, "bash", Command.Executable, line]) { RedirectStandardOutput = true, RedirectStandardError = true };
        using var bash = Process.Start(start)!;
        var errors = bash.StandardError.ReadToEndAsync();
        var output = bash.StandardOutput.ReadToEnd().TrimEnd('\n');
        bash.WaitForExit();
        Assert.Contains("-F _nclanguage nclanguage", errors.Result, StringComparison.Ordinal);
        return string.Join(' ', output.Split(' ').Order(StringComparer.Ordinal));
    }
}
