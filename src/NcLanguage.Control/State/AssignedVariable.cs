using NcLanguage.Syntax.Expressions;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Control.State;

/// <summary>Which variable a setting such as #3=5 or #&lt;depth&gt;=5 sets.</summary>
public static class AssignedVariable
{
    /// <summary>The name of a named variable, in lower case and without blanks; null for a numbered one.</summary>
    /// <param name="token">The setting, a token of the block.</param>
    public static string? NameOf(in Block block, in Token token)
    {
        var target = block.Line[token.Start..token.ValueStart];
        var open = target.IndexOf((byte)'<');
        var close = target.IndexOf((byte)'>');
        return open < 0 || close < open || target[..open].TrimStart("# \t"u8).Length > 0 ? null : Variables.NameIn(target[(open + 1)..close]);
    }

    /// <summary>The number of a numbered variable; −1 where it is not known, or there is no such variable.</summary>
    /// <param name="token">The setting, a token of the block.</param>
    /// <param name="reader">Reads the state before the block, for numbers that are worked out, as in #[#9]=5.</param>
    public static int NumberOf(in Block block, in Token token, ref VariableReader reader)
    {
        var number = Expression.Read(block.Line, token.Start + 1, ref reader).Value;
        var whole = Math.Round(number);
        return Math.Abs(number - whole) <= Expression.WholeTolerance && whole is >= Expression.FirstVariable and <= Expression.LastVariable ? (int)whole : -1;
    }
}
