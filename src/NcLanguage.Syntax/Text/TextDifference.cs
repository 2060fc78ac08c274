namespace NcLanguage.Syntax.Text;

/// <summary>The one stretch in which a text differs from another, in bytes; empty in both where they are the same.</summary>
/// <param name="Start">Where it begins, in both.</param>
/// <param name="End">Where it ends in the text.</param>
/// <param name="OtherEnd">Where it ends in the other.</param>
public readonly record struct TextDifference(int Start, int End, int OtherEnd)
{
    /// <summary>Finds it by what both begin and end with.</summary>
    public static TextDifference Between(SourceText text, SourceText other)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(other);
        var shorter = Math.Min(text.Length, other.Length);
        var start = SameAtStart(text, other, shorter);
        var atEnd = SameAtEnd(text, other, shorter - start);
        return new(start, text.Length - atEnd, other.Length - atEnd);
    }

    static int SameAtStart(SourceText text, SourceText other, int most)
    {
        var same = 0;
        while (same < most)
        {
            var left = text.BytesFrom(same);
            var right = other.BytesFrom(same);
            var length = Math.Min(Math.Min(left.Length, right.Length), most - same);
            var common = left[..length].CommonPrefixLength(right);
            same += common;
            if (common < length)
                break;
        }
        return same;
    }

    static int SameAtEnd(SourceText text, SourceText other, int most)
    {
        var same = 0;
        while (same < most)
        {
            var left = text.BytesUpTo(text.Length - same);
            var right = other.BytesUpTo(other.Length - same);
            var length = Math.Min(Math.Min(left.Length, right.Length), most - same);
            var common = CommonAtEnd(left[^length..], right[^length..]);
            same += common;
            if (common < length)
                break;
        }
        return same;
    }

    /// <summary>The same for two stretches of one length.</summary>
    static int CommonAtEnd(ReadOnlySpan<byte> left, ReadOnlySpan<byte> right)
    {
        if (left.SequenceEqual(right))
            return left.Length;
        var common = 0;
        while (left[^(common + 1)] == right[^(common + 1)])
            common++;
        return common;
    }
}
