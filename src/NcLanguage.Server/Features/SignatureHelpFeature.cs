using NcLanguage.Editing;
using NcLanguage.Server.Protocol;

namespace NcLanguage.Server.Features;

/// <summary>textDocument/signatureHelp.</summary>
static class SignatureHelpFeature
{
    /// <summary>A blank behind a code or a word, and every address letter.</summary>
    public static readonly string[] TriggerCharacters = [" ", .. Letters('A'), .. Letters('a')];

    /// <summary>What changes the word at the cursor while it is shown.</summary>
    public static readonly string[] RetriggerCharacters = [".", "-", "#", "[", "]"];

    public static SignatureHelp? Answer(FeatureContext context, Position position)
    {
        (var line, var column) = context.Positions.ToPlace(context.Text, position);
        if (Signatures.At(context.Analysis, line, column) is not { } answer)
            return null;
        SignatureInformation[] lines = [.. answer.Lines.Select(signature => Map(context, signature))];
        return new SignatureHelp(lines, (uint)answer.Active, lines[answer.Active].ActiveParameter);
    }

    static SignatureInformation Map(FeatureContext context, SignatureLine line) => new(
        line.Label,
        context.Client.SignatureText(line.Documentation),
        [.. line.Words.Select(word => new ParameterInformation(
            context.Client.WordsByOffset ? new ParameterLabel(word.Start, word.End) : new ParameterLabel(0, 0, line.Label[word.Start..word.End]), word.Text))],
        (uint)line.ActiveWord);

    static IEnumerable<string> Letters(char first) => Enumerable.Range(first, 26).Select(letter => ((char)letter).ToString());
}
