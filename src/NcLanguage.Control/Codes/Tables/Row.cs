using NcLanguage.Machine.Profiles;

namespace NcLanguage.Control.Codes.Tables;

/// <summary>Writing rows as rows: number times ten, group, name, meaning, source, words.</summary>
static class Row
{
    public const string Iso = "ISO 6983-1 (from memory)";
    public const string Practice = "common practice";

    public static CodeEntry G(int tenths, ModalGroup group, string name, string meaning, string source, params WordUse[] words) =>
        new() { Letter = 'G', Tenths = tenths, Group = group, Name = name, Meaning = meaning, Source = source, Words = [.. words] };

    public static CodeEntry M(int tenths, ModalGroup group, string name, string meaning, string source, params WordUse[] words) =>
        new() { Letter = 'M', Tenths = tenths, Group = group, Name = name, Meaning = meaning, Source = source, Words = [.. words] };

    public static string Nist(string section) => $"NISTIR 6556 §{section}";

    public static WordUse Optional(char letter, WordUnit unit, string meaning) => new(letter, WordNeed.Optional, unit, meaning);

    public static WordUse Required(char letter, WordUnit unit, string meaning) => new(letter, WordNeed.Required, unit, meaning);

    public static WordUse OneOf(char letter, WordUnit unit, string meaning) => new(letter, WordNeed.OneOf, unit, meaning);

    public static WordUse Carried(char letter, WordUnit unit, string meaning) => new(letter, WordNeed.CarriedOver, unit, meaning);

    public static WordUse FeedWord { get; } = Optional('F', WordUnit.Feed, "feed");

    public static WordUse RepeatsL { get; } = new('L', WordNeed.Optional, WordUnit.Whole, "times the cycle is repeated", RepeatReading.L);

    public static WordUse RepeatsK { get; } = new('K', WordNeed.Optional, WordUnit.Whole, "times the cycle is repeated", RepeatReading.K);
}
