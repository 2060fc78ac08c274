using System.Collections.Immutable;
using System.Globalization;
using NcLanguage.Control.Codes.Tables;

namespace NcLanguage.Control.Codes;

/// <summary>Every G and M code the product knows. What a code means is said here and nowhere else.</summary>
public static class CodeTable
{
    const int Size = 1000;

    static readonly CodeEntry?[] GCodes = new CodeEntry?[Size];
    static readonly CodeEntry?[] MCodes = new CodeEntry?[Size];

    /// <summary>All rows, G before M, by number.</summary>
    public static ImmutableArray<CodeEntry> All { get; } = Collect();

    /// <summary>The row of a code, or null when there is none. Takes constant time and allocates nothing. A code that exists only under
    /// one reading is found under all: ask <see cref="CodeEntry.ExistsUnder"/>.</summary>
    /// <param name="letter">G or M, in either case.</param>
    /// <param name="tenths">The number times ten: 591 for G59.1.</param>
    public static CodeEntry? Find(char letter, int tenths)
    {
        var rows = (letter | 0x20) switch { 'g' => GCodes, 'm' => MCodes, _ => null };
        return rows is not null && (uint)tenths < (uint)rows.Length ? rows[tenths] : null;
    }

    /// <summary>The row of a code by its text, such as M3 or G54.1; null when there is none.</summary>
    public static CodeEntry? Find(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Length > 1 && decimal.TryParse(text.AsSpan(1), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) && number is >= 0 and < 1000
            ? Find(text[0], (int)(number * 10))
            : null;
    }

    static ImmutableArray<CodeEntry> Collect()
    {
        foreach (var row in (ReadOnlySpan<CodeEntry>)[
            .. MotionCodes.Rows, .. CycleCodes.Rows, .. ModeCodes.Rows, .. OffsetCodes.Rows, .. FrameCodes.Rows, .. MachineCodes.Rows])
        {
            var rows = row.Letter == 'G' ? GCodes : MCodes;
            if (rows[row.Tenths] is not null)
                throw new InvalidOperationException($"{row.Text} stands twice in the table of codes.");
            rows[row.Tenths] = row;
        }

        return [.. GCodes.Concat(MCodes).OfType<CodeEntry>()];
    }
}
