using NcLanguage.Machine.Geometry;

namespace NcLanguage.Control.Tests.Flow;

/// <summary>Runs a program as a tree: no text, no lines, no jumps. Variables are a dictionary; what was never set is not in it.</summary>
sealed class StructuredRun(StructuredProgram program, bool hasSharedLocals)
{
    const int LastLocal = 33;
    const int MostPieces = 50_000;

    enum Outcome { Goes, Leaves, GoesRound, Returns }

    Dictionary<int, double> _locals = [];
    readonly Dictionary<int, double> _common = [];
    bool _isIncremental;
    Point3 _place;
    int _pieces;

    /// <summary>Where the tool stands after each rapid.</summary>
    public List<Point3> Places { get; } = [];

    public IReadOnlyDictionary<int, double> Locals => _locals;

    public IReadOnlyDictionary<int, double> Common => _common;

    /// <summary>False where it takes too long to be compared.</summary>
    public bool Run()
    {
        Run(program.Main);
        return _pieces < MostPieces;
    }

    Outcome Run(List<Piece> pieces)
    {
        foreach (var piece in pieces)
            if (_pieces++ >= MostPieces || Run(piece) is var outcome && outcome != Outcome.Goes && (_outcome = outcome) == outcome)
                return _pieces >= MostPieces ? Outcome.Returns : _outcome;
        return Outcome.Goes;
    }

    Outcome _outcome;

    Outcome Run(Piece piece)
    {
        switch (piece)
        {
            case Set set:
                Write(set.Number, Value(set.Value));
                break;
            case Default set:
                if (!Of(set.Number).ContainsKey(set.Number))
                    Write(set.Number, set.Value);
                break;
            case SetIf set:
                if (Value(set.Condition) != 0)
                    Write(set.Number, Value(set.Value));
                break;
            case Mode mode:
                _isIncremental = mode.IsIncremental;
                break;
            case Go go:
                _place = new Point3(To(go.X, _place.X), To(go.Y, _place.Y), To(go.Z, _place.Z));
                Places.Add(_place);
                break;
            case If choice:
                return Value(choice.Condition) != 0 ? Run(choice.Then) : choice.Else is { } other ? Run(other) : Outcome.Goes;
            case Loop loop:
                return Run(loop);
            case Times times:
                for (var left = Math.Floor(Value(times.Count)); left >= 1; left--)
                {
                    var outcome = Run(times.Body);
                    if (outcome == Outcome.Returns)
                        return outcome;
                    if (outcome == Outcome.Leaves)
                        break;
                }
                break;
            case LeaveIf leave:
                return Value(leave.Condition) == 0 ? Outcome.Goes : leave.GoesOn ? Outcome.GoesRound : Outcome.Leaves;
            case ReturnIf back:
                return Value(back.Condition) == 0 ? Outcome.Goes : Outcome.Returns;
            case Invoke call:
                Call(call);
                break;
        }
        return Outcome.Goes;
    }

    Outcome Run(Loop loop)
    {
        Write(loop.Counter, 0);
        while (loop.TestsAfter || GoesOn(loop))
        {
            Write(loop.Counter, Read(loop.Counter) + 1);
            var outcome = Run(loop.Body);
            if (outcome == Outcome.Returns)
                return outcome;
            if (outcome == Outcome.Leaves || (loop.TestsAfter && !GoesOn(loop)))
                break;
        }
        return Outcome.Goes;
    }

    bool GoesOn(Loop loop) => Read(loop.Counter) < loop.Most && (loop.While is null || Value(loop.While) != 0);

    void Call(Invoke call)
    {
        var locals = _locals;
        var shares = call.Arguments is null && hasSharedLocals;
        var arguments = call.Arguments?.Select(Value).ToArray() ?? [];
        for (var pass = 0; pass < (hasSharedLocals ? call.Times : 1); pass++)
        {
            if (!shares)
                _locals = arguments.Select((value, i) => (i + 1, value)).ToDictionary();
            Run(program.Subs[call.Sub - 1]);
        }
        if (!shares)
            _locals = locals;
    }

    double To(Term? word, double from) => word is null ? from : _isIncremental ? from + Value(word) : Value(word);

    Dictionary<int, double> Of(int number) => number <= LastLocal ? _locals : _common;

    double Read(int number) => Of(number)[number];

    void Write(int number, double value) => Of(number)[number] = value;

    double Value(Term term)
    {
        switch (term)
        {
            case Constant constant:
                return constant.Value;
            case Read read:
                return Read(read.Number);
        }
        var operation = (Operation)term;
        var (a, b) = (Value(operation.Left), Value(operation.Right));
        return operation.Operator switch
        {
            "+" => a + b,
            "-" => a - b,
            "*" => a * b,
            "MOD" => a - b * Math.Floor(a / b),
            "EQ" => a == b ? 1 : 0,
            "NE" => a != b ? 1 : 0,
            "GT" => a > b ? 1 : 0,
            "GE" => a >= b ? 1 : 0,
            "LT" => a < b ? 1 : 0,
            "LE" => a <= b ? 1 : 0,
            "AND" => a != 0 && b != 0 ? 1 : 0,
            "OR" => a != 0 || b != 0 ? 1 : 0,
            _ => throw new InvalidOperationException(operation.Operator),
        };
    }
}
