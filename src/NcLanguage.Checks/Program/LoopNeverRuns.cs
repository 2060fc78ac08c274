using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Flow;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Checks.Rules;

/// <summary>A counting loop whose condition does not hold with the number that its counter begins with.</summary>
public sealed class LoopNeverRuns : Rule
{
    /// <summary>Lines above a loop in which the number that its counter begins with is looked for.</summary>
    const int MostAbove = 100;

    public override RuleInfo Info { get; } = new()
    {
        Id = "NC6039",
        Name = "loop-never-runs",
        Severity = Severity.Warning,
        Title = "A counting loop never runs",
        Finds = "WHILE that compares a variable with a number by LT, LE, GT or GE, where the variable begins with a number written above it, the loop counts the variable on, and the run never comes into the loop.",
        AtTheMachine = "The control passes over all that the loop should cut, without a word.",
        Example = """
            G21 G90 G17 G54
            M3 S1500
            G0 X0 Y0 Z5
            #1=0
            WHILE [#1 LT -8] DO 1
            ~^^^^^^^^^^^^^^^
            #1=#1-1
            G1 Z#1 F200
            G1 X20
            G0 X0
            END 1
            G0 Z50
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            M3 S1500
            G0 X0 Y0 Z5
            #1=0
            WHILE [#1 GT -8] DO 1
            #1=#1-1
            G1 Z#1 F200
            G1 X20
            G0 X0
            END 1
            G0 Z50
            M5
            M30
            """,
        NotFound = "Loops that compare with a variable or with EQ or NE, which somebody may switch off so; loops of O words; counters that begin with a value that is worked out, or set more than 100 lines above.",
        Source = "Common practice: a loop by WHILE asks before its first turn.",
    };

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        if (file.Run.Flow is not { End: FlowEnd.Ended or FlowEnd.OffTheEnd } flow)
            return;
        foreach (var (first, last) in flow.Text.Structures())
            if (file.Run.IsReached(first) && !IsEntered(file.Run, first, last))
                Check(file, first, last);
    }

    static bool IsEntered(ProgramRun run, int first, int last)
    {
        for (var line = first + 1; line < last; line++)
            if (run.IsReached(line))
                return true;
        return false;
    }

    void Check(in FileContext file, int first, int last)
    {
        var block = file.Run.BlockAt(first);
        foreach (ref readonly var token in block.Tokens)
        {
            if (token.Statement != StatementKind.While || CounterComparison.Of(block.Line[token.ValueStart..token.End]) is not { } comparison)
                continue;
            var (start, end) = (token.Start, token.End);
            if (!IsCountedOn(file.Run, comparison, first, last) || StartOf(file.Run, comparison, first) is not var (line, setStart, setEnd, value))
                return;
            file.Report(
                this, first, start, end,
                $"This loop never runs: #{comparison.Variable} begins with {Say.Number(value)}, which is not {comparison.Words}. Is the comparison meant the other way round, or is a sign missing?",
                related: new RelatedPlace(line, setStart, setEnd, "The variable is set here."));
            return;
        }
    }

    static bool IsCountedOn(ProgramRun run, CounterComparison comparison, int first, int last)
    {
        for (var line = first + 1; line < last; line++)
            foreach (ref readonly var token in run.BlockAt(line).Tokens)
                if (token.ReadsVariables && comparison.IsSetBy(run.BlockAt(line), token))
                    return true;
        return false;
    }

    /// <summary>Where the variable gets the number that it begins with, and which; null where the nearest setting above is no number, or was not run.</summary>
    static (int Line, int Start, int End, double Value)? StartOf(ProgramRun run, CounterComparison comparison, int first)
    {
        for (var line = first - 1; line >= Math.Max(0, first - MostAbove); line--)
            foreach (ref readonly var token in run.BlockAt(line).Tokens)
                if (comparison.IsSetBy(run.BlockAt(line), token))
                    return token.ReadsVariables || !run.IsReached(line) || double.IsNaN(token.Value) ? null : (line, token.Start, token.End, token.Value);
        return null;
    }
}
