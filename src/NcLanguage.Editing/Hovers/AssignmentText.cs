using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Codes;
using NcLanguage.Control.Execution;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Editing;

/// <summary>What a setting of a variable leaves.</summary>
static class AssignmentText
{
    public static string Of(ProgramAnalysis analysis, int line, Token token, Step step)
    {
        var block = analysis.Main.BlockAt(line);
        var written = Assigned.Target(block, token);
        var target = Markdown.Word(written);
        if (NotRunText.Of(block, step) is { Length: > 0 } notRun)
            return $"{target} variable\n\n{notRun}\n\n{Source}";
        var number = Assigned.Number(analysis, block, token, step);
        var isNumbered = number >= 0;
        var (before, after) = (isNumbered ? Assigned.Value(analysis, step.Before, number) : double.NaN, Assigned.ValueAfter(analysis, block, token, step));
        // A name that is made of other variables also tells which one it is.
        var name = isNumbered && written.AsSpan(1).IndexOfAny('#', '[') >= 0 ? $" (#{number})" : "";
        var row = isNumbered ? VariableTable.Find(number) : null;
        return $"{target}{name} {row?.NameOf(number) ?? "variable"}\n\n"
            + (double.IsNaN(after) ? $"Its value is {Lengths.NotKnown}." : $"Becomes {Say.Number(after, 6)}{(double.IsNaN(before) ? "" : $", was {Say.Number(before, 6)}")}.")
            + RunsText.Values(analysis, line, at => Assigned.ValueAfter(analysis, analysis.Main.BlockAt(line), token, at))
            + $" It is set when the other words of the block have been read.\n\n{Source}";
    }

    static string Source => "Source: " + SignTable.Find("=")!.Source;
}
