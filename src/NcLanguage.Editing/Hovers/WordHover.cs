using System.Text;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing;

/// <summary>What one word says: its meaning, its value with unit, whether it stays in force, and what follows from it.</summary>
static class WordHover
{
    public static string? Of(ProgramAnalysis analysis, int line, int index)
    {
        var block = analysis.Main.BlockAt(line);
        var token = block.Tokens[index];
        var written = Encoding.UTF8.GetString(block.TextOf(token));
        switch (token.Kind)
        {
            case TokenKind.Skip:
                return "**Block skip**: this block is passed over when the switch at the machine is on.";
            case TokenKind.Percent:
                return "**%**: begins or ends the file that is sent to the control.";
            case TokenKind.Assignment:
                return AssignmentText(analysis, line, written);
            case TokenKind.Statement:
                return StatementText(written, token);
            case TokenKind.Word:
                break;
            default:
                return null;
        }
        var letter = (char)token.Letter;
        if (letter == ':')
            return $"**{written}**: program number or alignment block.";
        if (token.IsMalformed)
            return null;
        if (letter is 'G' or 'M')
            return CodeHover.Of(analysis, line, token, written);
        var step = analysis.Main.StepAt(line);
        if ((step.Events & StepEvents.NotRun) != 0)
            return "This block does not run: the program has ended above it.";
        return AddressText(analysis, line, letter, written, step);
    }

    static string AddressText(ProgramAnalysis analysis, int line, char letter, string written, Step step)
    {
        var text = new StringBuilder();
        var use = UseOf(letter, step);
        var address = AddressTable.Find(letter);
        text.Append("**").Append(written).Append("**: ").Append(use?.Meaning ?? address?.Meaning ?? "no meaning here.");
        if (text[^1] != '.')
            text.Append('.');
        text.Append("\n\n").Append(ValueText.Of(analysis, line, letter, step));
        return text.ToString().Trim();
    }

    /// <summary>How the code that the word belongs to uses it: a code of the block first, then the cycle or motion in force.</summary>
    static WordUse? UseOf(char letter, Step step)
    {
        foreach (var word in step.Words.Codes)
            if (word.Code.Letter == 'G' && Find(word.Code, letter) is { } use)
                return use;
        if (step.After.Cycle > 0 && CodeTable.Find('G', step.After.Cycle * 10) is { } cycle && Find(cycle, letter) is { } inCycle)
            return inCycle;
        return null;
    }

    static WordUse? Find(CodeEntry code, char letter)
    {
        foreach (var use in code.Words)
            if (use.Letter == letter)
                return use;
        return null;
    }

    static string AssignmentText(ProgramAnalysis analysis, int line, string written)
    {
        var equals = written.IndexOf('=', StringComparison.Ordinal);
        var target = written[..Math.Max(equals, 0)].Trim();
        var value = analysis.Main.StepAt(line).After.Variables;
        var known = int.TryParse(target.AsSpan().TrimStart('#'), out var number) && value is not null ? value.Get(number) : double.NaN;
        return double.IsNaN(known)
            ? $"**{target}** is set when the other words of the block have been read; its value is not known here."
            : $"**{target}** becomes {Say.Number(known, 6)} when the other words of the block have been read.";
    }

    static string StatementText(string written, in Token token)
    {
        var keyword = token.Statement.ToString().ToUpperInvariant();
        return $"**{keyword}** (`{written}`): the run may go on elsewhere. Jumps and loops are not followed yet, so what stands below is not known.";
    }
}
