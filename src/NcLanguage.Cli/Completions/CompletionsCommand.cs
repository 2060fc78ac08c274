using System.CommandLine;
using NcLanguage.Cli.Common;
using NcLanguage.Machine.Loading;

namespace NcLanguage.Cli.Completions;

/// <summary><c>completions bash|zsh|fish</c>: what makes a shell complete commands, options and their choices.</summary>
/// <remarks>The scripts ask the executable itself, by the directive [suggest:POSITION] that the command line answers. Where it has nothing, the shell offers files.</remarks>
static class CompletionsCommand
{
    const string Bash = """
        # source <(nclanguage completions bash)
        _nclanguage() {
          local word=${COMP_WORDS[COMP_CWORD]} line="${COMP_WORDS[*]:1:COMP_CWORD}" offer
          local -a offers=()
          while IFS= read -r offer; do
            # Options only where one was begun: files come more often.
            [[ $offer == [-/]* && $word != -* ]] || offers+=("$offer")
          done < <("${COMP_WORDS[0]}" "[suggest:${#line}]" "$line" 2>/dev/null)
          COMPREPLY=()
          for offer in "${offers[@]}"; do
            [[ $offer == "$word"* ]] && COMPREPLY+=("$offer")
          done
        }
        complete -o default -F _nclanguage nclanguage

        """;

    const string Zsh = """
        # source <(nclanguage completions zsh)
        _nclanguage() {
          local line="${(j: :)words[2,CURRENT]}"
          local -a offers
          offers=("${(@f)$("$words[1]" "[suggest:${#line}]" "$line" 2>/dev/null)}")
          # Options only where one was begun: files come more often.
          [[ "$words[CURRENT]" == -* ]] || offers=("${(@)offers:#[-/]*}")
          offers=("${(@)offers:#}")
          if (( $#offers )); then compadd -- "${offers[@]}"; else _files; fi
        }
        compdef _nclanguage nclanguage

        """;

    const string Fish = """
        # nclanguage completions fish | source
        function __nclanguage_offers
          set -l words (commandline -opc) (commandline -ct)
          set -l line (string join ' ' -- $words[2..-1])
          set -l offers (nclanguage "[suggest:"(string length -- "$line")"]" "$line" 2>/dev/null)
          # Options only where one was begun: files come more often.
          string match -q -- '-*' (commandline -ct); or set offers (string match -rv -- '^[-/]' $offers)
          printf '%s\n' $offers
        end
        complete -c nclanguage -a '(__nclanguage_offers)'

        """;

    static readonly string[] Shells = ["bash", "zsh", "fish"];

    public static Command Create()
    {
        var shell = new Argument<string>("bash|zsh|fish") { Description = "Which shell." };
        shell.CompletionSources.Add(Shells);
        var command = new Command("completions", "Prints what makes a shell complete commands, options and their choices.") { shell };
        command.SetAction(parse => Run(parse.GetValue(shell)!));
        return command;
    }

    static int Run(string shell)
    {
        Console.Out.Write(shell switch
        {
            "bash" => Bash,
            "zsh" => Zsh,
            "fish" => Fish,
            _ => throw new CannotRunException(
                $"there are no completions for {shell}; {NearestName.DidYouMean(shell, Shells, "there are those for bash, zsh and fish")}"),
        });
        return ExitCode.Clean;
    }
}
