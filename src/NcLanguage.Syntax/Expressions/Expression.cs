using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Syntax.Expressions;

/// <summary>Reads and evaluates one real value of a line in one pass: a number, <c>[ … ]</c>, <c>#n</c>, <c>#[…]</c>, <c>##n</c>,
/// <c>#&lt;name&gt;</c> or a function (NISTIR 6556 §3.3.2). A sign may also stand before a bracket, a variable or a function (common
/// practice); like the sign of a number it binds tighter than every operator. Allocates nothing and never throws.</summary>
public static class Expression
{
    /// <summary>Brackets, functions and <c>#</c> that may stand within each other: far more than the five or so that controls take (from memory).</summary>
    public const int DeepestNesting = 32;

    /// <summary>Least number of a variable (NISTIR 6556 §3.3.2).</summary>
    public const int FirstVariable = 1;

    /// <summary>Greatest number of a variable (NISTIR 6556 §3.3.2).</summary>
    public const int LastVariable = 5399;

    /// <summary>Longest name of a variable, in bytes.</summary>
    public const int LongestName = 64;

    /// <summary>How far from a whole number a value may be that stands for one (NISTIR 6556 §3.3.2.1).</summary>
    public const double WholeTolerance = 0.0001;

    /// <summary>What #0 always holds: a value not known that EQ and NE can tell from others (common practice).</summary>
    public static double Vacant { get; } = BitConverter.Int64BitsToDouble(VacantBits);

    /// <summary>What a variable holds that was never set: it equals #0 and others like it; against a number controls differ, some take it as 0.</summary>
    public static double Unset { get; } = BitConverter.Int64BitsToDouble(UnsetBits);

    const long VacantBits = 0x7FF8_0000_0000_0ACE;
    const long UnsetBits = 0x7FF8_0000_0000_0ACF;

    /// <summary>True for <see cref="Vacant"/> and <see cref="Unset"/>, which are NaNs of their own.</summary>
    public static bool IsVacant(double value) => BitConverter.DoubleToInt64Bits(value) is VacantBits or UnsetBits;

    /// <summary>True for <see cref="Unset"/> alone.</summary>
    internal static bool IsUnset(double value) => BitConverter.DoubleToInt64Bits(value) == UnsetBits;

    /// <summary>Reads the value at <paramref name="start"/>, spaces before it skipped.</summary>
    /// <param name="line">The bytes of one line.</param>
    /// <param name="start">Index of the byte behind the address, <c>=</c> or whatever the value belongs to.</param>
    /// <param name="variables">What the variables hold.</param>
    public static ExpressionResult Read<TVariables>(ReadOnlySpan<byte> line, int start, ref TVariables variables)
        where TVariables : struct, IVariables, allows ref struct
    {
        var state = new State { At = start };
        return End(line, start, ReadValue(line, ref state, ref variables, 0), state);
    }

    /// <summary>Reads the right side of a setting: values joined by operators, which need no brackets there (common practice; NISTIR 6556 asks for them).</summary>
    /// <param name="line">The bytes of one line.</param>
    /// <param name="start">Index of the byte behind the <c>=</c>.</param>
    /// <param name="variables">What the variables hold.</param>
    public static ExpressionResult ReadSetting<TVariables>(ReadOnlySpan<byte> line, int start, ref TVariables variables)
        where TVariables : struct, IVariables, allows ref struct
    {
        var state = new State { At = start };
        return End(line, start, ReadOperation(line, ref state, ref variables, ExpressionOperators.LowestRank, depth: 1), state);
    }

    static ExpressionResult End(ReadOnlySpan<byte> line, int start, double value, in State state)
    {
        if (state.Error == ExpressionError.None)
            return new(value, state.At, ExpressionError.None, -1, state.ReadsVariables);
        var end = state.Stopped ? BehindOpenBrackets(line, start, state.At) : state.At;
        return new(double.NaN, end, state.Error, state.ErrorAt, state.ReadsVariables);
    }

    /// <summary>Where reading stands, and the first error. Reading goes on behind an error of evaluation, so that the end of the value
    /// is found; it stops at an error of form.</summary>
    struct State
    {
        public int At;
        public ExpressionError Error;
        public int ErrorAt;
        public bool Stopped;
        public bool ReadsVariables;

        public double Note(ExpressionError error, int at)
        {
            if (Error == ExpressionError.None)
                (Error, ErrorAt) = (error, at);
            return double.NaN;
        }

        public double Stop(ExpressionError error, int at)
        {
            Stopped = true;
            return Note(error, at);
        }
    }

    static double ReadValue<TVariables>(ReadOnlySpan<byte> line, ref State state, ref TVariables variables, int depth)
        where TVariables : struct, IVariables, allows ref struct
    {
        var at = Scan.SkipSpaces(line, state.At);
        if (at >= line.Length)
            return state.Stop(ExpressionError.MissingOperand, at);
        switch (line[at])
        {
            case (byte)'[':
                state.At = at;
                return ReadBracket(line, ref state, ref variables, depth + 1);
            case (byte)'#':
                return ReadVariable(line, at, ref state, ref variables, depth + 1);
            case (byte)'+' or (byte)'-':
                var next = Scan.SkipSpaces(line, at + 1);
                if (next < line.Length && (line[next] is (byte)'[' or (byte)'#' || Scan.IsLetter(line[next])))
                {
                    var before = state.At;
                    state.At = next;
                    var value = ReadValue(line, ref state, ref variables, depth);
                    if (state.At == next && state.Stopped)
                        state.At = before;
                    return line[at] == '+' ? value : double.IsNaN(value) ? double.NaN : 0.0 - value;
                }

                break;
        }

        if (Scan.IsLetter(line[at]))
            return ReadFunction(line, at, ref state, ref variables, depth + 1);

        var number = NumberReader.ReadNumber(line, at);
        if (number.End == at || (number.Malformed && number.Digits == 0 && !number.HasPoint))
            return state.Stop(ExpressionError.MissingOperand, at);
        state.At = number.End;
        return number.Malformed ? state.Note(ExpressionError.NumberMalformed, at) : number.Value;
    }

    /// <summary>Reads <c>[ … ]</c>; the opening bracket stands at the state's place.</summary>
    static double ReadBracket<TVariables>(ReadOnlySpan<byte> line, ref State state, ref TVariables variables, int depth)
        where TVariables : struct, IVariables, allows ref struct
    {
        var open = state.At;
        if (depth > DeepestNesting)
            return state.Stop(ExpressionError.TooDeep, open);
        state.At = open + 1;
        var value = ReadOperation(line, ref state, ref variables, ExpressionOperators.LowestRank, depth);
        if (state.Stopped)
        {
            if (state.Error == ExpressionError.MissingOperand && IsAtEnd(line, state.ErrorAt) && Scan.SkipSpaces(line, open + 1) == state.ErrorAt)
                (state.Error, state.ErrorAt) = (ExpressionError.UnclosedBracket, open);
            return double.NaN;
        }

        var at = Scan.SkipSpaces(line, state.At);
        if (IsAtEnd(line, at))
            return state.Stop(ExpressionError.UnclosedBracket, open);
        if (line[at] != ']')
        {
            if (line[at] != '(' && !IsClosed(line, open))
                return state.Stop(ExpressionError.UnclosedBracket, open);
            var isValue = line[at] is (byte)'[' or (byte)'#' or (byte)'.' || Scan.IsDigit(line[at]) || Scan.IsLetter(line[at]);
            return state.Stop(isValue ? ExpressionError.MissingOperator : ExpressionError.UnexpectedCharacter, at);
        }

        state.At = at + 1;
        return value;
    }

    /// <summary>Reads values joined by operators of at least <paramref name="rank"/>; equal ranks from left to right.</summary>
    static double ReadOperation<TVariables>(ReadOnlySpan<byte> line, ref State state, ref TVariables variables, int rank, int depth)
        where TVariables : struct, IVariables, allows ref struct
    {
        var left = ReadValue(line, ref state, ref variables, depth);
        while (!state.Stopped)
        {
            var op = ExpressionOperators.Peek(line, state.At, out var end);
            if (op == ExpressionOperator.None || ExpressionOperators.Rank(op) < rank)
                break;
            var at = Scan.SkipSpaces(line, state.At);
            state.At = end;
            var right = ReadOperation(line, ref state, ref variables, ExpressionOperators.Rank(op) + 1, depth);
            if (state.Stopped)
                break;
            left = ExpressionOperators.Apply(op, left, right, out var error);
            if (error != ExpressionError.None)
                state.Note(error, at);
        }

        return left;
    }

    static double ReadFunction<TVariables>(ReadOnlySpan<byte> line, int at, ref State state, ref TVariables variables, int depth)
        where TVariables : struct, IVariables, allows ref struct
    {
        var function = ExpressionFunctions.Peek(line, at, out var end);
        var letters = 0;
        if (function == ExpressionFunction.None)
        {
            for (end = at; end < line.Length && Scan.IsLetter(line[end]); end = Scan.SkipSpaces(line, end + 1))
                letters++;
        }

        var open = Scan.SkipSpaces(line, end);
        var hasBracket = open < line.Length && line[open] == '[';
        if (letters == 1 ? depth == 1 || !hasBracket : depth == 1 && !hasBracket)
            return state.Stop(ExpressionError.MissingOperand, at); // The next word of the block: this one has no value.
        if (!hasBracket)
            return state.Stop(function == ExpressionFunction.None ? ExpressionError.UnknownFunction : ExpressionError.FunctionWithoutBracket, at);

        if (function == ExpressionFunction.None)
            state.Note(ExpressionError.UnknownFunction, at);
        state.At = open;
        var value = ReadBracket(line, ref state, ref variables, depth);
        if (state.Stopped || function == ExpressionFunction.None)
            return double.NaN;
        if (function == ExpressionFunction.Atan)
            return ReadAtan(line, at, value, ref state, ref variables, depth);
        value = ExpressionFunctions.Apply(function, value, out var error);
        return error == ExpressionError.None ? value : state.Note(error, at);
    }

    static double ReadAtan<TVariables>(ReadOnlySpan<byte> line, int at, double y, ref State state, ref TVariables variables, int depth)
        where TVariables : struct, IVariables, allows ref struct
    {
        var slash = Scan.SkipSpaces(line, state.At);
        var open = Scan.SkipSpaces(line, slash + 1);
        if (slash >= line.Length || line[slash] != '/' || open >= line.Length || line[open] != '[')
            return state.Note(ExpressionError.AtanWithoutSecond, at);
        state.At = open;
        var x = ReadBracket(line, ref state, ref variables, depth);
        return ExpressionFunctions.Atan(y, x);
    }

    static double ReadVariable<TVariables>(ReadOnlySpan<byte> line, int at, ref State state, ref TVariables variables, int depth)
        where TVariables : struct, IVariables, allows ref struct
    {
        state.ReadsVariables = true;
        if (depth > DeepestNesting)
            return state.Stop(ExpressionError.TooDeep, at);
        var next = Scan.SkipSpaces(line, at + 1);
        if (next < line.Length && line[next] == '<')
            return ReadNamed(line, next + 1, at, ref state, ref variables);

        state.At = at + 1;
        var number = ReadValue(line, ref state, ref variables, depth);
        if (state.Stopped || double.IsNaN(number))
            return double.NaN;
        var whole = Math.Round(number);
        if (Math.Abs(number - whole) > WholeTolerance)
            return state.Note(ExpressionError.VariableNotWhole, at);
        // The variable that is always vacant has its use in comparisons and settings only (common practice; the report has none of that number).
        if (whole is < FirstVariable or > LastVariable && !(whole == 0 && depth > 1))
            return state.Note(ExpressionError.VariableOutOfRange, at);
        return variables.Get((int)whole);
    }

    /// <summary>Reads the name behind <c>#&lt;</c>, without its spaces and in lower case.</summary>
    static double ReadNamed<TVariables>(ReadOnlySpan<byte> line, int start, int at, ref State state, ref TVariables variables)
        where TVariables : struct, IVariables, allows ref struct
    {
        var close = line[start..].IndexOf((byte)'>');
        if (close < 0)
        {
            state.At = start;
            return state.Stop(ExpressionError.VariableNameMalformed, at);
        }

        Span<byte> name = stackalloc byte[LongestName];
        var length = 0;
        state.At = start + close + 1;
        foreach (var c in line.Slice(start, close))
        {
            if (Scan.IsBlank(c))
                continue;
            if (length == LongestName)
                return state.Note(ExpressionError.VariableNameMalformed, at);
            name[length++] = (uint)(c - 'A') < 26 ? (byte)(c | 0x20) : c;
        }

        return length == 0 ? state.Note(ExpressionError.VariableNameMalformed, at) : variables.Get(name[..length]);
    }

    static bool IsAtEnd(ReadOnlySpan<byte> line, int at) => at >= line.Length || line[at] is (byte)'\r' or (byte)'\n' or (byte)';';

    /// <summary>Whether a bracket has its partner in the line, before a comment.</summary>
    static bool IsClosed(ReadOnlySpan<byte> line, int open)
    {
        var depth = 0;
        for (var i = open; !IsAtEnd(line, i) && line[i] != '('; i++)
        {
            depth += line[i] == '[' ? 1 : line[i] == ']' ? -1 : 0;
            if (depth == 0)
                return true;
        }

        return false;
    }

    /// <summary>Where to read on after an error of form at <paramref name="at"/>: behind the brackets open there.</summary>
    static int BehindOpenBrackets(ReadOnlySpan<byte> line, int start, int at)
    {
        var open = 0;
        var i = start;
        for (; i < at && i < line.Length; i++)
            open += line[i] == '[' ? 1 : line[i] == ']' ? -1 : 0;
        if (open <= 0)
            return i;
        for (; !IsAtEnd(line, i) && line[i] != '('; i++)
        {
            if (line[i] == '[')
                open++;
            else if (line[i] == ']' && --open == 0)
                return i + 1;
        }

        return i;
    }
}
