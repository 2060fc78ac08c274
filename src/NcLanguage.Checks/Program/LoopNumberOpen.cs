using NcLanguage.Checks.Analysis;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Checks.Rules;

/// <summary>A loop within a loop of the same number.</summary>
public sealed class LoopNumberOpen : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC6038",
        Name = "loop-number-open",
        Severity = Severity.Error,
        Title = "A loop within a loop has the same number",
        Finds = "DO with a number whose loop has begun above and has not ended.",
        AtTheMachine = "The first END with that number ends the outer loop as well: the control stops with an alarm, or goes round where it should not.",
        Example = """
            G21 G90 G17 G54
            G0 X0 Y0 Z50 S800 M3
            #1=0
            WHILE [#1 LT 3] DO 1
            #2=0
            WHILE [#2 LT 4] DO 1
            ~               ^^^^
            G1 X[#1*20] Y[#2*20] F200
            #2=#2+1
            END 1
            #1=#1+1
            IF [#1 GE 3] GOTO 20
            END 1
            N20 M5 M30
            """,
        Instead = """
            G21 G90 G17 G54
            G0 X0 Y0 Z50 S800 M3
            #1=0
            WHILE [#1 LT 3] DO 1
            #2=0
            WHILE [#2 LT 4] DO 2
            G1 X[#1*20] Y[#2*20] F200
            #2=#2+1
            END 2
            #1=#1+1
            IF [#1 GE 3] GOTO 20
            END 1
            N20 M5 M30
            """,
        NotFound = "Loops that O words number, which alarm at their end where they do not match.",
        Source = "Common practice: loops stand within each other by different numbers.",
    };

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        if (file.Run.Flow is not { } flow)
            return;
        foreach (var loop in flow.Text.Loops())
            if (loop.OpenSince >= 0)
                Report(file, loop.Line, loop.Number, loop.OpenSince);
    }

    void Report(in FileContext file, int line, int number, int openSince)
    {
        var (start, end) = DoOf(file.Run.BlockAt(line));
        var (startAbove, endAbove) = DoOf(file.Run.BlockAt(openSince));
        file.Report(this, line, start, end, $"Loop {number} has begun on line {openSince + 1} and is still open: a loop within it needs another number.",
            value: number, related: new RelatedPlace(openSince, startAbove, endAbove, $"Loop {number} begins here."));
    }

    static (int Start, int End) DoOf(in Block block)
    {
        foreach (ref readonly var token in block.Tokens)
            if (token.Statement == StatementKind.Do)
                return (token.Start, token.End);
        return StepContext.WordsOf(block);
    }
}
