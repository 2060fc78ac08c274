namespace NcLanguage.Control.Tests.Flow;

/// <summary>An arithmetic expression as a tree.</summary>
abstract record Term;

sealed record Constant(double Value) : Term;

/// <summary>#number.</summary>
sealed record Read(int Number) : Term;

/// <summary>+, -, * or MOD; comparison words; AND and OR.</summary>
sealed record Operation(string Operator, Term Left, Term Right) : Term;

/// <summary>A piece of a program without jumps.</summary>
abstract record Piece;

sealed record Set(int Number, Term Value) : Piece;

/// <summary>Sets a variable only where it was never set: IF [#n EQ #0] THEN #n=…</summary>
sealed record Default(int Number, double Value) : Piece;

/// <summary>IF [c] THEN #n=…</summary>
sealed record SetIf(Term Condition, int Number, Term Value) : Piece;

/// <summary>G90 or G91.</summary>
sealed record Mode(bool IsIncremental) : Piece;

/// <summary>A rapid with any of X, Y, Z.</summary>
sealed record Go(Term? X, Term? Y, Term? Z) : Piece;

/// <summary>A block of words that the reference does not look into.</summary>
sealed record Words(string Text) : Piece;

sealed record If(Term Condition, List<Piece> Then, List<Piece>? Else) : Piece;

/// <summary>A loop that a counter and perhaps a further condition keep going.</summary>
/// <param name="TestsAfter">The condition is looked at behind the body.</param>
sealed record Loop(int Id, int Most, Term? While, bool TestsAfter, List<Piece> Body) : Piece
{
    public int Counter => 120 + Id;
}

/// <summary>A body so many times.</summary>
sealed record Times(int Id, Term Count, List<Piece> Body) : Piece
{
    public int Counter => 120 + Id;
}

/// <summary>Leaves the nearest loop, or goes on with its next pass, where the condition holds.</summary>
sealed record LeaveIf(Term Condition, bool GoesOn) : Piece;

/// <summary>Returns from the subprogram where the condition holds.</summary>
sealed record ReturnIf(Term Condition) : Piece;

/// <summary>A call: with arguments, which are the callee's #1, #2 …, or without, which shares the caller's local variables where the language has such calls.</summary>
sealed record Invoke(int Sub, List<Term>? Arguments, int Times) : Piece;

/// <summary>A program and its subprograms, of which each calls only later ones.</summary>
sealed record StructuredProgram(List<Piece> Main, List<List<Piece>> Subs);

/// <summary>Makes random programs.</summary>
sealed class ProgramMaker(Random random, bool hasInput, bool testsAfter, bool hasModes)
{
    /// <summary>The variable that is not known in one of the runs.</summary>
    public const int Input = 500;

    static readonly string[] Arithmetic = ["+", "-", "*", "MOD"];
    static readonly string[] Comparisons = ["EQ", "NE", "GT", "GE", "LT", "LE"];

    static readonly string[] ModeBlocks =
    [
        "F100", "F250", "G54", "G55", "S900 M3", "M5", "M8", "M9", "G98", "G99", "G81 X1 Y2 Z-3 R2 F80", "G82 X3 Z-4 R1 P1 F60", "X2", "Y-4", "G80",
        "G0", "T1 M6", "T2", "M6", "G43 H1", "G49", "G20", "G21", "G92 X3", "G92.1", "G52 Y2", "G1 X4 F90", "G94", "G95",
    ];

    int _loops;
    int _subs;
    int _sub;

    int Pick(int count) => random.Next(count);

    T Pick<T>(T[] of) => of[Pick(of.Length)];

    public StructuredProgram Make()
    {
        _subs = Pick(4);
        var subs = new List<List<Piece>>();
        for (_sub = 1; _sub <= _subs; _sub++)
        {
            List<Piece> pieces = [.. Enumerable.Range(1, 4).Select(number => new Default(number, Pick(5)))];
            pieces.AddRange(Pieces(1, 0));
            subs.Add(pieces);
        }
        _sub = 0;
        List<Piece> main = [.. new[] { 1, 2, 3, 4, 100, 101, 102 }.Select(number => new Set(number, new Constant(Pick(6))))];
        main.AddRange(Pieces(0, 0));
        return new StructuredProgram(main, subs);
    }

    int Variable() => Pick(7) is var i && i < 4 ? i + 1 : 96 + i;

    Term Expression(int depth = 0)
    {
        if (depth > 2 || Pick(3) == 0)
            return Pick(2) == 0 ? new Constant(Pick(Enumerable.Range(-8, 17).ToArray()) / 2.0) : new Read(hasInput && Pick(8) == 0 ? Input : Variable());
        var op = Pick(Arithmetic);
        return new Operation(op, Expression(depth + 1), op == "MOD" ? new Constant(2 + Pick(5)) : Expression(depth + 1));
    }

    Term Condition(int depth = 0)
    {
        if (depth < 2 && Pick(5) == 0)
            return new Operation(Pick(2) == 0 ? "AND" : "OR", Condition(depth + 1), Condition(depth + 1));
        return new Operation(Pick(Comparisons), hasInput && Pick(3) == 0 ? new Read(Input) : Expression(1), Expression(1));
    }

    Term Wrapped() => new Operation("MOD", Expression(), new Constant(50));

    List<Piece> Pieces(int depth, int loops)
    {
        var pieces = new List<Piece>();
        for (var i = Pick(depth == 0 ? 5 : 3) + 1; i > 0; i--)
            pieces.Add(Piece(depth, loops));
        return pieces;
    }

    Piece Piece(int depth, int loops)
    {
        if (hasModes && Pick(3) == 0)
            return new Words(Pick(ModeBlocks));
        var isDeep = depth >= 4;
        switch (Pick(isDeep ? 7 : 14))
        {
            case 0 or 1:
                return new Set(Variable(), Wrapped());
            case 2:
                return new SetIf(Condition(), Variable(), Wrapped());
            case 3:
                return new Mode(Pick(2) == 0);
            case 4 or 5:
                var axes = Pick(7) + 1;
                return new Go((axes & 1) != 0 ? Expression() : null, (axes & 2) != 0 ? Expression() : null, (axes & 4) != 0 ? Expression() : null);
            case 6:
                return loops > 0 ? new LeaveIf(Condition(), Pick(2) == 0) : _sub > 0 ? new ReturnIf(Condition()) : new Set(Variable(), Wrapped());
            case 7 or 8 or 9:
                return new If(Condition(), Pieces(depth + 1, loops), Pick(2) == 0 ? Pieces(depth + 1, loops) : null);
            case 10 or 11 when loops < 3:
                var isAfter = testsAfter && Pick(2) == 0;
                return new Loop(_loops++, Pick(4), Pick(2) == 0 ? Condition() : null, isAfter, Pieces(depth + 1, loops + 1));
            case 12 when loops < 3:
                return new Times(_loops++, new Operation("MOD", Expression(), new Constant(4)), Pieces(depth + 1, loops + 1));
            default:
                if (_sub >= _subs)
                    return new Set(Variable(), Wrapped());
                var withArguments = Pick(2) == 0;
                return new Invoke(_sub + 1 + Pick(_subs - _sub), withArguments ? [.. Enumerable.Range(0, Pick(3)).Select(_ => Wrapped())] : null, 1 + Pick(3));
        }
    }
}
