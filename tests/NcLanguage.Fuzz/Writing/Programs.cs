using System.Text;
using NcLanguage.Fuzz.Cases;
using NcLanguage.Fuzz.Running;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Fuzz.Writing;

/// <summary>Whole cases made from chance.</summary>
static class Programs
{
    const string Likely = "GXYZRPQFSTMNIJKLOD0123456789.-+#[]()%/;: \r\n=<>";

    /// <summary>Any bytes, blocks of the language, or a source with changes; under any readings.</summary>
    public static FuzzCase Any(Dice dice)
    {
        var of = Source(dice);
        of = of with
        {
            Program = dice.Below(10) switch
            {
                0 => dice.Bytes(dice.Few(600)),
                1 => [.. Enumerable.Range(0, dice.Few(600)).Select(_ => (byte)Likely[dice.Below(Likely.Length)])],
                2 => Deep(dice),
                3 or 4 => Join([.. Enumerable.Range(0, dice.Few(160)).Select(_ => Blocks.Any(dice))], dice),
                _ => Changed(of.Program, dice),
            },
            Called = of.Called ?? (dice.OneIn(3) ? Join([.. Enumerable.Range(0, dice.From(1, 12)).Select(_ => Blocks.Any(dice)), "M99"], dice) : null),
        };
        return Read(Damaged(of, dice), dice);
    }

    /// <summary>A source with a few changes, its bytes sound.</summary>
    public static FuzzCase Near(Dice dice)
    {
        var of = Source(dice);
        return Read(of with { Program = Changed(of.Program, dice, most: 4) }, dice);
    }

    /// <summary>A program of some hundred lines: sources and blocks one behind the other, so that it has several chunks.</summary>
    public static FuzzCase Long(Dice dice)
    {
        var of = Source(dice);
        var lines = new List<string>();
        for (var parts = dice.From(1, 5); parts > 0; parts--)
        {
            var part = Lines(dice.OneIn(3) ? of.Program : Source(dice).Program);
            if (dice.OneIn(3))
                part = [.. Enumerable.Range(0, dice.From(1, 150)).Select(_ => dice.OneIn(2) ? Blocks.Words(dice) : dice.Of(Sources.Lines))];
            // Ends of programs steer: many programs behind one another are run only to the first.
            lines.AddRange(dice.OneIn(2) ? part : part.Where(line => !line.Contains("M30", StringComparison.Ordinal) && !line.Contains('%', StringComparison.Ordinal)));
        }
        for (var changes = dice.Below(8); changes > 0; changes--)
            Mutations.Apply(lines, dice);
        return Read(of with { Program = Join(lines, dice) }, dice);
    }

    public static FuzzCase Source(Dice dice) => dice.OneIn(3) ? dice.Of(Sources.Faulty) : dice.Of(Sources.Sound);

    /// <summary>Some readings, the switch for block skip, the question for other readings.</summary>
    public static FuzzCase Read(FuzzCase of, Dice dice)
    {
        var readings = of.Readings;
        for (var count = dice.Few(6); count > 0; count--)
        {
            var reading = dice.Of(ReadingTable.All);
            readings = readings.Add($"{reading.Name}={dice.Of(reading.Choices).Name}");
        }
        if (dice.OneIn(8))
            readings = readings.Add(dice.Of(["programMarks.percent=true", "programMarks.number=true", "programMarks.longestBlock=20", "programMarks.lowerCase=false", "programMarks.characters=%().-"]));
        return of with
        {
            Readings = readings,
            IsPortable = of.IsPortable || dice.OneIn(4),
            Skips = dice.OneIn(4),
            // Without a machine nobody chose how the program is read, and the other readings are told.
            Machine = dice.OneIn(4) ? null : of.Machine,
            Setup = dice.OneIn(8) ? null : of.Setup,
        };
    }

    public static List<string> Lines(byte[] program) => [.. Encoding.Latin1.GetString(program).ReplaceLineEndings("\n").Split('\n')];

    /// <summary>Characters stand for the bytes of their number; what is none of them is written in UTF-8.</summary>
    public static byte[] Join(List<string> lines, Dice dice)
    {
        var ending = dice.Of(["\n", "\n", "\n", "\r\n", "\r", "\n\n"]);
        var text = string.Join(ending, lines);
        return text.All(sign => sign <= 0xFF) && dice.OneIn(2) ? Encoding.Latin1.GetBytes(text) : Encoding.UTF8.GetBytes(text);
    }

    static byte[] Changed(byte[] program, Dice dice, int most = 12)
    {
        var lines = Lines(program);
        for (var changes = dice.From(1, most); changes > 0; changes--)
            Mutations.Apply(lines, dice);
        return Join(lines, dice);
    }

    static byte[] Deep(Dice dice)
    {
        var many = dice.Of([10, 100, 1000, 20_000]);
        var line = dice.Below(6) switch
        {
            0 => "X" + new string('[', many) + "1" + new string(']', dice.OneIn(2) ? many : many / 2),
            1 => "#1=" + string.Concat(Enumerable.Repeat("SIN[", many)) + "1" + new string(']', many),
            2 => new string('(', many) + new string(')', many),
            3 => string.Concat(Enumerable.Repeat(Blocks.Word(dice) + " ", many)),
            4 => "X" + new string('9', many) + "." + new string('9', many),
            _ => "X" + new string('#', many) + "1",
        };
        return Join([Blocks.Words(dice), line, Blocks.Words(dice)], dice);
    }

    static FuzzCase Damaged(FuzzCase of, Dice dice)
    {
        var bytes = of.Program;
        switch (dice.Below(16))
        {
            case 0:
                bytes = [0xEF, 0xBB, 0xBF, .. bytes];
                break;
            case 1:
                bytes = [.. Encoding.Unicode.GetPreamble(), .. Encoding.Unicode.GetBytes(Encoding.Latin1.GetString(bytes))];
                break;
            case 2:
                bytes = [.. Encoding.BigEndianUnicode.GetPreamble(), .. Encoding.BigEndianUnicode.GetBytes(Encoding.Latin1.GetString(bytes))];
                break;
            case 3 or 4:
                for (var times = dice.From(1, 5); times > 0; times--)
                {
                    var at = dice.Below(bytes.Length + 1);
                    var end = Math.Min(bytes.Length, at + dice.Below(5));
                    bytes = [.. bytes[..at], .. dice.Of<byte[]>([dice.Bytes(dice.From(1, 4)), [0], [(byte)'\r'], [0xFF], [0xC3], [0xE2, 0x80], [0xF0, 0x9F, 0x94, 0xA9], [0xED, 0xA0, 0x80], [0x1A]]), .. bytes[end..]];
                }
                break;
            default:
                break;
        }
        return of with { Program = bytes };
    }
}
