using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Syntax.Expressions;

enum ExpressionFunction { None, Abs, Acos, Asin, Atan, Cos, Exp, Fix, Fup, Ln, Round, Sin, Sqrt, Tan }

/// <summary>The functions of one value in brackets, and ATAN of two (NISTIR 6556 §3.3.2). Angles in degrees.</summary>
static class ExpressionFunctions
{
    /// <summary>The function whose name begins at <paramref name="at"/>, and the index behind the name.</summary>
    public static ExpressionFunction Peek(ReadOnlySpan<byte> line, int at, out int end)
    {
        end = at;
        if (at >= line.Length)
            return ExpressionFunction.None;
        return (line[at] | 0x20) switch
        {
            'a' when Scan.Matches(line, at, "abs"u8, out end) => ExpressionFunction.Abs,
            'a' when Scan.Matches(line, at, "acos"u8, out end) => ExpressionFunction.Acos,
            'a' when Scan.Matches(line, at, "asin"u8, out end) => ExpressionFunction.Asin,
            'a' when Scan.Matches(line, at, "atan"u8, out end) => ExpressionFunction.Atan,
            'c' when Scan.Matches(line, at, "cos"u8, out end) => ExpressionFunction.Cos,
            'e' when Scan.Matches(line, at, "exp"u8, out end) => ExpressionFunction.Exp,
            'f' when Scan.Matches(line, at, "fix"u8, out end) => ExpressionFunction.Fix,
            'f' when Scan.Matches(line, at, "fup"u8, out end) => ExpressionFunction.Fup,
            'l' when Scan.Matches(line, at, "ln"u8, out end) => ExpressionFunction.Ln,
            'r' when Scan.Matches(line, at, "round"u8, out end) => ExpressionFunction.Round,
            's' when Scan.Matches(line, at, "sin"u8, out end) => ExpressionFunction.Sin,
            's' when Scan.Matches(line, at, "sqrt"u8, out end) => ExpressionFunction.Sqrt,
            't' when Scan.Matches(line, at, "tan"u8, out end) => ExpressionFunction.Tan,
            _ => ExpressionFunction.None,
        };
    }

    /// <summary>The function's value; NaN for an unknown argument or with an error. <see cref="ExpressionFunction.Atan"/> is
    /// <see cref="Atan"/>'s.</summary>
    public static double Apply(ExpressionFunction function, double value, out ExpressionError error)
    {
        error = ExpressionError.None;
        if (double.IsNaN(value))
            return double.NaN;
        var defined = function switch
        {
            ExpressionFunction.Acos or ExpressionFunction.Asin => Math.Abs(value) <= 1,
            ExpressionFunction.Sqrt => value >= 0,
            ExpressionFunction.Ln => value > 0,
            ExpressionFunction.Tan => Math.Abs(Math.IEEERemainder(value, 180)) != 90,
            _ => true,
        };
        if (!defined)
        {
            error = ExpressionError.OutsideDomain;
            return double.NaN;
        }

        // Angles are brought within a turn first, and the functions of half turns are exact at the quarters.
        var result = function switch
        {
            ExpressionFunction.Abs => Math.Abs(value),
            ExpressionFunction.Acos => double.AcosPi(value) * 180,
            ExpressionFunction.Asin => double.AsinPi(value) * 180,
            ExpressionFunction.Cos => double.CosPi(Math.IEEERemainder(value, 360) / 180),
            ExpressionFunction.Exp => Math.Exp(value),
            ExpressionFunction.Fix => Math.Floor(value),
            ExpressionFunction.Fup => Math.Ceiling(value),
            ExpressionFunction.Ln => Math.Log(value),
            ExpressionFunction.Round => Math.Round(value, MidpointRounding.AwayFromZero),
            ExpressionFunction.Sin => double.SinPi(Math.IEEERemainder(value, 360) / 180),
            ExpressionFunction.Sqrt => Math.Sqrt(value),
            _ => double.TanPi(Math.IEEERemainder(value, 180) / 180),
        };
        if (double.IsFinite(result))
            return result + 0.0;
        error = ExpressionError.ResultTooLarge;
        return double.NaN;
    }

    /// <summary>The angle of the point (x, y), over −180 to 180 degrees.</summary>
    public static double Atan(double y, double x) => double.Atan2Pi(y, x) * 180 + 0.0;
}
