using System.Text;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing;

/// <summary>What one word says: its meaning, its value with unit, whether it stays in force, and what follows from it.</summary>
static class WordHover
{
    /// <summary>The text for a token of a line's block, by its index; null where there is nothing to say.</summary>
    public static string? Of(ProgramAnalysis analysis, int line, int index)
    {
        var block = analysis.Main.BlockAt(line);
        var token = block.Tokens[index];
        if (token.IsMalformed)
            return null;
        switch (token.Kind)
        {
            case TokenKind.Comment:
                return AllowText.Of(block, token);
            case TokenKind.Skip:
                return SignText(block, token, "/", analysis.Options.Skip ? " Here it is on." : " Here it is off.");
            case TokenKind.Percent:
                return SignText(block, token, "%");
            case TokenKind.Assignment:
                return AssignmentText.Of(analysis, line, token, analysis.Main.StepAt(line));
            case TokenKind.Statement:
                return StatementText.Of(analysis, line, token);
            case TokenKind.Word when token.Letter == ':':
                return SignText(block, token, ":");
            case TokenKind.Word when token.Letter is (byte)'G' or (byte)'M':
                return CodeHover.Of(analysis, line, index, analysis.Main.StepAt(line));
            case TokenKind.Word:
                return AddressText(analysis, line, index, analysis.Main.StepAt(line));
            default:
                return null;
        }
    }

    static string SignText(in Block block, in Token token, string sign, string here = "")
    {
        var row = SignTable.Find(sign)!;
        return $"{Markdown.Word(Quote.Word(block, token))} {row.Name}\n\n{row.Meaning}{here}\n\nSource: {row.Source}";
    }

    static string AddressText(ProgramAnalysis analysis, int line, int index, Step step)
    {
        var block = analysis.Main.BlockAt(line);
        var token = block.Tokens[index];
        var letter = (char)token.Letter;
        var address = AddressTable.Find(letter);
        var used = WordUses.Of(letter, step, analysis.Machine.Readings);
        var use = used?.Use;
        var own = use is null ? OwnCodeHover.WithWord(analysis, block, letter) : null;
        var text = new StringBuilder(Markdown.Word(Quote.Word(block, token))).Append(' ').Append(use?.Meaning ?? (own is null ? address?.Name : $"word of {own.Text}"));
        if (own is not null)
            text.Append("\n\n").Append(own.Text).Append(' ').Append(Markdown.Plain(own.Does)).Append('.');
        else if (use is null && address is not null)
            text.Append("\n\n").Append(address.Meaning);
        text.Append("\n\n");
        if (NotRunText.Of(block, step) is { Length: > 0 } notRun)
            text.Append(notRun);
        else if (!step.Words.Has(letter) || step.Words.TokenOf(letter) != index)
            text.Append("The block has this letter already: this word is not read.");
        else
        {
            if (own is null)
                text.Append(new ValueText(analysis, line, step, use).Of(letter));
            text.Append(token.ReadsVariables ? RunsText.Values(analysis, line, at => at.Words[letter]) : Reached(analysis, line));
        }
        var source = used is { } by ? $"{by.Code.Text}, {by.Code.Source}" : own is not null ? OwnCodeHover.Source : address?.Source;
        return text.ToString().TrimEnd() + (source is null ? "" : $"\n\nSource: {source}");
    }

    static string Reached(ProgramAnalysis analysis, int line) => RunsText.NotReached(analysis, line) is { Length: > 0 } text ? " " + text : "";
}
