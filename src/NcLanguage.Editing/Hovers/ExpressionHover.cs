using System.Globalization;
using System.Text;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Expressions;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing;

/// <summary>What one part of an expression says: a variable, a function or an operator.</summary>
static class ExpressionHover
{
    /// <summary>The answer at a byte column of a token; null where no such part stands.</summary>
    public static HoverAnswer? At(ProgramAnalysis analysis, int line, int index, int column)
    {
        var block = analysis.Main.BlockAt(line);
        var token = block.Tokens[index];
        if (!token.IsExpression || token.IsMalformed || ExpressionPart.At(block.Line, token.ValueStart, token.End, column) is not { } part)
            return null;
        var step = analysis.Main.StepAt(line);
        var text = part.Row is { } row ? RowText(analysis, row, line, part, step) : VariableText(analysis, line, part, step);
        return new HoverAnswer(text, line, part.Start, part.End);
    }

    static string RowText(ProgramAnalysis analysis, FunctionEntry row, int line, in ExpressionPart part, Step step)
    {
        var text = new StringBuilder(Markdown.Word(row.Text)).Append(' ').Append(row.Name).Append("\n\n").Append(row.Meaning);
        if (!row.IsOperator)
            text.Append("\n\n").Append(ValueText(analysis, line, part, step));
        return text.Append("\n\nSource: ").Append(row.Source).ToString();
    }

    static string VariableText(ProgramAnalysis analysis, int line, in ExpressionPart part, Step step)
    {
        var block = analysis.Main.BlockAt(line);
        var reader = new VariableReader(step.Before, analysis.Setup, analysis.Machine);
        var isNamed = block.Line[part.Start..part.End].Contains((byte)'<');
        // The number is itself a value: #3, #[#1+2], ##3.
        var number = isNamed ? double.NaN : Expression.Read(block.Line, part.Start + 1, ref reader).Value;
        var row = double.IsNaN(number) ? null : VariableTable.Find((int)Math.Round(number));
        var text = new StringBuilder(Markdown.Word(Quote.Text(block.Line[part.Start..part.End])));
        if (row is not null && part.IsIndirect)
            text.Append(CultureInfo.InvariantCulture, $" (#{(int)Math.Round(number)})");
        text.Append(' ').Append(row?.NameOf((int)Math.Round(number)) ?? SignTable.Find("#")!.Name);
        if (row is { IsFree: false })
            text.Append("\n\n").Append(row.Meaning);
        // What is always empty has no value to tell.
        if (row is not { First: 0 })
            text.Append("\n\n").Append(ValueText(analysis, line, part, step));
        return text.Append("\n\nSource: ").Append(row?.Source ?? SignTable.Find("#")!.Source).ToString();
    }

    static string ValueText(ProgramAnalysis analysis, int line, ExpressionPart part, Step step)
    {
        if (NotRunText.Of(analysis.Main.BlockAt(line), step) is { Length: > 0 } notRun)
            return notRun;
        var value = ValueAt(analysis, line, part, step);
        return (double.IsNaN(value) ? $"Its value is {Lengths.NotKnown}." : $"Its value is {Say.Number(value, 6)}.")
            + RunsText.Values(analysis, line, at => ValueAt(analysis, line, part, at));
    }

    static double ValueAt(ProgramAnalysis analysis, int line, in ExpressionPart part, Step step)
    {
        var reader = new VariableReader(step.Before, analysis.Setup, analysis.Machine);
        return Expression.Read(analysis.Main.BlockAt(line).Line, part.Start, ref reader).Value;
    }
}
