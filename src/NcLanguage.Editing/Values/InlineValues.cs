using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Expressions;

namespace NcLanguage.Editing;

/// <summary>A value shown at a variable: byte columns from 0.</summary>
public readonly record struct ValueAnswer(int Line, int Start, int End, string Text);

/// <summary>What the variables of some lines hold: when their blocks run for the first time, or where a run stands.</summary>
public static class InlineValues
{
    /// <summary>Of lines from <paramref name="firstLine"/> to <paramref name="lastLine"/> (0-based, both included); variables whose value is not known are left out.</summary>
    /// <param name="analysis">The program.</param>
    /// <param name="firstLine">First line.</param>
    /// <param name="lastLine">Last line.</param>
    /// <param name="stoppedAt">The line (0-based) whose block is next: values are as they stand before it, and nothing behind it has any. Null where no run stands
    /// anywhere: each value is that of its own block.</param>
    /// <param name="cancel">Stops the reading.</param>
    public static IReadOnlyList<ValueAnswer> In(ProgramAnalysis analysis, int firstLine, int lastLine, int? stoppedAt = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        ControlState? stopped = null;
        if (stoppedAt is { } stop)
        {
            stop = Math.Clamp(stop, 0, analysis.Text.LineCount - 1);
            if (!analysis.Main.IsReached(stop))
                return [];
            (lastLine, stopped) = (Math.Min(lastLine, stop), analysis.Main.StateBefore(stop));
        }
        var answers = new List<ValueAnswer>();
        var uses = new List<SymbolUse>();
        for (var line = Math.Max(0, firstLine); line <= Math.Min(lastLine, analysis.Text.LineCount - 1); line++)
        {
            cancel.ThrowIfCancellationRequested();
            uses.Clear();
            SymbolReader.Read(analysis.Main.BlockAt(line), line, uses);
            uses.RemoveAll(use => use.Symbol.Kind is not (NamedKind.Variable or NamedKind.NamedVariable));
            if (uses.Count == 0 || !analysis.Main.IsReached(line))
                continue;
            var before = stopped ?? analysis.Main.StateBefore(line);
            var after = stopped ?? analysis.Main.StepAt(line).After;
            foreach (var use in uses)
                if (ValueOf(use.Symbol, use.Role == UseRole.Write ? after : before, analysis) is { } value)
                    answers.Add(new ValueAnswer(line, use.Start, use.End, $"{use.Symbol.VariableName} = {value}"));
        }
        return answers;
    }

    static string? ValueOf(ProgramSymbol symbol, in ControlState state, ProgramAnalysis analysis)
    {
        var reader = new VariableReader(state, analysis.Setup, analysis.Machine);
        var value = symbol.Name is { } name ? reader.Get(System.Text.Encoding.UTF8.GetBytes(name)) : reader.Get(symbol.Number);
        return Expression.IsVacant(value) ? "empty" : double.IsNaN(value) ? null : Say.Number(value);
    }
}
