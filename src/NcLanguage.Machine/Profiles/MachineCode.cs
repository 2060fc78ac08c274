using System.Collections.Immutable;
using System.Globalization;

namespace NcLanguage.Machine.Profiles;

/// <summary>A code that a machine has of its own, such as an M code for a clamping device.</summary>
/// <param name="Letter">G or M.</param>
/// <param name="Tenths">Its number times ten.</param>
/// <param name="Does">What it does there, as the machine file says.</param>
/// <param name="As">The codes of <see cref="MayStandFor"/> whose effect it has; none where it does nothing that a program's run depends on.</param>
/// <param name="Words">The letters of the words that it takes.</param>
public sealed record MachineCode(char Letter, int Tenths, string Does, ImmutableArray<string> As, string Words)
{
    /// <summary>The codes for spindle and coolant that another code may stand for.</summary>
    public static ImmutableArray<string> MayStandFor { get; } = ["M3", "M4", "M5", "M7", "M8", "M9"];

    /// <summary>Letters of words that no code of a machine's own can take: they are axes, or say something in every block.</summary>
    public const string NoWords = "FGMNOSTXYZ";

    /// <summary>The codes whose meaning is that of the table of codes, whatever the machine.</summary>
    public static ImmutableHashSet<string> Standard { get; } =
    [
        .. "G0 G1 G2 G3 G4 G9 G10 G15 G16 G17 G18 G19 G20 G21 G28 G30 G31 G33 G38.2 G38.3 G38.4 G38.5 G40 G41 G42 G43 G44 G49 G50 G50.1 G51 G51.1 G52 G53 G54 G54.1 G55 G56 G57 G58 G59 G59.1 G59.2 G59.3".Split(' '),
        .. "G60 G61 G61.1 G62 G64 G65 G68 G69 G70 G71 G73 G74 G76 G80 G81 G82 G83 G84 G85 G86 G87 G88 G89 G90 G91 G92 G92.1 G92.2 G92.3 G93 G94 G95 G96 G97 G98 G99".Split(' '),
        .. "M0 M1 M2 M3 M4 M5 M6 M7 M8 M9 M19 M29 M30 M48 M49 M60 M98 M99".Split(' '),
    ];

    /// <summary>As it is written: M13, G5.1.</summary>
    public string Text => Letter + (Tenths / 10m).ToString("0.#", CultureInfo.InvariantCulture);

    public bool Equals(MachineCode? other) =>
        other is not null && (Letter, Tenths, Does, Words) == (other.Letter, other.Tenths, other.Does, other.Words) && As.SequenceEqual(other.As);

    public override int GetHashCode() => HashCode.Combine(Letter, Tenths, Does);

    /// <summary>Letter and number of a code's name; null for what is none.</summary>
    public static (char Letter, int Tenths)? Parse(string name)
    {
        const int MostTenths = 9999;
        if (name is not ['G' or 'M', >= '0' and <= '9', ..] || !decimal.TryParse(name.AsSpan(1), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number))
            return null;
        var tenths = number * 10;
        return tenths <= MostTenths && tenths == decimal.Truncate(tenths) && name == name[0] + number.ToString("0.#", CultureInfo.InvariantCulture) ? (name[0], (int)tenths) : null;
    }
}
