using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Codes;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing;

/// <summary>The code above that a word hangs on: the motion or cycle of an axis word without one, the speed of M3, the tool of M6.</summary>
/// <param name="Word">The word asked about.</param>
/// <param name="Line">Where it was set, from 0; with the byte columns of the word that did.</param>
readonly record struct SetBy(Token Word, int Line, int StartColumn, int EndColumn)
{
    /// <summary>Null where the word stands for itself, or nothing above has set what it hangs on.</summary>
    public static SetBy? At(ProgramAnalysis analysis, int line, int column)
    {
        var block = analysis.Main.BlockAt(line);
        foreach (ref readonly var token in block.Tokens)
        {
            if (token.Kind != TokenKind.Word || column < token.Start || column >= token.End)
                continue;
            var (slot, letter, code) = Above(analysis, line, token);
            if (slot == 0 || analysis.Main.LastSetterBefore(slot, line) is not (>= 0 and var setter))
                return null;
            var (start, end) = WordIn(analysis.Main.BlockAt(setter), letter, code);
            return new SetBy(token, setter, start, end);
        }
        return null;
    }

    static (Slot Slot, char Letter, int Code) Above(ProgramAnalysis analysis, int line, in Token word)
    {
        if (word.Letter == 'M')
            return word.Value switch { 3 or 4 => (Slot.Speed, 'S', -1), 6 => (Slot.SelectedTool, 'T', -1), _ => default };
        if (word.Letter is (byte)'G' or (byte)'N' or (byte)'F' or (byte)'S')
            return default;
        var step = analysis.Main.StepAt(line);
        if (WordUses.Of((char)word.Letter, step, analysis.Machine.Readings) is not var (code, _))
            return default;
        foreach (var own in step.Words.Codes)
            if (own.Code == code)
                return default;
        return (code.Group == ModalGroup.Cycle ? Slot.Cycle : Slot.Motion, code.Letter, code.Tenths);
    }

    /// <summary>The columns of a word, or of the whole block where it does not stand in it as such.</summary>
    static (int Start, int End) WordIn(in Block block, char letter, int code)
    {
        foreach (ref readonly var token in block.Tokens)
            if (token.IsWord(letter) && (code < 0 || (int)Math.Round(token.Value * 10) == code))
                return (token.Start, token.End);
        return (0, block.Line.Length);
    }
}
