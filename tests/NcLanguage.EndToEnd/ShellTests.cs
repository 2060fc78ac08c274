using System.Runtime.Versioning;
using NcLanguage.EndToEnd.Support;

namespace NcLanguage.EndToEnd;

/// <summary>Completion in the real zsh and fish, by the line that README.md gives. That of bash is tested with the command line.</summary>
[SupportedOSPlatform("linux")]
public sealed class ShellTests
{
    static readonly TimeSpan Limit = TimeSpan.FromMinutes(3);

    /// <summary>A zsh at the other end of a terminal: the Tab key is pressed behind each line, and what then stands there is read.</summary>
    const string Zsh = """
        zmodload zsh/zpty
        zpty z zsh -f -i
        zpty -w z 'PS1=; autoload -Uz compinit; compinit -u -D; source <(nclanguage completions zsh); print "IS"READY'
        zpty -r z seen '*ISREADY*'
        complete() {
          zpty -w -n z "$1"$'\t'
          zpty -r z seen "*$2*"
          print -r -- "$2"
          # Control-U takes the line away.
          zpty -w -n z $'\025'
        }
        complete 'nclanguage sche' 'nclanguage schema'
        complete 'nclanguage schema mach' 'schema machine'
        complete 'nclanguage check --fail' 'check --fail-on'
        complete 'nclanguage check cov' 'check cover-plate.nc'
        """;

    [EditorFact(Editor.Shells)]
    public async Task Zsh_completes_commands_choices_options_and_files()
    {
        using var folder = new ScratchFolder();
        folder.Write("job/cover-plate.nc", "M30\n");
        var run = await RunAsync(folder, ["zsh", "-f", "-c", Zsh]);
        Assert.Equal(["nclanguage schema", "schema machine", "check --fail-on", "check cover-plate.nc"], run);
    }

    [EditorTheory(Editor.Shells)]
    [InlineData("nclanguage sche", "schema")]
    [InlineData("nclanguage schema ", "cutting", "machine", "setup")]
    [InlineData("nclanguage check --fail", "--fail-on")]
    [InlineData("nclanguage check cov", "cover-plate.nc")]
    public async Task Fish_completes_commands_choices_options_and_files(string line, params string[] offered)
    {
        using var folder = new ScratchFolder();
        folder.Write("job/cover-plate.nc", "M30\n");
        // fish itself has the way to ask what it would offer.
        var run = await RunAsync(folder, ["fish", "-c", $"nclanguage completions fish | source; complete -C '{line}'"]);
        Assert.Equal(offered, run.Select(word => word.Trim()).Where(word => line.EndsWith(' ') ? word != "cover-plate.nc" : true));
    }

    static async Task<string[]> RunAsync(ScratchFolder folder, IReadOnlyList<string> command)
    {
        var environment = new Dictionary<string, string> { ["PATH"] = ClientPage.PathWithServer(folder), ["HOME"] = folder.At("home"), ["TERM"] = "xterm" };
        Directory.CreateDirectory(folder.At("home"));
        var run = await CommandLine.RunAsync(command, Limit, environment, folder.At("job"));
        Assert.True(run.ExitCode == 0, run.Output + run.Errors);
        return run.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
    }
}
