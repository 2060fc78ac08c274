using System.Globalization;

namespace NcLanguage.Checks.Cutting;

/// <summary>Reads the name of a thread from left to right: capitals and small letters alike, blanks and inch marks passed over, a point or a comma as decimal sign.</summary>
ref struct NameText
{
    ReadOnlySpan<char> _rest;

    public NameText(string name) => _rest = name.ToUpperInvariant().Replace('×', 'X').Replace('*', 'X').Replace('–', '-').Replace('−', '-').Replace("\"", "", StringComparison.Ordinal).Replace("″", "", StringComparison.Ordinal);

    public bool Take(char sign)
    {
        var rest = _rest.TrimStart();
        if (rest.IsEmpty || rest[0] != sign)
            return false;
        _rest = rest[1..];
        return true;
    }

    public bool Take(string word)
    {
        var rest = _rest.TrimStart();
        if (!rest.StartsWith(word, StringComparison.Ordinal))
            return false;
        _rest = rest[word.Length..];
        return true;
    }

    /// <summary>A number above 0; null where there is none, and then nothing is taken.</summary>
    public double? Number()
    {
        var rest = _rest.TrimStart();
        var end = 0;
        while (end < rest.Length && (char.IsAsciiDigit(rest[end]) || (rest[end] is '.' or ',' && end + 1 < rest.Length && char.IsAsciiDigit(rest[end + 1]))))
            end++;
        Span<char> digits = stackalloc char[end];
        rest[..end].Replace(digits, ',', '.');
        if (!double.TryParse(digits, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) || value <= 0)
            return null;
        _rest = rest[end..];
        return value;
    }

    /// <summary>A size in inches: 10, .250, 1/4, 1 1/8, 1-1/8; null where there is none.</summary>
    /// <param name="isWhole">Whether it is a number without a fraction, which may be one of the number sizes.</param>
    public double? Size(out bool isWhole)
    {
        isWhole = false;
        if (Take('0') && !_rest.StartsWith('.') && !_rest.StartsWith(','))
        {
            isWhole = true;
            return 0;
        }
        if (Number() is not { } size)
            return null;
        if (Take('/'))
            return Number() is { } parts ? size / parts : null;
        var behind = this;
        Take('-');
        if (Number() is { } above && Take('/') && Number() is { } below)
            return size + above / below;
        this = behind;
        isWhole = size == Math.Floor(size);
        return size;
    }

    /// <summary>The series of a unified thread: whether it is the coarse one, true, or the fine one, false; null for others, and where none is named.</summary>
    public bool? TakeSeries()
    {
        if (Take("UNC") || Take("NC"))
            return true;
        if (Take("UNF") || Take("NF"))
            return false;
        _ = Take("UNEF") || Take("UNS") || Take("UN");
        return null;
    }

    /// <summary>What may stand behind size and pitch: tolerance class and hand; false where something else does.</summary>
    public bool TakeEnding(out bool isLeftHand)
    {
        isLeftHand = false;
        while (!(_rest = _rest.TrimStart(" -,")).IsEmpty)
        {
            var end = _rest.IndexOfAny(" -,");
            var word = end < 0 ? _rest : _rest[..end];
            _rest = end < 0 ? default : _rest[end..];
            if (word is "LH" or "LEFT" or "LEFTHAND")
                isLeftHand = true;
            else if (!(word is "RH" or "RIGHT" or "RIGHTHAND" or "HAND" || IsClass(word)))
                return false;
        }
        return true;
    }

    /// <summary>6H, 4H5H, 6H/6G, 2B.</summary>
    static bool IsClass(ReadOnlySpan<char> word)
    {
        if (word.IndexOf('/') is >= 0 and var slash)
            return IsClass(word[..slash]) && IsClass(word[(slash + 1)..]);
        if (word.IsEmpty || word.Length % 2 != 0)
            return false;
        for (var i = 0; i < word.Length; i += 2)
            if (!char.IsAsciiDigit(word[i]) || word[i + 1] is not (>= 'A' and <= 'H'))
                return false;
        return true;
    }
}
