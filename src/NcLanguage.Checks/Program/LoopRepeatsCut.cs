using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Machine.Geometry;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Checks.Rules;

/// <summary>A counting loop, or a call with repeats, all turns of which cut the same way.</summary>
public sealed class LoopRepeatsCut : Rule
{
    /// <summary>Turns that are taken for spring passes, which cut the same way on purpose (common practice).</summary>
    const int MostSpringPasses = 2;

    /// <summary>Places that differ by less are one, mm.</summary>
    const double Same = 1e-6;

    public override RuleInfo Info { get; } = new()
    {
        Id = "NC6040",
        Name = "loop-repeats-cut",
        Severity = Severity.Warning,
        Title = "A counting loop cuts the same way at each turn",
        Finds = "A loop by WHILE that counts a variable on and is run three times or more, where no word within it reads any variable, and all its cuts into the setup's stock lead over the same places at each turn. Once for a loop. Likewise M98 that by L runs a program of the same file three times or more, where no other call leads there.",
        AtTheMachine = "The first turn cuts, the others go over it in air, and what they should have cut is left standing: mostly a word has lost its variable, or the called program its step by G91.",
        Setup = """
            { "stock": { "min": [0, 0, -15], "max": [100, 60, 0] }, "tools": [ { "number": 5, "kind": "end-mill", "diameter": 10, "flutes": 2, "fluteLength": 30, "length": 100 } ] }
            """,
        Example = """
            G21 G90 G17 G54
            T5 M6
            S3000 M3
            G0 X-10 Y5
            G43 H5 Z40 M8
            Z2
            #1=0
            WHILE [#1 LT 5] DO 1
            ~^^^^^^^^^^^^^^
            G0 X-10 Y5
            G1 Z-2 F300
            X110
            G0 Z2
            #1=#1+1
            END 1
            G0 Z40 M9
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T5 M6
            S3000 M3
            G0 X-10 Y5
            G43 H5 Z40 M8
            Z2
            #1=0
            WHILE [#1 LT 5] DO 1
            G0 X-10 Y[5+10*#1]
            G1 Z-2 F300
            X110
            G0 Z2
            #1=#1+1
            END 1
            G0 Z40 M9
            M5
            M30
            """,
        NotFound = "Two turns, which may be spring passes; loops of this kind behind the first 50; loops that call programs, or change coordinates from turn to turn; loops by GOTO or REPEAT; what programs cut that a repeated program calls; holes, which are hole-repeated.",
        Source = "Common practice.",
    };

    /// <summary>Loops whose cuts are compared: each goes through all cuts of the run.</summary>
    const int MostLoops = 50;

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        if (file.Run is not { Flow: { } flow, Job: { HasStock: true } } run)
            return;
        var left = MostLoops;
        foreach (var (first, last) in flow.Text.Structures())
        {
            if (CounterOf(run, first, last) is not var (start, end) || flow.RunsOf(last) is not (> MostSpringPasses and var turns) || --left < 0 || !CutsAlike(run, first, last))
                continue;
            file.Report(this, first, start, end, $"All {Say.Number(turns)} turns of this loop cut over the same places, and no word in it reads a variable: the first cuts, the others go over it again. Has a word lost its variable?");
        }
        foreach (var line in flow.Text.Calls())
        {
            if (RepeatsOf(run, line) is not var (token, turns, first, end) || !IsRun(flow, first, end, turns) || --left < 0 || !CutsAlike(run, first, end))
                continue;
            file.Report(this, line, token.Start, token.End, $"All {Say.Number(turns)} runs of this call cut over the same places: the first cuts, the others go over it again. Does the called program lack its step, or G91?");
        }
    }

    /// <summary>Whether the first block behind the head of a program is run so many times in all.</summary>
    static bool IsRun(FlowRun flow, int first, int end, int turns) => flow.Text.NextBlock(first + 1) is var block && block < end && flow.RunsOf(block) == turns;

    /// <summary>The L of a call that runs a program of this file three times or more, and the lines of that program; null for others.</summary>
    static (Token L, int Turns, int First, int End)? RepeatsOf(ProgramRun run, int line)
    {
        var (repeats, program, isCall) = (default(Token?), -1.0, false);
        var block = run.BlockAt(line);
        foreach (ref readonly var token in block.Tokens)
        {
            isCall |= token.IsWord('M') && token.Value == 98;
            if (token.IsWord('L') && !token.IsExpression)
                repeats = token;
            if (token.IsWord('P') && !token.IsExpression)
                program = token.Value;
        }
        return isCall && repeats is { Value: > MostSpringPasses and < int.MaxValue } l && program is >= 0 and < int.MaxValue && run.Flow!.Text.LinesOfProgram((int)program) is var (first, end)
            ? (l, (int)l.Value, first, end) : null;
    }

    /// <summary>Where the condition of a loop that counts on, and reads no variable in its words, stands in its first line; null for others.</summary>
    static (int Start, int End)? CounterOf(ProgramRun run, int first, int last)
    {
        var head = run.BlockAt(first);
        var (comparison, start, end, isCounted) = ((CounterComparison?)null, 0, 0, false);
        foreach (ref readonly var token in head.Tokens)
            if (token.Statement == StatementKind.While)
                (comparison, start, end) = (CounterComparison.Of(head.Line[token.ValueStart..token.End]), token.Start, token.End);
        if (comparison is not { } counter)
            return null;
        for (var line = first + 1; line < last; line++)
        {
            var block = run.BlockAt(line);
            foreach (ref readonly var token in block.Tokens)
            {
                if (token.Kind == TokenKind.Statement || (token.Kind == TokenKind.Word && token.ReadsVariables))
                    return null;
                isCounted |= counter.IsSetBy(block, token) && token.ReadsVariables;
            }
        }
        return isCounted ? (start, end) : null;
    }

    /// <summary>Whether each block between two lines cuts over the same place whenever it runs, and one of them goes into the stock as it was.</summary>
    static bool CutsAlike(ProgramRun run, int first, int last)
    {
        var known = new Dictionary<(int Line, int Move), (Point3 From, Point3 To)>();
        var (again, isInStock) = (false, false);
        for (var part = 0; part < run.Results.Length; part++)
        {
            if (run.Results[part].IsElsewhere)
                continue;
            foreach (ref readonly var cut in run.Results[part].Cuts)
            {
                if (run.LineOf(part, cut.Line) is var line && (line <= first || line >= last))
                    continue;
                if (!cut.From.IsKnown || !cut.To.IsKnown)
                    return false;
                isInStock |= (cut.Arc >= 0 || !Upright.Is(cut.From, cut.To)) && IsInStock(cut.From, cut.To, run.Job.Stock);
                if (known.TryAdd((line, cut.Move), (cut.From, cut.To)))
                    continue;
                var (from, to) = known[(line, cut.Move)];
                // The way in to the first turn may begin elsewhere.
                if (Point3.Distance(to, cut.To) > Same)
                    return false;
                again = true;
            }
        }
        return again && isInStock;
    }

    static bool IsInStock(Point3 from, Point3 to, in Box3 stock) =>
        Math.Min(from.Z, to.Z) < stock.Max.Z - StockField.Tolerance
        && Math.Max(from.X, to.X) > stock.Min.X && Math.Min(from.X, to.X) < stock.Max.X && Math.Max(from.Y, to.Y) > stock.Min.Y && Math.Min(from.Y, to.Y) < stock.Max.Y;
}
