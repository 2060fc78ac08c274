using System.Text;
using System.Text.RegularExpressions;
using NcLanguage.Fuzz.Cases;
using NcLanguage.Fuzz.Running;
using NcLanguage.Machine.Tests.Schema;

namespace NcLanguage.Fuzz.Writing;

/// <summary>Setups, machines and cutting data with mistakes in them.</summary>
static partial class JobFileTexts
{
    static readonly string[] Values =
    [
        "0", "-0", "1", "-1", "0.5", "2", "54", "1e3", "99999", "100000", "100001", "-100000", "1e5", "1e-300", "1e300", "1e999", "-1e999", "9007199254740993", "0.1000000000000000055511151231257827", "00", "1.", ".5", "+1", "NaN", "0x10",
        "true", "false", "null", "{}", "[]", "[[]]", "[0, 0, 0]", "[1, 2]", "[1, 2, 3, 4]", "[null, 0, 0]", "{\"x\": 1}", "\"\"", "\" \"", "\"mm\"", "\"inch\"", "\"G54\"", "\"G55\"", "\"G54.1 P3\"", "\"G53\"", "\"drill\"", "\"tap\"", "\"ball-mill\"",
        "\"probe\"", "\"HSS\"", "\"aluminium\"", "\"M8\"", "\"M8x1\"", "\"1/4-20 UNC\"", "\"M\"", "\"iso-mill\"", "\"training-mill\"", "\"nc.machine.json\"", "\"part.setup.json\"", "\"seconds\"", "\"K\"", "\"#500\"", "\"#0\"", "\"#<a b>\"", "\"\\u0000\"", "\"\\ud800\"",
        "\"<script>alert(1)</script>\"", "\"größe 🔩\"", "\"..\\\\..\\\\x\"", "\"/dev/zero\"", "\"\\n\\n\"", "// comment\n", "/* open",
    ];

    static readonly string[] Names =
    [
        "units", "frame", "machine", "material", "stock", "hollows", "clearance", "clampHeight", "obstacles", "supports", "workOffsets", "tools", "holes", "variables", "min", "max", "name", "center", "diameter", "bottom", "top", "number", "kind", "pointAngle",
        "cornerRadius", "fluteLength", "flutes", "length", "shankDiameter", "holderDiameter", "holderGauge", "lengthOffset", "radiusOffset", "pitch", "x", "y", "z", "depth", "thread", "base", "travel", "home", "rapid", "spindle", "readings", "dwell", "programMarks",
        "G54", "G59.3", "G54.1 P48", "#1", "#<x>", "materials", "rows", "speed", "source", "$schema", "", "Units", "unit", "tool",
    ];

    public static FuzzCase Of(Dice dice)
    {
        var of = Programs.Source(dice);
        of = of with
        {
            Setup = dice.OneIn(3) || of.Setup is null ? Encoding.UTF8.GetBytes(Samples.Setup) : of.Setup,
            Machine = dice.OneIn(3) || of.Machine is null ? Encoding.UTF8.GetBytes(Samples.Machine) : of.Machine,
            Cutting = dice.OneIn(3) ? Encoding.UTF8.GetBytes(Samples.Cutting) : null,
            Called = null,
        };
        return dice.Below(5) switch
        {
            0 => of with { Machine = Changed(of.Machine, dice) },
            1 => of with { Machine = Changed(of.Machine, dice), Setup = Changed(of.Setup, dice) },
            2 => of with { Cutting = Changed(Encoding.UTF8.GetBytes(Samples.Cutting), dice) },
            _ => of with { Setup = Changed(of.Setup, dice) },
        };
    }

    static byte[] Changed(byte[] file, Dice dice)
    {
        if (dice.OneIn(6))
            return Damaged(file, dice);
        var text = Encoding.UTF8.GetString(file);
        for (var changes = dice.From(1, 1 + dice.Few(8)); changes > 0; changes--)
            text = Change(text, dice);
        return Encoding.UTF8.GetBytes(text);
    }

    static string Change(string text, Dice dice)
    {
        switch (dice.Below(10))
        {
            case < 3:
                return Replace(text, AnyValue(), _ => dice.Of(Values), dice);
            case 3:
                return Replace(text, AnyNumber(), number => dice.Of([number.Value + "0", "-" + number.Value, number.Value + ".5", dice.Of(Values), "\"" + number.Value + "\""]), dice);
            case 4:
                return Replace(text, AnyMember(), _ => "", dice);
            case 5:
                return Replace(text, AnyMember(), member => member.Value + " " + (member.Value.EndsWith(',') ? "" : ",") + member.Value, dice);
            case 6:
                return Replace(text, AnyName(), _ => "\"" + dice.Of(Names) + "\":", dice);
            case 7:
                return Replace(text, AnyName(), name => "\"" + dice.Of(Names) + "\": " + dice.Of(Values) + ", " + name.Value, dice);
            case 8:
                return Replace(text, AnySign(), sign => dice.Of(["", sign.Value + sign.Value, dice.Of(["{", "}", "[", "]", ",", ":", "\""])]), dice);
            default:
                var deep = dice.Of([3, 63, 64, 65, 500]);
                return Replace(text, AnyValue(), _ => new string('[', deep) + "1" + new string(']', deep), dice);
        }
    }

    static byte[] Damaged(byte[] file, Dice dice)
    {
        var (at, length) = (dice.Below(file.Length + 1), dice.Few(60));
        var end = Math.Min(file.Length, at + length);
        return dice.Below(6) switch
        {
            0 => file[..at],
            1 => [0xEF, 0xBB, 0xBF, .. file],
            2 => [.. Encoding.Unicode.GetPreamble(), .. Encoding.Unicode.GetBytes(Encoding.UTF8.GetString(file))],
            3 => Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(file).ReplaceLineEndings(dice.Of(["\r", "\r\n", "\u2028"]))),
            _ => [.. file.AsSpan(0, at), .. dice.Bytes(dice.Below(6)), .. file.AsSpan(end)],
        };
    }

    static string Replace(string text, Regex what, Func<Match, string> by, Dice dice)
    {
        var found = what.Matches(text);
        if (found.Count == 0)
            return text;
        var one = found[dice.Below(found.Count)];
        return string.Concat(text.AsSpan(0, one.Index), by(one), text.AsSpan(one.Index + one.Length));
    }

    [GeneratedRegex("""-?[0-9][0-9.eE+-]*|"[^"]*"(?!\s*:)|true|false|null|\{[^{}]*\}|\[[^\[\]]*\]""")]
    private static partial Regex AnyValue();

    [GeneratedRegex("-?[0-9][0-9.]*")]
    private static partial Regex AnyNumber();

    [GeneratedRegex("""
        "[^"]*"\s*:\s*(?:"[^"]*"|[^,{}\[\]"]+|\[[^\[\]]*\]|\{[^{}]*\})\s*,?
        """)]
    private static partial Regex AnyMember();

    [GeneratedRegex("""
        "[^"]*"\s*:
        """)]
    private static partial Regex AnyName();

    [GeneratedRegex("""[{}\[\],:"]""")]
    private static partial Regex AnySign();
}
