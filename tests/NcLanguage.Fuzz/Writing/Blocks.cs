using System.Collections.Immutable;
using System.Globalization;
using NcLanguage.Fuzz.Running;

namespace NcLanguage.Fuzz.Writing;

/// <summary>Blocks made from chance: of the language, some of them sound.</summary>
static class Blocks
{
    static readonly ImmutableArray<string> Codes =
    [
        "G0", "G1", "G2", "G3", "G4", "G9", "G10", "G15", "G16", "G17", "G18", "G19", "G20", "G21", "G28", "G30", "G31", "G33", "G38.2", "G40", "G41", "G42", "G43", "G43.1",
        "G44", "G49", "G50", "G50.1", "G51", "G51.1", "G52", "G53", "G54", "G54.1", "G55", "G59", "G59.1", "G61", "G62", "G64", "G65", "G66", "G67", "G68", "G69", "G70", "G71", "G73", "G74", "G76", "G80",
        "G81", "G82", "G83", "G84", "G85", "G86", "G87", "G88", "G89", "G90", "G91", "G92", "G92.1", "G93", "G94", "G95", "G96", "G97", "G98", "G99", "G777",
        "M0", "M1", "M2", "M3", "M4", "M5", "M6", "M7", "M8", "M9", "M19", "M29", "M30", "M48", "M49", "M60", "M98", "M99", "M777",
    ];

    static readonly ImmutableArray<string> Steering =
    [
        "GOTO 10", "GOTO 777", "GOTO #1", "GOTO [#1*10]", "IF [#1 LT 3] GOTO 10", "IF [#2 GE 2] GOTO 20", "IF [#1 EQ #0] THEN #1=1", "N10", "N20 #1=#1+1", "#1=#1+1", "#2=[#2+1]*2",
        "WHILE [#1 LT 4] DO1", "WHILE [#2 LT 3] DO2", "DO3", "END1", "END2", "END3", "M98 P100", "M98 P100 L3", "M98 P2000", "M98 P777", "M98 P3100", "G65 P100 A1 B#1 C[2*3]", "M99", "M99 P20",
        "O100", "O2000", "O100 SUB", "O100 ENDSUB", "O100 RETURN [#1]", "O100 CALL [1] [#2]", "O110 IF [#1 GT 1]", "O110 ELSEIF [#1 GT 0]", "O110 ELSE", "O110 ENDIF", "O120 WHILE [#1 LT 5]", "O120 ENDWHILE",
        "O130 REPEAT [3]", "O130 ENDREPEAT", "O130 BREAK", "O130 CONTINUE", "O140 DO", "O<mill> SUB", "O<mill> CALL", "O<mill> ENDSUB", "M30", "%", "#3000=1 (stop)", "#3006=1 (look)",
        "#<depth>=#<depth>-1", "#100=[1/0]", "#[#1+100]=5", "##1=2", "#5221=10", "G10 L2 P1 X#1", "X#500 Y[#501]", "/M98 P100", "IF [1 EQ 1] THEN GOTO 10", "#1=#[#1]", "G65 P100", "G#1 X1",
    ];

    static readonly ImmutableArray<string> Texts =
    [
        "", "   ", "\t", "(clamp ahead)", "(never closed", "(a (b) c)", "; to the end", "%", "%%", "(nc-allow cut-in-air: first pass)", "(nc-allow spindle-off)", "(nc-allow no-such-rule: reason)", "(nc-allow *: all)",
        "/", "//", "/2 G0 X1", ":7", "O", "N", "N10 N20", "ø", "(größe)", "\u0000", "G0\u0000X1", "X", "XY", "X--1", "X1.2.3", "X.", "X+", "G1 X1e5", "$", "&X1", "=", "#", "#=", "#1=", "[", "]", "X[", "X[1", "X[[[[1]]]]",
        "X[SIN[90]]", "X[ATAN[1]/[0]]", "X[SQRT[-1]]", "X[1/0]", "X[ROUND[1e9]]", "X[#0]", "X[2**1024]", "X[ACOS[2]]", "<script>alert(1)</script>", "(</script><b>&amp;)", "(]]>)", "(\"quotes\" 'and' `ticks`)", "(**bold** [a](b) |x|)",
    ];

    static readonly ImmutableArray<string> Numbers =
    [
        "0", "-0", "0.", ".0", "1", "-1", "5", "10", "12.5", "-3.", ".5", "100", "999", "0.0001", "-0.0000001", "99999", "100000", "2147483647", "2147483648", "-2147483649", "4294967296", "9007199254740993",
        "99999999999999999999", "1000000000000000000000000000000000000000", "-99999999999999.99999999", "0.00000000000000000000000000000001", "00012", "+7", "1.2345678901234567",
    ];

    const string Axes = "XYZXYZXYZIJKRFPQLHDST";

    public static string Any(Dice dice) => dice.Below(12) switch
    {
        < 4 => dice.Of(Sources.Lines),
        < 7 => Words(dice),
        < 9 => dice.Of(Steering),
        9 => Texts[dice.Below(Texts.Length)],
        10 => Words(dice) + " " + dice.Of(Texts),
        _ => dice.Of(Steering) + " " + Words(dice),
    };

    /// <summary>A block of codes and words with numbers, most of them usual ones.</summary>
    public static string Words(Dice dice)
    {
        var block = dice.OneIn(12) ? "/" : dice.OneIn(6) ? "N" + dice.Of(Numbers) + " " : "";
        for (var codes = dice.From(0, 2); codes > 0; codes--)
            block += Code(dice) + Blank(dice);
        for (var words = dice.From(0, 5); words > 0; words--)
            block += Word(dice) + Blank(dice);
        return block;
    }

    public static string Code(Dice dice) => dice.Of(Codes);

    public static string Steer(Dice dice) => dice.Of(Steering);

    public static string Word(Dice dice) => Axes[dice.Below(Axes.Length)] + Number(dice);

    public static string Number(Dice dice) => dice.Below(8) switch
    {
        0 => dice.Of(Numbers),
        1 => "#" + dice.From(0, 8).ToString(CultureInfo.InvariantCulture),
        2 => $"[{dice.Of(Numbers)}{dice.Of(["+", "-", "*", "/", " MOD ", "**", " EQ ", " XOR "])}{dice.Of(Numbers)}]",
        3 => (dice.From(-600, 1200) / 10.0).ToString(CultureInfo.InvariantCulture),
        _ => dice.From(-20, 120).ToString(CultureInfo.InvariantCulture) + (dice.OneIn(2) ? "." : ""),
    };

    static string Blank(Dice dice) => dice.OneIn(5) ? "" : " ";
}
