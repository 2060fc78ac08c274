using System.Text;

namespace NcLanguage.Checks;

/// <summary>Spells text in the characters every control takes.</summary>
public static class AsciiSpelling
{
    // Each letter or mark that programs' comments were seen to hold, and how it is written without it.
    static readonly (string From, string To)[] Spellings =
    [
        ("ÀÁÂÃÅĀ", "A"), ("àáâãåā", "a"), ("ÈÉÊËĒ", "E"), ("èéêëē", "e"), ("ÌÍÎÏ", "I"), ("ìíîïı", "i"), ("ÒÓÔÕØ", "O"), ("òóôõø", "o"),
        ("ÙÚÛ", "U"), ("ùúû", "u"), ("Ý", "Y"), ("ýÿ", "y"), ("ÇČĆ", "C"), ("çčć", "c"), ("ÑŃ", "N"), ("ñń", "n"), ("ŠŚ", "S"), ("šś", "s"),
        ("ŽŹŻ", "Z"), ("žźż", "z"), ("Ł", "L"), ("ł", "l"), ("Đ", "D"), ("đ", "d"), ("Ř", "R"), ("ř", "r"), ("Ğ", "G"), ("ğ", "g"),
        ("Ä", "Ae"), ("ä", "ae"), ("Ö", "Oe"), ("ö", "oe"), ("Ü", "Ue"), ("ü", "ue"), ("ß", "ss"), ("Æ", "Ae"), ("æ", "ae"), ("Œ", "Oe"), ("œ", "oe"),
        ("°º", "deg "), ("⌀∅", "dia "), ("µμ", "u"), ("×", "x"), ("÷", "/"), ("±", "+/-"), ("–—−", "-"), ("‘’´", "'"), ("“”„«»", "\""), ("…", "..."),
        ("½", "1/2"), ("¼", "1/4"), ("¾", "3/4"), ("²", "2"), ("³", "3"), ("\u00A0\u2009\u202F", " "), ("≤", "<="), ("≥", ">="),
    ];

    /// <summary>The nearest spelling in ASCII; what has none becomes "?". Bytes that are not UTF-8 are taken as Latin-1.</summary>
    public static string Nearest(ReadOnlySpan<byte> text)
    {
        var nearest = new StringBuilder();
        while (!text.IsEmpty)
        {
            var status = Rune.DecodeFromUtf8(text, out var rune, out var length);
            Append(nearest, status == System.Buffers.OperationStatus.Done ? rune.ToString() : ((char)text[0]).ToString());
            text = text[(status == System.Buffers.OperationStatus.Done ? length : 1)..];
        }
        return nearest.ToString();
    }

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
