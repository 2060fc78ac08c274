using System.Globalization;
using System.Text;

namespace NcLanguage.Syntax.Tests.Expressions;

/// <summary>A value and how far two correct evaluations may lie apart, because sines and the like are rounded differently. There is
/// one nought only: a program has no use for minus nought.</summary>
readonly record struct Estimate(double Value, double Error)
{
    public double Value { get; } = Value + 0.0;

    public bool IsExact => Error == 0;
}

/// <summary>The expression has no value: a division by nought, a value outside a function's domain, a result too large.</summary>
sealed class FaultException : Exception;

/// <summary>Rounding decides the outcome, so that two correct evaluations may differ.</summary>
sealed class UnclearException : Exception;

/// <summary>An expression built as a tree, which evaluates itself without reading any text.</summary>
abstract record Node
{
    public abstract Estimate Evaluate();

    /// <summary>How tightly its outermost operator binds; values that need no brackets bind tightest.</summary>
    public virtual int Rank => 9;

    /// <summary>Writes its tokens; blanks and case are put in later.</summary>
    public abstract void Write(List<string> tokens);

    /// <summary>The text, spaced, capitalised and with needless brackets as <paramref name="random"/> has it.</summary>
    public string Print(Random random, bool withBrackets = true)
    {
        var tokens = new List<string>();
        if (withBrackets)
            WriteBracketed(tokens);
        else
            Write(tokens);
        var text = new StringBuilder();
        foreach (var c in string.Concat(tokens))
        {
            while (random.Next(6) == 0)
                text.Append(random.Next(3) == 0 ? '\t' : ' ');
            text.Append(random.Next(2) == 0 ? char.ToLowerInvariant(c) : c);
        }

        return text.ToString();
    }

    public void WriteBracketed(List<string> tokens)
    {
        tokens.Add("[");
        Write(tokens);
        tokens.Add("]");
    }

    protected static Estimate Check(double value, double error)
    {
        // Operands that differ in their last digit are rounded to either side: a last digit of the outcome more.
        if (error > 0 && double.IsFinite(value))
            error += Math.BitIncrement(Math.Abs(value)) - Math.Abs(value);
        if (error > 1e-6 * (1 + Math.Abs(value)) || (error > 0 && Math.Abs(value) > 1e300))
            throw new UnclearException();
        return double.IsFinite(value) ? new(value, error) : throw new FaultException();
    }

    protected static void DemandExact(params ReadOnlySpan<Estimate> values)
    {
        foreach (var value in values)
        {
            if (!value.IsExact)
                throw new UnclearException();
        }
    }
}

sealed record NumberNode(string Text) : Node
{
    public override Estimate Evaluate() => new(double.Parse(Text, CultureInfo.InvariantCulture), 0);

    public override void Write(List<string> tokens) => tokens.Add(Text);
}

/// <summary>A variable whose value is a tenth of its number.</summary>
sealed record VariableNode(int Number) : Node
{
    public override Estimate Evaluate() => new(Number / 10.0, 0);

    public override void Write(List<string> tokens) => tokens.Add($"#{Number}");
}

sealed record MinusNode(Node Operand) : Node
{
    public override Estimate Evaluate()
    {
        var value = Operand.Evaluate();
        return new(-value.Value, value.Error);
    }

    public override void Write(List<string> tokens)
    {
        tokens.Add("-");
        Operand.WriteBracketed(tokens);
    }
}

sealed record FunctionNode(string Name, Node Operand) : Node
{
    public static readonly string[] Names = ["ABS", "ACOS", "ASIN", "COS", "EXP", "FIX", "FUP", "LN", "ROUND", "SIN", "SQRT", "TAN"];

    const double Degree = Math.PI / 180;

    public override Estimate Evaluate()
    {
        var (x, error) = Operand.Evaluate();
        var angleError = (error + Math.Abs(x) * 1e-15) * Degree + 1e-15;
        switch (Name)
        {
            case "ABS":
                return new(Math.Abs(x), error);
            case "FIX" or "FUP" or "ROUND":
                var toJump = Math.Abs(x * 2 - Math.Round(x * 2)) / 2;
                if (error > 0 && toJump <= error)
                    throw new UnclearException();
                var below = x - x % 1 - (x % 1 < 0 ? 1 : 0);
                var whole = x % 1 == 0;
                return new(Name switch
                {
                    "FIX" => below,
                    "FUP" => whole ? x : below + 1,
                    _ => Math.Sign(x) * (Math.Truncate(Math.Abs(x)) + (Math.Abs(x) % 1 >= 0.5 ? 1 : 0)),
                }, 0);
            case "SQRT":
                if (error > 0 && x < 1e-3)
                    throw new UnclearException();
                return x < 0 ? throw new FaultException() : Check(Math.Sqrt(x), error == 0 ? 0 : error / Math.Sqrt(x));
            case "LN":
                if (error > 0 && x < 1e-3)
                    throw new UnclearException();
                return x <= 0 ? throw new FaultException() : Check(Math.Log(x), error / x + 1e-15 * (1 + Math.Abs(Math.Log(x))));
            case "EXP":
                return Math.Abs(x) > 600 ? throw new UnclearException() : Check(Math.Exp(x), Math.Exp(x) * (error + 1e-15));
            case "ASIN" or "ACOS":
                if (error > 0 && Math.Abs(x) > 0.99)
                    throw new UnclearException();
                if (Math.Abs(x) > 1)
                    throw new FaultException();
                var slope = error == 0 ? 0 : error / Math.Sqrt(1 - x * x);
                return Check((Name == "ASIN" ? Math.Asin(x) : Math.Acos(x)) / Degree, slope / Degree + 1e-12);
            case "SIN":
                return Check(Math.Sin(x * Degree), angleError);
            case "COS":
                return Check(Math.Cos(x * Degree), angleError);
            default:
                var cosine = Math.Cos(x * Degree);
                return Math.Abs(cosine) < 1e-3 ? throw new UnclearException() : Check(Math.Tan(x * Degree), 2 * angleError / (cosine * cosine));
        }
    }

    public override void Write(List<string> tokens)
    {
        tokens.Add(Name);
        Operand.WriteBracketed(tokens);
    }
}

sealed record AtanNode(Node Y, Node X) : Node
{
    public override Estimate Evaluate()
    {
        var (y, x) = (Y.Evaluate(), X.Evaluate());
        var radius = Math.Sqrt(x.Value * x.Value + y.Value * y.Value);
        var error = x.Error + y.Error;
        if (!double.IsFinite(radius) || (error > 0 && (radius < 1e-3 || (x.Value < 1e-3 && Math.Abs(y.Value) < 1e-3))))
            throw new UnclearException();
        return Check(Math.Atan2(y.Value, x.Value) * 180 / Math.PI, (error > 0 ? 90 * error / radius : 0) + 1e-12);
    }

    public override void Write(List<string> tokens)
    {
        tokens.Add("ATAN");
        Y.WriteBracketed(tokens);
        tokens.Add("/");
        X.WriteBracketed(tokens);
    }
}

sealed record BinaryNode(string Operator, Node Left, Node Right, bool NeedlessBrackets) : Node
{
    public static readonly string[] Operators = ["**", "*", "/", "MOD", "+", "-", "AND", "OR", "XOR", "EQ", "NE", "GT", "GE", "LT", "LE"];

    public override int Rank => Operator switch
    {
        "**" => 4,
        "*" or "/" or "MOD" => 3,
        "+" or "-" or "AND" or "OR" or "XOR" => 2,
        _ => 1,
    };

    public override Estimate Evaluate()
    {
        var (left, right) = (Left.Evaluate(), Right.Evaluate());
        var (a, b) = (left.Value, right.Value);
        var (ea, eb) = (left.Error, right.Error);
        switch (Operator)
        {
            case "+":
                return Check(a + b, ea + eb);
            case "-":
                return Check(a - b, ea + eb);
            case "*":
                return Check(a * b, ea == 0 && eb == 0 ? 0 : Math.Abs(a) * eb + Math.Abs(b) * ea + ea * eb);
            case "/":
                if (eb > 0 && Math.Abs(b) < 1e-3)
                    throw new UnclearException();
                return b == 0 ? throw new FaultException() : Check(a / b, (ea + Math.Abs(a / b) * eb) * 2 / Math.Abs(b));
            case "**":
                DemandExact(left, right);
                if ((a == 0 && b < 0) || (a < 0 && b % 1 != 0))
                    throw new FaultException();
                return Check(Math.Pow(a, b), 0);
        }

        if (Operator == "MOD")
        {
            DemandExact(left, right);
            if (b == 0)
                throw new FaultException();
            return new(a % b < 0 ? a % b + Math.Abs(b) : a % b, 0);
        }

        var isClear = Rank == 1
            ? ea + eb == 0 || Math.Abs(a - b) > ea + eb
            : (ea == 0 || Math.Abs(a) > ea) && (eb == 0 || Math.Abs(b) > eb);
        if (!isClear)
            throw new UnclearException();
        return new(Operator switch
        {
            "AND" => a != 0 && b != 0,
            "OR" => a != 0 || b != 0,
            "XOR" => (a != 0) ^ (b != 0),
            "EQ" => a == b,
            "NE" => a != b,
            "GT" => a > b,
            "GE" => a >= b,
            "LT" => a < b,
            _ => a <= b,
        } ? 1 : 0, 0);
    }

    public override void Write(List<string> tokens)
    {
        WriteOperand(Left, Left.Rank < Rank, tokens);
        tokens.Add(Operator);
        WriteOperand(Right, Right.Rank <= Rank, tokens);
    }

    void WriteOperand(Node operand, bool needsBrackets, List<string> tokens)
    {
        if (needsBrackets || NeedlessBrackets)
            operand.WriteBracketed(tokens);
        else
            operand.Write(tokens);
    }
}
