using System.Globalization;
using System.Text;
using CsCheck;
using NcLanguage.Syntax.Expressions;

namespace NcLanguage.Syntax.Tests.Expressions;

/// <summary>Random trees, evaluated as trees with the platform's mathematics and read from their text.</summary>
public class RandomExpressionTests
{
    static readonly Gen<Node> Numbers = Gen.Select(Gen.Int[-4000, 4000], Gen.Int[0, 3]).Select((thousandths, shape) => (Node)new NumberNode(shape switch
    {
        0 => (thousandths / 1000).ToString(CultureInfo.InvariantCulture),
        1 => (thousandths / 500 * 0.5).ToString("F1", CultureInfo.InvariantCulture),
        2 => (thousandths / 1000).ToString(CultureInfo.InvariantCulture) + ".",
        _ => (thousandths * 0.001).ToString("F3", CultureInfo.InvariantCulture),
    }));

    static readonly Gen<Node> Trees = Gen.Recursive<Node>((depth, inner) => depth >= 5 ? Numbers : Gen.Frequency(
        (2, Numbers),
        (1, Gen.Int[1, 60].Select(number => (Node)new VariableNode(number))),
        (1, inner.Select(operand => (Node)new MinusNode(operand))),
        (2, Gen.Select(Gen.OneOf(FunctionNode.Names), inner).Select((name, operand) => (Node)new FunctionNode(name, operand))),
        (1, Gen.Select(inner, inner).Select((y, x) => (Node)new AtanNode(y, x))),
        (6, Gen.Select(Gen.OneOf(BinaryNode.Operators), inner, inner, Gen.Bool).Select((op, left, right, brackets) => (Node)new BinaryNode(op, left, right, brackets)))));

    [Fact]
    public void Reads_what_the_tree_says() => Compare((text, variables) => Expression.Read(text, 0, ref variables), withBrackets: true);

    /// <summary>The right side of a setting needs no brackets (common practice).</summary>
    [Fact]
    public void Reads_the_right_side_of_a_setting() => Compare((text, variables) => Expression.ReadSetting(text, 0, ref variables), withBrackets: false);

    static void Compare(Func<byte[], Tenths, ExpressionResult> read, bool withBrackets)
    {
        var values = 0;
        var faults = 0;
        var unclear = 0;
        Gen.Select(Trees, Gen.Int).Sample((tree, seed) =>
        {
            var text = tree.Print(new Random(seed), withBrackets).Trim();
            var result = read(Encoding.UTF8.GetBytes(text + " Y5"), new Tenths());

            Assert.Equal(text.Length, result.End);
            Assert.Equal(text.Contains('#'), result.ReadsVariables);
            try
            {
                var (value, error) = tree.Evaluate();
                Interlocked.Increment(ref values);
                Assert.True(result.Error == ExpressionError.None, $"{text}: {result.Error}");
                Assert.True(Math.Abs(result.Value - value) <= error, $"{text}: {result.Value}, not {value} ± {error}");
            }
            catch (FaultException)
            {
                Interlocked.Increment(ref faults);
                Assert.True(result.Error is ExpressionError.DivisionByZero or ExpressionError.OutsideDomain or ExpressionError.ResultTooLarge,
                    $"{text}: {result.Error}");
            }
            catch (UnclearException)
            {
                Interlocked.Increment(ref unclear);
            }
        }, iter: 20_000);

        // Enough of either kind was compared.
        Assert.True(values > 8_000 && faults > 500 && unclear < 5_000, $"{values} values, {faults} faults, {unclear} unclear");
    }

    readonly struct Tenths : IVariables
    {
        public double Get(int number) => number / 10.0;

        public double Get(scoped ReadOnlySpan<byte> name) => double.NaN;
    }
}
