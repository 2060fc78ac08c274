using System.Text;

namespace NcLanguage.Checks;

/// <summary>Spells text in the characters every control takes.</summary>
public static class AsciiSpelling
{
    // Each letter or mark that programs' comments were seen to hold, and how it is written without it.
    static readonly (string From, string To)[] Spellings =
    [
        ("ÀÁÂÃÅĀ", "A"), ("àáâãåā", "a"), ("ÈÉÊËĒ", "E"), ("èéêëē", "e"), ("ÌÍÎÏ", "I"), ("ìíîïı", "i"), ("ÒÓÔÕ", "O"), ("òóôõ", "o"),
        ("ÙÚÛ", "U"), ("ùúû", "u"), ("Ý", "Y"), ("ýÿ", "y"), ("ÇČĆ", "C"), ("çčć", "c"), ("ÑŃ", "N"), ("ñń", "n"), ("ŠŚ", "S"), ("šś", "s"),
        ("ŽŹŻ", "Z"), ("žźż", "z"), ("Ł", "L"), ("ł", "l"), ("Đ", "D"), ("đ", "d"), ("Ř", "R"), ("ř", "r"), ("Ğ", "G"), ("ğ", "g"),
        ("Ä", "Ae"), ("ä", "ae"), ("Ö", "Oe"), ("ö", "oe"), ("Ü", "Ue"), ("ü", "ue"), ("ß", "ss"), ("Æ", "Ae"), ("æ", "ae"), ("Œ", "Oe"), ("œ", "oe"),
        ("°º", "deg "), ("⌀∅", "DIA "), ("µμ", "u"), ("×", "x"), ("÷", "/"), ("±", "+/-"), ("–—−", "-"), ("‘’´", "'"), ("“”„«»", "\""), ("…", "..."),
        ("½", "1/2"), ("¼", "1/4"), ("¾", "3/4"), ("²", "2"), ("³", "3"), ("\u00A0\u2009\u202F", " "), ("≤", "<="), ("≥", ">="),
    ];

    /// <summary>The nearest spelling in ASCII of bytes <paramref name="start"/> to <paramref name="end"/> of a line; what has none becomes "?". Bytes that
    /// are not UTF-8 are taken as Latin-1.</summary>
    public static string Nearest(ReadOnlySpan<byte> line, int start, int end)
    {
        var nearest = new StringBuilder();
        while (start < end)
        {
            var isUtf8 = Rune.DecodeFromUtf8(line[start..end], out var rune, out var length) == System.Buffers.OperationStatus.Done;
            var character = isUtf8 ? rune.ToString() : ((char)line[start]).ToString();
            var next = start + (isUtf8 ? length : 1);
            // On drawings this letter is the sign of a diameter; inside a word it is a letter.
            if (character is "Ø" or "ø")
                nearest.Append(IsLetter(line, start - 1) || IsLetter(line, next) ? character == "Ø" ? "O" : "o" : "DIA ");
            else
                Append(nearest, character);
            start = next;
        }
        return nearest.ToString();
    }

    // Beyond ASCII there are hardly any characters but letters that stand beside one.
    static bool IsLetter(ReadOnlySpan<byte> line, int at) => at >= 0 && at < line.Length && (line[at] >= 0x80 || char.IsAsciiLetter((char)line[at]));

    static void Append(StringBuilder nearest, string character)
    {
        if (character.Length == 1 && character[0] is >= ' ' and < '\x7F' or '\t')
        {
            nearest.Append(character);
            return;
        }
        foreach (var (from, to) in Spellings)
        {
            if (!from.Contains(character, StringComparison.Ordinal))
                continue;
            nearest.Append(to);
            return;
        }
        nearest.Append('?');
    }
}
