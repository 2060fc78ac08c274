using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Flow;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Expressions;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing;

/// <summary>What a statement does: from the table of statements, and then what it does at this place: where it leads, how often.</summary>
static class StatementText
{
    public static string Of(ProgramAnalysis analysis, int line, in Token token)
    {
        var block = analysis.Main.BlockAt(line);
        var behindO = block.IndexOf('O') >= 0;
        // The DO behind a WHILE is the end of its words, and no loop without condition.
        var statement = token.Statement == StatementKind.Do && Has(block, StatementKind.While) ? StatementKind.While : token.Statement;
        var keyword = statement.ToString().ToUpperInvariant();
        var row = StatementTable.Find(keyword, behindO) ?? StatementTable.Find(keyword, !behindO);
        var text = new StringBuilder($"**{keyword}** {row?.Name}\n\n{row?.Meaning}");
        if (row is not null)
            text.Append($" Written `{(token.Statement == StatementKind.If && Has(block, StatementKind.Then) ? StatementTable.Find("THEN", false)!.Form : row.Form)}`.");
        var step = analysis.Main.StepAt(line);
        var here = NotRunText.Of(block, step) is { Length: > 0 } notRun ? notRun : Here(analysis, line, token.Statement, step);
        if (here.Length > 0)
            text.Append("\n\n").Append(here);
        if (row is not null)
            text.Append("\n\nSource: ").Append(row.Source);
        return text.ToString();
    }

    static bool Has(in Block block, StatementKind statement)
    {
        foreach (ref readonly var token in block.Tokens)
            if (token.Statement == statement)
                return true;
        return false;
    }

    /// <summary>What a statement of this kind does at this place.</summary>
    static string Here(ProgramAnalysis analysis, int line, StatementKind statement, Step step)
    {
        if (analysis.Main.Flow is not { } flow)
            return "";
        if (statement is StatementKind.Call)
            return CallText.OfCall(analysis, line, step);
        var parts = new List<string>();
        if (statement is StatementKind.EndSub or StatementKind.Return)
            parts.Add(CallText.OfReturn(analysis, line, step));
        else
            parts.Add(RunsText.NotReached(analysis, line));
        if (step.Transfer.Kind == TransferKind.Jump)
            parts.Add(CallText.Target(flow, line, step.Transfer.Number));
        else if (flow.Text.PartnerOf(line) is { Line: >= 0 } partner)
            parts.Add(Partner(partner.Line, partner.Statement, partner.Line < line));
        if (flow.RunsOf(line) > 0)
            parts.Add(HowOften(analysis, flow, line, statement));
        return string.Join(' ', parts.Where(part => part.Length > 0));
    }

    static string Partner(int line, StatementKind statement, bool isAbove) =>
        $"{(isAbove ? "Begins at" : statement is StatementKind.Else or StatementKind.ElseIf ? "Otherwise on at" : "Ends at")} {statement.ToString().ToUpperInvariant()} in line {line + 1}.";

    /// <summary>How often a condition held, a count, or just how often the block runs.</summary>
    static string HowOften(ProgramAnalysis analysis, FlowRun flow, int line, StatementKind statement)
    {
        var runs = flow.RunsOf(line);
        var shown = Math.Min(runs, RunSpans.MostRuns);
        var within = shown < runs ? $"the first {RunsText.Number(shown)} of its {RunsText.Number(runs)} runs" : $"{RunsText.Number(runs)} runs";
        var hasCondition = HasCondition(analysis.Main.BlockAt(line));
        if (!hasCondition)
            // Of the words between, the control passes over those behind a branch that was taken: how often it met them tells nothing.
            return statement is StatementKind.Sub or StatementKind.Else or StatementKind.EndIf ? "" : runs > 1 ? $"Runs {RunsText.Number(runs)} times." : "";
        var (held, unknown) = (0, 0);
        var first = double.NaN;
        flow.ForEachRun(analysis.Main, line, RunSpans.MostRuns, step =>
        {
            var value = step.Transfer.Kind == TransferKind.None ? ConditionOfSetting(analysis, line, step) : step.Transfer.Value;
            first = held + unknown == 0 && double.IsNaN(first) ? value : first;
            held += value != 0 && !double.IsNaN(value) ? 1 : 0;
            unknown += double.IsNaN(value) ? 1 : 0;
        });
        if (statement == StatementKind.Repeat)
            return double.IsNaN(first) ? $"How many times is {Lengths.NotKnown}." : $"{Math.Floor(first):0} times, the first time it is met.";
        if (runs == 1 && unknown == 0)
            return held == 1 ? "The condition holds." : "The condition does not hold.";
        return unknown == 0 ? $"The condition holds in {RunsText.Number(held)} of {within}."
            : unknown == shown ? "Whether the condition holds is not known."
            : $"The condition holds in {RunsText.Number(held)} of {within}; in {RunsText.Number(unknown)} it is not known.";
    }

    static bool HasCondition(in Block block)
    {
        foreach (ref readonly var token in block.Tokens)
            if (token.Statement is StatementKind.If or StatementKind.ElseIf or StatementKind.While or StatementKind.Repeat)
                return true;
        return false;
    }

    // IF […] THEN sets a variable and goes nowhere.
    static double ConditionOfSetting(ProgramAnalysis analysis, int line, Step step)
    {
        var block = analysis.Main.BlockAt(line);
        foreach (ref readonly var token in block.Tokens)
            if (token.Statement == StatementKind.If)
            {
                if (!token.ReadsVariables)
                    return token.Value;
                var reader = new VariableReader(step.Before, analysis.Setup, analysis.Machine);
                return Expression.Read(block.Line, token.ValueStart, ref reader).Value;
            }
        return double.NaN;
    }
}
