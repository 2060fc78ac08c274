using System.Globalization;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Flow;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Checks.Rules;

/// <summary>A run that is longer than it is followed.</summary>
public sealed class RunTooLong : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC6035",
        Name = "run-too-long",
        Severity = Severity.Warning,
        Title = "The run is longer than is followed",
        Finds = "A program whose loops and calls make more blocks run than are followed: a million beside its own lines, and fifty thousand while the program is being typed; an error where its counter runs away from the number that ends the loop.",
        AtTheMachine = "Perhaps nothing; perhaps the loop never ends.",
        Example = """
            G21 G90 G17 G54
            G0 X0 Y0 Z50 S800 M3
            #1=0
            N10 G1 X10 F200
            G1 X0
            #1=#1+1
            ~^^^^^^
            IF [#1 GT 0] GOTO 10
            M5 M30
            """,
        Instead = """
            G21 G90 G17 G54
            G0 X0 Y0 Z50 S800 M3
            #1=0
            N10 G1 X10 F200
            G1 X0
            #1=#1+1
            IF [#1 LT 20] GOTO 10
            M5 M30
            """,
        NotFound = "Whatever comes behind the blocks that are followed.",
        Source = "A bound of this program's own.",
    };

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        if (file.Run.Flow is not { End: FlowEnd.TooLong } flow)
            return;
        var (line, count) = flow.Busiest;
        var followed = $"The first {flow.BlocksFollowed.ToString("N0", CultureInfo.InvariantCulture)} blocks of the run are checked, and it is not at its end";
        if (line >= 0 && WrongWayOf(file.Run, flow, line) is { } wrong)
        {
            var (start, end) = StepContext.WordsOf(file.Run.BlockAt(line));
            file.Report(
                this, wrong.Line, wrong.Start, wrong.End, $"This loop never ends: {wrong.Words}. What comes behind is not checked.", severity: Severity.Error, text: string.Create(CultureInfo.InvariantCulture, $"{wrong.First} {line}"),
                related: new RelatedPlace(line, start, end, "From here the run goes back."));
        }
        else if (line >= 0)
        {
            file.ReportBlock(this, line, $"{followed}: from here it went back {count.ToString("N0", CultureInfo.InvariantCulture)} times. What comes behind is not checked.");
        }
        else
        {
            file.ReportBlock(this, 0, $"{followed}. What comes behind is not checked.");
        }
    }

    /// <summary>A counter that runs away from the number at which its loop ends.</summary>
    /// <param name="First">The first line of the loop, from 0.</param>
    readonly record struct WrongWay(string Words, int Line, int Start, int End, int First);

    /// <summary>The first and the last line, from 0, of a loop whose counter a finding says to run the wrong way; null of other findings.</summary>
    internal static (int First, int Last)? LoopOf(Finding finding)
    {
        var lines = finding.Text.Split(' ');
        return lines.Length == 2 ? (int.Parse(lines[0], CultureInfo.InvariantCulture), int.Parse(lines[1], CultureInfo.InvariantCulture)) : null;
    }

    /// <summary>The counter of the loop that goes back from a line; null where it has none, is counted at several places or otherwise than by a number, or runs the right way.</summary>
    static WrongWay? WrongWayOf(ProgramRun run, FlowRun flow, int line)
    {
        var (first, condition) = LoopOf(run, flow, line);
        if (first < 0 || condition is not { } loop)
            return null;
        var found = (WrongWay?)null;
        for (var inside = first; inside <= line; inside++)
        {
            var block = run.BlockAt(inside);
            foreach (ref readonly var token in block.Tokens)
            {
                if (!loop.IsSetBy(block, token))
                    continue;
                var step = loop.StepOf(block, token);
                if (found is not null || !(loop.HoldsBelow ? step < 0 : step > 0))
                    return null;
                found = new($"#{loop.Variable} goes {(step < 0 ? "down" : "up")} by {Say.Number(Math.Abs(step))} at each turn, and it goes on as long as #{loop.Variable} is {loop.Words}", inside, token.Start, token.End, first);
            }
        }
        return found;
    }

    /// <summary>The first line of the loop that goes back from a line, and its condition: that of the WHILE which an END closes, or of the IF that jumps back.</summary>
    static (int First, CounterComparison? Condition) LoopOf(ProgramRun run, FlowRun flow, int line)
    {
        foreach (var (first, last) in flow.Text.Structures())
            if (last == line)
                return (first, ConditionOf(run.BlockAt(first), StatementKind.While));
        var block = run.BlockAt(line);
        foreach (ref readonly var token in block.Tokens)
            if (token.Statement == StatementKind.Goto && !token.ReadsVariables)
                for (var above = line - 1; above >= 0; above--)
                    if (run.BlockAt(above) is var target && target.NumberIndex is >= 0 and var number && target.Tokens[number].Value == token.Value)
                        return (above, ConditionOf(block, StatementKind.If));
        return (-1, null);
    }

    static CounterComparison? ConditionOf(in Block block, StatementKind kind)
    {
        foreach (ref readonly var token in block.Tokens)
            if (token.Statement == kind)
                return CounterComparison.Of(block.Line[token.ValueStart..token.End]);
        return null;
    }
}
