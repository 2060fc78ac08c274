using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Codes;
using NcLanguage.Machine.Profiles;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing;

/// <summary>What a code does that the machine has of its own: as its file says.</summary>
static class OwnCodeHover
{
    public static MachineCode? At(ProgramAnalysis analysis, in Token token)
    {
        foreach (var code in analysis.Machine.Codes)
            if (token.IsWord(code.Letter) && Math.Abs(token.Value * 10 - code.Tenths) < 0.001)
                return code;
        return null;
    }

    /// <summary>The code of the machine's own in a block whose word a letter is; null where there is none.</summary>
    public static MachineCode? WithWord(ProgramAnalysis analysis, in Block block, char letter)
    {
        foreach (ref readonly var token in block.Tokens)
            if (At(analysis, token) is { } code && code.Words.Contains(letter, StringComparison.Ordinal))
                return code;
        return null;
    }

    /// <summary>Where what is told of such a code is from.</summary>
    public const string Source = "\"codes\" of the machine file";

    public static string Of(ProgramAnalysis analysis, MachineCode code)
    {
        var words = code.Words.Length == 0 ? "" : $"\n\nTakes {string.Join(", ", code.Words.Distinct())}.";
        return $"**{code.Text}** {Markdown.Plain(code.Does)}\n\nA code of {Markdown.Plain(analysis.Machine.Name)}. {Effect(code)}{words}\n\nSource: {Source}";
    }

    static string Effect(MachineCode code) => code.As.IsEmpty
        ? "What it does beyond that is not followed here."
        : $"It is followed as {string.Join(" and ", code.As.Select(text => $"{text} {CodeTable.Find(text)!.Name}"))}.";
}
