using System.Text;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing;

/// <summary>What a G or M code does: from the table of codes; for a cycle also what this block will do.</summary>
static class CodeHover
{
    public static string? Of(ProgramAnalysis analysis, int line, int index, Step step)
    {
        var block = analysis.Main.BlockAt(line);
        if (OwnCodeHover.At(analysis, block.Tokens[index]) is { } own)
            return OwnCodeHover.Of(analysis, own);
        if (CodeAt(block, index, step) is not { } code)
            return null;
        var written = Quote.Word(block, block.Tokens[index]);
        var text = new StringBuilder("**").Append(code.Text).Append("** ").Append(code.Name);
        if (block.Tokens[index].IsExpression)
            text.Append(" (").Append(Markdown.Word(written)).Append(')');
        text.Append("\n\n").Append(code.Meaning).Append(HowLong(code));
        if (!code.ExistsUnder(analysis.Machine.Readings))
            text.Append($"\n\n{Markdown.Plain(analysis.Machine.Name)} does not have this code: it selects inch and millimetre by {UnitPair(analysis)}.");
        var isCycle = code.Group == ModalGroup.Cycle && code.Tenths != 800;
        var notRun = NotRunText.Of(block, step);
        if (notRun.Length > 0)
            text.Append("\n\n").Append(notRun);
        else if (isCycle)
            text.Append("\n\n").Append(CarriedText.ForCycleCode(analysis, line, step)).Append(BlockHover.Text(analysis, line, step));
        else if (Moves(code) && step.Moves.Count > 0)
        {
            text.Append("\n\n");
            MoveList.Append(text, analysis, step);
        }
        if (notRun.Length == 0 && LeadsTo(analysis, code, line, step) is { Length: > 0 } leads)
            TrimEnd(text).Append("\n\n").Append(leads);
        AppendWords(text, code, analysis, step);
        return text.ToString().TrimEnd() + $"\n\nSource: {code.Source}";
    }

    public static string HowLong(CodeEntry code) => code switch
    {
        { Until: { } until } => $" Holds {until}.",
        { IsModal: true } => " Stays in force until replaced.",
        _ => " Acts in this block only.",
    };

    /// <summary>The code as executed; where the block does not run, as written.</summary>
    static CodeEntry? CodeAt(in Block block, int index, Step step)
    {
        foreach (var word in step.Words.Codes)
            if (word.Token == index)
                return word.Code;
        var token = block.Tokens[index];
        var tenths = Math.Round(token.Value * 10);
        return token.Value is >= 0 and < 1000 && Math.Abs(token.Value * 10 - tenths) < 0.001 ? CodeTable.Find((char)token.Letter, (int)tenths) : null;
    }

    /// <summary>Where a call or a return leads; of any other code, only that the run does not come to it.</summary>
    static string LeadsTo(ProgramAnalysis analysis, CodeEntry code, int line, Step step) => code switch
    {
        { Letter: 'M', Tenths: 980 } or { Letter: 'G', Tenths: 650 } => CallText.OfCall(analysis, line, step),
        { Letter: 'M', Tenths: 990 } => CallText.OfReturn(analysis, line, step),
        // A cycle's hover tells it with the rest of what its block does.
        { Group: ModalGroup.Cycle } when code.Tenths != 800 => "",
        _ => RunsText.NotReached(analysis, line),
    };

    static bool Moves(CodeEntry code) =>
        code.Group is ModalGroup.Motion or ModalGroup.ToolChange || (code.Letter == 'G' && code.Tenths is 40 or 280 or 300 or 530);

    static string UnitPair(ProgramAnalysis analysis) =>
        $"G{UnitLength.CodeOf(true, analysis.Machine.Readings.Units)} and G{UnitLength.CodeOf(false, analysis.Machine.Readings.Units)}";

    static void AppendWords(StringBuilder text, CodeEntry code, ProgramAnalysis analysis, Step step)
    {
        var parts = new List<string>();
        foreach (var word in code.Words)
        {
            if (word.OnlyUnder is { } reading && reading != analysis.Machine.Readings.Repeats)
                continue;
            var use = WordUses.InPlane(code, word, step.After.Plane);
            parts.Add($"{CodeSignature.Named(use)}{(use.Need == WordNeed.Required ? " (needed)" : use.Need == WordNeed.CarriedOver ? " (stays for later holes)" : "")}");
        }
        if (parts.Count > 0)
            TrimEnd(text).Append("\n\nTakes ").AppendJoin("; ", parts).Append('.');
    }

    static StringBuilder TrimEnd(StringBuilder text)
    {
        while (text.Length > 0 && text[^1] == '\n')
            text.Length--;
        return text;
    }
}
