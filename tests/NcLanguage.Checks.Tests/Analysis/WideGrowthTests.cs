using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Tests.Analysis;

/// <summary>Texts that nobody writes, twice and four times as long: the bytes allocated to open them, and to go on from an edit in their middle, grow with their length and
/// no faster. Bytes are counted, not time, so that a busy machine changes nothing.</summary>
public sealed class WideGrowthTests
{
    const string Head = "G21 G90 G17 G54\nT1 M6\nG43 H1 Z50\nS1800 M3\nF100\n";

    static readonly Dictionary<string, Func<int, string>> Texts = new()
    {
        ["every block with a finding"] = n => Head + Repeat(n, _ => "X1 X2\n"),
        ["signs that mean nothing"] = n => Head + Repeat(n, _ => "G1 X1 @ $ &\n"),
        ["one block number throughout"] = n => Head + Repeat(n, i => $"N10 G1 X{i % 90}\n"),
        ["block numbers that fall"] = n => Head + Repeat(n, i => $"N{n - i} G1 X{i % 90}\n"),
        ["one hole again and again"] = n => Head + "G99 G81 X1 Y1 Z-3 R2\n" + Repeat(n, _ => "X1 Y1\n"),
        ["one run of holes"] = n => Head + "G99 G81 X1 Y1 Z-3 R2\n" + Repeat(n, i => $"X{i % 100} Y{i / 100}\n"),
        ["a tool for every four blocks"] = n => Repeat(n / 4, i => $"T{i} M6\nG0 Z50\nS100 M3\nG1 X1 F100\n"),
        ["calls"] = n => Head + Repeat(n, _ => "M98 P2000\n") + "M30\nO2000\nG91 X0.1\nG90\nM99\n",
        ["calls of subroutines"] = n => Head + "O1 SUB\nG91 X0.1\nG90\nO1 ENDSUB\n" + Repeat(n, _ => "O1 CALL\n") + "M30\n",
        ["subroutines"] = n => Head + Repeat(n / 3, i => $"O{i + 1} SUB\nG1 X1\nO{i + 1} ENDSUB\n") + "M30\n",
        ["jumps"] = n => Head + Repeat(n / 2, i => $"GOTO {i + 1}\nN{i + 1} X1\n") + "M30\n",
        ["conditions"] = n => Head + Repeat(n / 3, i => $"IF [#1 GT 2] GOTO {i + 1}\nG1 X{i % 50}\nN{i + 1}\n") + "M30\n",
        ["loops"] = n => Head + Repeat(n / 4, i => $"#1=0\nO{i + 1} WHILE [#1 LT 1]\n#1=#1+1\nO{i + 1} ENDWHILE\n") + "M30\n",
        ["expressions"] = n => Head + Repeat(n, _ => "#1=[#1+1]*2\n"),
        ["variables"] = n => Head + Repeat(n, i => $"#{100 + i % 900}={i}\n"),
        ["long comments"] = n => Head + Repeat(n / 50, _ => $"({new string('a', 1000)})\n"),
        ["comments that ask for silence"] = n => Head + Repeat(n, _ => "G0 X1 (nc-allow spindle-off: dry run)\n"),
        ["programs"] = n => Repeat(n / 2, i => $"O{i}\nM30\n"),
        ["blank lines"] = n => Head + new string('\n', n),
        ["line ends of old"] = n => Head + new string('\r', n),
    };

    /// <summary>Texts of one line, as long as the number says.</summary>
    static readonly Dictionary<string, Func<int, string>> Lines = new()
    {
        ["words"] = n => Head + Repeat(n / 3, _ => "X1 "),
        ["letters"] = n => Head + new string('X', n),
        ["signs"] = n => Head + new string('@', n),
        ["digits"] = n => Head + "X" + new string('1', n),
        ["comments"] = n => Head + Repeat(n / 3, _ => "(a)"),
        ["comments never closed"] = n => Head + new string('(', n),
        ["brackets"] = n => Head + "#1=" + new string('[', n / 2) + "1" + new string(']', n / 2),
        ["brackets never closed"] = n => Head + "#1=" + new string('[', n),
        ["a sum"] = n => Head + "#1=[1" + Repeat(n / 2, _ => "+1") + "]",
        ["variables of variables"] = n => Head + "#1=" + new string('#', n) + "1",
        ["minus signs"] = n => Head + "#1=[" + new string('-', n) + "1]",
    };

    static string Repeat(int times, Func<int, string> line)
    {
        var text = new StringBuilder();
        for (var i = 0; i < times; i++)
            text.Append(line(i));
        return text.ToString();
    }

    public static TheoryData<string> NamesOfTexts() => [.. Texts.Keys];

    public static TheoryData<string> NamesOfLines() => [.. Lines.Keys];

    /// <summary>Bytes allocated to open a text, and for an edit in its middle.</summary>
    static (long Open, long Edit) Bytes(byte[] bytes)
    {
        var start = GC.GetAllocatedBytesForCurrentThread();
        var analysis = ProgramAnalysis.Create(SourceText.From(bytes), Setup.None, MachineProfile.IsoMill with { IsChosen = true });
        _ = analysis.Findings;
        var opened = GC.GetAllocatedBytesForCurrentThread();
        var at = analysis.Text.Length / 2;
        _ = analysis.WithText(analysis.Text.WithChange(at, at, " "u8)).Findings;
        return (opened - start, GC.GetAllocatedBytesForCurrentThread() - opened);
    }

    /// <summary>Sixteen times the bytes would be a square. Lists double as they fill, and blocks that a collection threw away are read again, so that the steps are not even.</summary>
    [Theory]
    [MemberData(nameof(NamesOfTexts))]
    public void Four_times_the_text_takes_no_square_of_the_bytes(string name)
    {
        Bytes(Encoding.ASCII.GetBytes(Texts[name](1_000)));
        var (once, fourTimes) = (Bytes(Encoding.ASCII.GetBytes(Texts[name](5_000))), Bytes(Encoding.ASCII.GetBytes(Texts[name](20_000))));
        Assert.InRange(fourTimes.Open, 0, once.Open * 8 + 200_000);
        Assert.InRange(fourTimes.Edit, 0, once.Edit * 8 + 200_000);
    }

    /// <summary>A jump that leads nowhere, as while its number is typed, ends the run before nearly all: what is looked at then with nothing known is kept in few pieces.</summary>
    [Theory]
    [InlineData("GOTO 7")]
    [InlineData("GOTO #1")]
    [InlineData("M98 P7")]
    public void Blocks_that_are_never_reached_take_no_more_than_a_few_times_what_others_take(string steering)
    {
        const int Blocks = 100_000;
        static byte[] Text(string steering, Func<int, string> block) => Encoding.ASCII.GetBytes(Head + (steering.Length > 0 ? $"GOTO 7\n{steering}\n" : "") + Repeat(Blocks, block));
        static string Numbered(int i) => $"N{i + 10} G1 X{i % 90}\n";

        Bytes(Text(steering, Numbered));
        var reached = Bytes(Text("", Numbered)).Open;
        var other = Bytes(Text(steering, steering[0] == 'M' ? _ => steering + "\n" : Numbered)).Open;
        Assert.InRange(other, 0, reached + (700L * Blocks));
    }

    /// <summary>What of a line is too long is told and not read.</summary>
    [Theory]
    [MemberData(nameof(NamesOfLines))]
    public void A_line_without_end_takes_no_more_than_its_bytes_a_few_times(string name)
    {
        var text = Encoding.ASCII.GetBytes(Lines[name](10_000_000));
        var (open, edit) = Bytes(text);
        Assert.InRange(open, 0, text.Length + 4_000_000L);
        Assert.InRange(edit, text.Length, 2L * text.Length + 4_000_000);
    }
}
