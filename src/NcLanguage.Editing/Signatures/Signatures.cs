using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Flow;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing;

/// <summary>The words of the code, cycle or call at the cursor: which are given, missing, carried over.</summary>
public static class Signatures
{
    /// <summary>The answer at a byte column of a line, both from 0; null in comments, and where no code takes words.</summary>
    public static SignatureAnswer? At(ProgramAnalysis analysis, int line, int column)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        if (line < 0 || line >= analysis.Text.LineCount || column < 0)
            return null;
        var block = analysis.Main.BlockAt(line);
        var tokens = block.Tokens.ToArray();
        if (column > block.Line.Length || !HasWords(block))
            return null;
        foreach (ref readonly var token in block.Tokens)
            if (token.IsComment && token.Start < column && (column < token.End || token.Kind != TokenKind.Comment))
                return null;
        var step = analysis.Main.StepAt(line);
        if ((step.Events & (StepEvents.NotRun | StepEvents.Skipped)) != 0)
            return null;
        if (step.Transfer is { Statement: StatementKind.Call })
            return CallSignature.OfSubroutine(block, step, column);
        var (at, isWord) = WordAt(block, column);
        var codes = CodeWords.Codes(step);
        codes.RemoveAll(code => !IsOfBlock(code, step) && !TakesAny(code, tokens, step));
        if (codes.Count == 0)
            return null;
        var letter = isWord ? (char)block.Tokens[at].Letter : '\0';
        var active = ActiveCode(codes, step, block, at, letter, analysis);
        var lines = new SignatureLine[codes.Count];
        for (var i = 0; i < lines.Length; i++)
            lines[i] = codes[i].TakesArguments
                ? CallSignature.OfMacro(block, step, codes[i], letter)
                : CodeSignature.Of(analysis, line, block, step, codes[i], letter);
        return new SignatureAnswer([.. lines], active);
    }

    static bool IsOfBlock(CodeEntry code, Step step)
    {
        foreach (var word in step.Words.Codes)
            if (word.Code == code)
                return true;
        return false;
    }

    /// <summary>Whether a code in force has to do with the block: it holds, or begins, one of its words.</summary>
    static bool TakesAny(CodeEntry code, Token[] tokens, Step step)
    {
        foreach (var use in code.Words)
            if (Array.Exists(tokens, token => token.Kind is TokenKind.Word or TokenKind.BareLetter && token.Letter == WordUses.InPlane(code, use, step.After.Plane).Letter))
                return true;
        return false;
    }

    /// <summary>The code that the word at the cursor belongs to; behind a code and at the end of the block the code written last before the cursor.</summary>
    static int ActiveCode(List<CodeEntry> codes, Step step, in Block block, int at, char letter, ProgramAnalysis analysis)
    {
        if (letter is not ('\0' or 'G' or 'M') && WordUses.Of(letter, step, analysis.Machine.Readings)?.Code is { } owner && codes.IndexOf(owner) is >= 0 and var index)
            return index;
        var active = -1;
        foreach (var word in step.Words.Codes)
            if (word.Token <= at && codes.IndexOf(word.Code) is >= 0 and var found)
                active = found;
        return active >= 0 ? active : codes.Count - 1;
    }

    /// <summary>The token that the cursor stands in or right behind, or else the last one before it; and whether it is a word at the cursor.</summary>
    static (int Token, bool IsWord) WordAt(in Block block, int column)
    {
        var last = -1;
        for (var i = 0; i < block.Tokens.Length; i++)
        {
            ref readonly var token = ref block.Tokens[i];
            if (token.Start >= column)
                break;
            last = i;
        }
        return last < 0 ? (-1, false) : (last, block.Tokens[last].End >= column && block.Tokens[last].Kind is TokenKind.Word or TokenKind.BareLetter);
    }

    // A block of comments and numbers alone drills nothing and takes no words.
    static bool HasWords(in Block block)
    {
        foreach (ref readonly var token in block.Tokens)
            if (token.Kind is TokenKind.Word or TokenKind.BareLetter && !token.IsWord('N') && !token.IsWord('O') && token.Letter != ':')
                return true;
        foreach (ref readonly var token in block.Tokens)
            if (token.Statement == StatementKind.Call)
                return true;
        return false;
    }
}
