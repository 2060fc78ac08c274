using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Syntax.Expressions;

enum ExpressionOperator { None, Power, Times, Divide, Modulo, Plus, Minus, And, Or, Xor, Equal, NotEqual, Greater, GreaterOrEqual, Less, LessOrEqual }

/// <summary>The operators between two values: their spelling, rank and result. Ranks are those of NISTIR 6556 §3.3.2; comparisons,
/// which it lacks, rank lowest (common practice).</summary>
static class ExpressionOperators
{
    public const int LowestRank = 1;

    /// <summary>Higher binds tighter.</summary>
    public static int Rank(ExpressionOperator op) => op switch
    {
        ExpressionOperator.Power => 4,
        ExpressionOperator.Times or ExpressionOperator.Divide or ExpressionOperator.Modulo => 3,
        ExpressionOperator.Plus or ExpressionOperator.Minus or ExpressionOperator.And or ExpressionOperator.Or or ExpressionOperator.Xor => 2,
        _ => LowestRank,
    };

    /// <summary>The operator that begins at or after <paramref name="at"/>, and the index behind it.</summary>
    public static ExpressionOperator Peek(ReadOnlySpan<byte> line, int at, out int end)
    {
        at = Scan.SkipSpaces(line, at);
        end = at + 1;
        if (at >= line.Length)
            return ExpressionOperator.None;
        switch (line[at])
        {
            case (byte)'+':
                return ExpressionOperator.Plus;
            case (byte)'-':
                return ExpressionOperator.Minus;
            case (byte)'/':
                return ExpressionOperator.Divide;
            case (byte)'*':
                var second = Scan.SkipSpaces(line, at + 1);
                if (second >= line.Length || line[second] != '*')
                    return ExpressionOperator.Times;
                end = second + 1;
                return ExpressionOperator.Power;
        }

        return (line[at] | 0x20) switch
        {
            'm' when Scan.Matches(line, at, "mod"u8, out end) => ExpressionOperator.Modulo,
            'a' when Scan.Matches(line, at, "and"u8, out end) => ExpressionOperator.And,
            'o' when Scan.Matches(line, at, "or"u8, out end) => ExpressionOperator.Or,
            'x' when Scan.Matches(line, at, "xor"u8, out end) => ExpressionOperator.Xor,
            'e' when Scan.Matches(line, at, "eq"u8, out end) => ExpressionOperator.Equal,
            'n' when Scan.Matches(line, at, "ne"u8, out end) => ExpressionOperator.NotEqual,
            'g' when Scan.Matches(line, at, "gt"u8, out end) => ExpressionOperator.Greater,
            'g' when Scan.Matches(line, at, "ge"u8, out end) => ExpressionOperator.GreaterOrEqual,
            'l' when Scan.Matches(line, at, "lt"u8, out end) => ExpressionOperator.Less,
            'l' when Scan.Matches(line, at, "le"u8, out end) => ExpressionOperator.LessOrEqual,
            _ => ExpressionOperator.None,
        };
    }

    /// <summary>The result of <paramref name="op"/>; NaN when an unknown value decides it or there is an error.</summary>
    public static double Apply(ExpressionOperator op, double left, double right, out ExpressionError error)
    {
        error = ExpressionError.None;
        switch (op)
        {
            // One known side can settle a logical operation (any value other than 0 is true, §3.3.2).
            case ExpressionOperator.And when left == 0 || right == 0:
                return 0;
            case ExpressionOperator.Or when IsTrue(left) || IsTrue(right):
                return 1;
            case ExpressionOperator.Divide or ExpressionOperator.Modulo when right == 0:
                error = ExpressionError.DivisionByZero;
                return double.NaN;
        }

        if (double.IsNaN(left) || double.IsNaN(right))
            return op is ExpressionOperator.Equal or ExpressionOperator.NotEqual ? CompareVacant(left, right, op) : double.NaN;

        switch (op)
        {
            case ExpressionOperator.Power when left == 0 && right < 0:
                error = ExpressionError.DivisionByZero;
                return double.NaN;
            case ExpressionOperator.Power when left < 0 && right != Math.Floor(right):
                error = ExpressionError.OutsideDomain;
                return double.NaN;
        }

        var result = op switch
        {
            ExpressionOperator.Power => Math.Pow(left, right),
            ExpressionOperator.Times => left * right,
            ExpressionOperator.Divide => left / right,
            ExpressionOperator.Modulo => Modulo(left, right),
            ExpressionOperator.Plus => left + right,
            ExpressionOperator.Minus => left - right,
            ExpressionOperator.And => 1,
            ExpressionOperator.Or => 0,
            ExpressionOperator.Xor => Truth(left != 0 != (right != 0)),
            ExpressionOperator.Equal => Truth(left == right),
            ExpressionOperator.NotEqual => Truth(left != right),
            ExpressionOperator.Greater => Truth(left > right),
            ExpressionOperator.GreaterOrEqual => Truth(left >= right),
            ExpressionOperator.Less => Truth(left < right),
            _ => Truth(left <= right),
        };
        if (double.IsFinite(result))
            return result + 0.0;
        error = ExpressionError.ResultTooLarge;
        return double.NaN;
    }

    /// <summary>The remainder from 0 up to the size of the divisor, also for negative values (from memory).</summary>
    static double Modulo(double left, double right)
    {
        var rest = left % right;
        return rest < 0 ? rest + Math.Abs(right) : rest;
    }

    /// <summary>A variable that was never set equals #0 and another such one; against a number controls differ. A value not known may equal anything.</summary>
    static double CompareVacant(double left, double right, ExpressionOperator op)
    {
        var (isLeft, isRight) = (Expression.IsVacant(left), Expression.IsVacant(right));
        if ((!isLeft && double.IsNaN(left)) || (!isRight && double.IsNaN(right)))
            return double.NaN;
        if (isLeft != isRight && (Expression.IsUnset(left) || Expression.IsUnset(right)))
            return double.NaN;
        return Truth((isLeft && isRight) == (op == ExpressionOperator.Equal));
    }

    static bool IsTrue(double value) => value != 0 && !double.IsNaN(value);

    static double Truth(bool value) => value ? 1 : 0;
}
