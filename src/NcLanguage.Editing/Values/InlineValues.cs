using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Expressions;

namespace NcLanguage.Editing;

/// <summary>A value shown at a variable: byte columns from 0.</summary>
public readonly record struct ValueAnswer(int Line, int Start, int End, string Text);

/// <summary>What the variables of some lines hold when their blocks run for the first time.</summary>
public static class InlineValues
{
    /// <summary>Of lines from <paramref name="firstLine"/> to <paramref name="lastLine"/> (0-based, both included); variables whose value is not known are left out.</summary>
    public static IReadOnlyList<ValueAnswer> In(ProgramAnalysis analysis, int firstLine, int lastLine, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(analysis);
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
            var before = analysis.Main.StateBefore(line);
            var after = analysis.Main.StepAt(line).After;
            foreach (var use in uses)
                if (ValueOf(use.Symbol, use.Role == UseRole.Write ? after : before, analysis) is { } value)
                    answers.Add(new ValueAnswer(line, use.Start, use.End, $"{(use.Symbol.Name is { } name ? $"#<{name}>" : "#" + Say.Number(use.Symbol.Number))} = {value}"));
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
