using System.Globalization;

namespace NcLanguage.Control.Tests.Flow;

/// <summary>Writes a tree as the text of a program: with jumps, WHILE DO and programs by number, or with O words.</summary>
sealed class StructuredPrinter
{
    readonly bool _behindO;
    readonly List<string> _lines = [];
    readonly HashSet<int> _tested = [];
    int _testedAfter;
    int _construct = 200;
    int _block;
    int _loops;
    int _sub;

    StructuredPrinter(bool behindO) => _behindO = behindO;

    /// <summary>The lines (from 1) that a loop with its test behind the body holds.</summary>
    public HashSet<int> InTestedAfter => _tested;

    public string Text => string.Join('\n', _lines) + "\n";

    /// <param name="beginning">Blocks in front.</param>
    public static StructuredPrinter Print(StructuredProgram program, bool behindO, string beginning)
    {
        var printer = new StructuredPrinter(behindO);
        printer.Add(beginning);
        if (behindO)
            printer.PrintSubs(program);
        printer.PrintAll(program.Main);
        printer.Add("M30");
        if (!behindO)
            printer.PrintSubs(program);
        return printer;
    }

    void PrintSubs(StructuredProgram program)
    {
        for (_sub = 1; _sub <= program.Subs.Count; _sub++)
        {
            // Block numbers begin anew in each program: a jump stays in its own.
            _block = 0;
            Add(_behindO ? $"O{100 + _sub} SUB" : $"O{1000 + _sub}");
            PrintAll(program.Subs[_sub - 1]);
            Add(_behindO ? $"O{100 + _sub} ENDSUB" : "N9000 M99");
        }
        (_sub, _block) = (0, 0);
    }

    void Add(string line)
    {
        _lines.Add(line);
        if (_testedAfter > 0)
            _tested.Add(_lines.Count);
    }

    void PrintAll(List<Piece> pieces, (string Leave, string GoOn, int Number) loop = default)
    {
        foreach (var piece in pieces)
            Print(piece, loop);
    }

    void Print(Piece piece, (string Leave, string GoOn, int Number) loop)
    {
        switch (piece)
        {
            case Set set:
                Add($"#{set.Number}={Bare(set.Value)}");
                break;
            case Default set:
                Add($"IF [#{set.Number} EQ #0] THEN #{set.Number}={Number(set.Value)}");
                break;
            case SetIf set:
                Add($"IF {Bracketed(set.Condition)} THEN #{set.Number}={Bracketed(set.Value)}");
                break;
            case Mode mode:
                Add(mode.IsIncremental ? "G91" : "G90");
                break;
            case Go go:
                Add("G0" + Word('X', go.X) + Word('Y', go.Y) + Word('Z', go.Z));
                break;
            case Words words:
                Add(words.Text);
                break;
            case If choice when _behindO:
                PrintBehindO(choice, loop);
                break;
            case If choice:
                PrintWithJumps(choice, loop);
                break;
            case Loop or Times when _behindO:
                PrintLoopBehindO(piece);
                break;
            case Loop or Times:
                PrintLoopWithJumps(piece);
                break;
            case LeaveIf leave when _behindO:
                JumpBehindO(leave.Condition, $"O{loop.Number} {(leave.GoesOn ? "CONTINUE" : "BREAK")}");
                break;
            case LeaveIf leave:
                Add($"IF {Bracketed(leave.Condition)} GOTO {(leave.GoesOn ? loop.GoOn : loop.Leave)}");
                break;
            case ReturnIf back when _behindO:
                JumpBehindO(back.Condition, $"O{100 + _sub} RETURN");
                break;
            case ReturnIf back:
                Add($"IF {Bracketed(back.Condition)} GOTO 9000");
                break;
            case Invoke call:
                PrintCall(call);
                break;
        }
    }

    void PrintCall(Invoke call)
    {
        if (_behindO)
            Add($"O{100 + call.Sub} CALL" + string.Concat((call.Arguments ?? []).Select(argument => " " + Bracketed(argument))));
        else if (call.Arguments is { } arguments)
            Add($"G65 P{1000 + call.Sub}" + string.Concat(arguments.Select((argument, i) => $" {"ABC"[i]}{Bracketed(argument)}")) + $" L{call.Times}");
        else
            Add(call.Times == 1 ? $"M98 P{1000 + call.Sub}" : $"M98 P{1000 + call.Sub} L{call.Times}");
    }

    void JumpBehindO(Term condition, string statement)
    {
        var number = _construct++;
        Add($"O{number} IF {Bracketed(condition)}");
        Add(statement);
        Add($"O{number} ENDIF");
    }

    void PrintBehindO(If choice, (string, string, int) loop)
    {
        var number = _construct++;
        Add($"O{number} IF {Bracketed(choice.Condition)}");
        PrintAll(choice.Then, loop);
        // An ELSE IF is told as such: the same way through the program.
        while (choice.Else is [If next])
        {
            choice = next;
            Add($"O{number} ELSEIF {Bracketed(choice.Condition)}");
            PrintAll(choice.Then, loop);
        }
        if (choice.Else is { } other)
        {
            Add($"O{number} ELSE");
            PrintAll(other, loop);
        }
        Add($"O{number} ENDIF");
    }

    void PrintWithJumps(If choice, (string, string, int) loop)
    {
        var (then, end) = (NextBlock(), NextBlock());
        Add($"IF {Bracketed(choice.Condition)} GOTO {then}");
        PrintAll(choice.Else ?? [], loop);
        Add($"GOTO {end}");
        Add($"N{then}");
        PrintAll(choice.Then, loop);
        Add($"N{end}");
    }

    void PrintLoopBehindO(Piece piece)
    {
        var number = _construct++;
        if (piece is Times times)
        {
            Add($"O{number} REPEAT {Bracketed(times.Count)}");
            PrintAll(times.Body, ("", "", number));
            Add($"O{number} ENDREPEAT");
            return;
        }
        var loop = (Loop)piece;
        Add($"#{loop.Counter}=0");
        _testedAfter += loop.TestsAfter ? 1 : 0;
        Add(loop.TestsAfter ? $"O{number} DO" : $"O{number} WHILE {GoesOn(loop)}");
        Add($"#{loop.Counter}=#{loop.Counter}+1");
        PrintAll(loop.Body, ("", "", number));
        Add(loop.TestsAfter ? $"O{number} WHILE {GoesOn(loop)}" : $"O{number} ENDWHILE");
        _testedAfter -= loop.TestsAfter ? 1 : 0;
    }

    void PrintLoopWithJumps(Piece piece)
    {
        var (leave, goOn, again) = (NextBlock(), NextBlock(), NextBlock());
        var depth = ++_loops;
        var loop = piece as Loop;
        var counter = loop?.Counter ?? ((Times)piece).Counter;
        _testedAfter += loop is { TestsAfter: true } ? 1 : 0;
        // A counted loop is written with a counter here; what it counts to is worked out once.
        Add(piece is Times times ? $"#{counter}=FIX{Bracketed(times.Count)}" : $"#{counter}=0");
        Add(loop is null ? $"WHILE [#{counter} GE 1] DO{depth}" : loop.TestsAfter ? $"N{again}" : $"WHILE {GoesOn(loop)} DO {depth}");
        Add($"#{counter}=#{counter}{(loop is null ? "-1" : "+1")}");
        PrintAll(loop?.Body ?? ((Times)piece).Body, ($"{leave}", $"{goOn}", 0));
        Add(loop is { TestsAfter: true } ? $"N{goOn} IF {GoesOn(loop)} GOTO {again}" : $"N{goOn}");
        if (loop is not { TestsAfter: true })
            Add($"END{depth}");
        _testedAfter -= loop is { TestsAfter: true } ? 1 : 0;
        Add($"N{leave}");
        _loops--;
    }

    int NextBlock() => _block += 10;

    static string GoesOn(Loop loop) => loop.While is { } condition
        ? $"[[#{loop.Counter} LT {loop.Most}] AND {Bracketed(condition)}]"
        : $"[#{loop.Counter} LT {loop.Most}]";

    static string Word(char letter, Term? value) => value is null ? "" : value is Constant constant ? $" {letter}{Number(constant.Value)}" : $" {letter}{Bracketed(value)}";

    static string Number(double value) => value.ToString(CultureInfo.InvariantCulture);

    static string Bracketed(Term term) => $"[{Bare(term)}]";

    /// <summary>Without brackets around the whole: so it may stand behind the = of a setting.</summary>
    static string Bare(Term term) => term switch
    {
        Constant constant => Number(constant.Value),
        Read read => $"#{read.Number}",
        Operation operation => $"{Operand(operation.Left)} {operation.Operator} {Operand(operation.Right)}",
        _ => throw new InvalidOperationException(),
    };

    static string Operand(Term term) => term is Operation ? Bracketed(term) : Bare(term);
}
