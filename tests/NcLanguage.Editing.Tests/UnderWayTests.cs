using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Editing.Tests.Support;
using NcLanguage.Machine.Profiles;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Editing.Tests;

/// <summary>What is answered while the run behind an edit is under way is what the whole run answers, and near the edit it is answered.</summary>
public sealed class UnderWayTests
{
    const int Blocks = 9_000;

    /// <summary>A head, and the same stretches of drilling and milling over and over.</summary>
    static string Program(string head, string end = "M30\n") => head + string.Concat(Enumerable.Range(0, Blocks).Select(i => (i % 120) switch
    {
        0 => "G80\nT5 M6\nS1500 M3\nG0 X10 Y10\nG43 H5 Z50\n",
        1 => "G99 G83 X10 Y10 Z-14 R2 Q3 F120\n",
        < 60 => $"X{10 + i % 90} Y{5 + i % 40}\n",
        60 => "G80\nG0 Z50\nT4 M6\nG54\nS3000 M3\nG43 H4 Z10\nG1 Z-1 F300\n",
        61 => "G4 P0.5\n",
        62 or 90 => $"G2 X{20 + i % 40} Y30 I5 J0\n",
        _ => $"G1 X{i % 100} Y{i % 50} F{200 + i % 3}\n",
    })) + end;

    const string Plain = "%\nO1200 (plate)\nG21 G17 G40 G49 G80\nG90 G54\nG0 X0 Y0\nF100\n";

    /// <summary>What stands in the text once, what is written for it, and how much near it has to be answered at once: of the hovers.</summary>
    public static TheoryData<string, string, string, double> Edits => new()
    {
        { Plain, "G90 G54", "G91 G54", 0.95 },
        { Plain, "G21 G17", "G20 G17", 0.95 },
        { Plain, "F100\n", "F101\n", 0 },
        { Plain, "G90 G54\n", "N5 G90 G54\n", 0 },
        { Plain, "G90 G54", "G90 G55", 0 },
        { Plain, "G90 G54", "G90", 0 },
        { Plain, "G0 X0 Y0\n", "G52 X1\nG0 X0 Y0\n", 0 },
        { Plain + "G10 L2 P1 X1 Y2 Z3\n", "G10 L2 P1 X1", "G10 L2 P1 X4", 0 },
        { Plain + "G92 X0 Y0\n", "G92 X0", "G92 X5", 0 },
        { Plain, "G21 G17", "G21 G18", 0 },
        { Plain, "G0 X0 Y0\n", "G81 X0 Y0 Z-3 R2 F100\n", 0 },
        { Plain, "F100\n", "M30\n", 0 },
        { Plain + "#1=1\n", "#1=1", "#1=2", 0 },
        { Plain, "G40 G49", "G41 D4 G49", 0 },
    };

    [Theory]
    [MemberData(nameof(Edits))]
    public void What_is_told_early_is_what_is_told_at_last(string head, string old, string now, double least) => Holds(Program(head), old, now, least, MachineProfile.IsoMill with { IsChosen = true });

    /// <summary>Where no machine is chosen, other readings are looked at, and another program may stand behind the end.</summary>
    [Theory]
    [InlineData("G90 G54", "G91 G54")]
    [InlineData("G90 G54", "G90 G56")]
    [InlineData("G40 G49", "G40")]
    public void So_it_is_where_more_is_to_be_run(string old, string now)
    {
        Holds(Program(Plain), old, now, 0, MachineProfile.IsoMill);
        Holds(Program(Plain, "/ G0 X1\nG55 G0 X1 Y1\nM30\n%\n%\nO2 (next)\nG81 X1 Y1 Z-2 R1 F100\nX2\nM30\n%\n"), old, now, 0, MachineProfile.IsoMill with { IsChosen = true });
    }

    /// <summary>In the version before a G92 far below puts the zero where it is already.</summary>
    [Fact]
    public void So_it_is_where_only_what_has_not_run_moves_the_zero() =>
        Holds(Program(Plain, "G80\nG0 X7 Y7\nG92 X7 Y7\nG1 X8 F100\nM30\n"), "G90 G54", "G91 G54", 0, MachineProfile.IsoMill with { IsChosen = true });

    /// <summary>Behind what ended the program nothing ran, so that nothing of the version before tells what it will do.</summary>
    [Theory]
    [InlineData("M30\n", "G55\nX9 Y9\nM30\n")]
    [InlineData("M30\n", "G52 X5\nX9 Y9\nM30\n")]
    [InlineData("M99\n", "G55\nX9 Y9\nM30\n")]
    [InlineData("M2\n", "G10 L2 P1 X1\nX9 Y9\nM30\n")]
    [InlineData("%\n", "G92 X9\nX9 Y9\nM30\n")]
    public void So_it_is_where_the_program_goes_on_behind_what_ended_it(string ended, string far) =>
        Holds(Program(Plain["%\n".Length..] + ended, far), ended, "", 0, MachineProfile.IsoMill with { IsChosen = true });

    static void Holds(string text, string old, string now, double least, MachineProfile machine)
    {
        var before = Editor.Analyse(text, Editor.PlateSetup, machine);
        var at = text.IndexOf(old, StringComparison.Ordinal);
        ProgramAnalysis? underWay = null;
        var whole = before.WithText(before.Text.WithChange(at, at + old.Length, Encoding.ASCII.GetBytes(now)), onTheWay => underWay = onTheWay.AsFarAsRun());
        if (underWay is null)
        {
            Assert.Equal(0, least);
            return;
        }
        var edited = whole.Text.LineCount - before.Text.LineCount + text[..at].Count(c => c == '\n');
        var near = Share(Enumerable.Range(edited, 66), underWay, whole);
        Assert.InRange(near, least, 1);
        // What has not run is told by nobody.
        Assert.Throws<NotYetRunException>(() => Hover.At(underWay, whole.Text.LineCount - 200, 1));
        Share(Enumerable.Range(0, whole.Text.LineCount / 1009).Select(i => i * 1009), underWay, whole);
    }

    /// <summary>Demands that what is answered is answered alike; the share of what is.</summary>
    static double Share(IEnumerable<int> lines, ProgramAnalysis underWay, ProgramAnalysis whole)
    {
        var (asked, answered) = (0, 0);
        foreach (var line in lines)
        {
            var length = whole.Text.Line(line).Length;
            foreach (var column in new[] { 0, length / 2, length })
            {
                Same(analysis => Hover.At(analysis, line, column));
                Same(analysis => Completion.At(analysis, line, column, takesSnippets: true) is var answer ? string.Join('\n', answer.Entries.Select(entry => entry.ToString())) : "");
                Same(analysis => Signatures.At(analysis, line, column)?.ToString());
            }
            Same(analysis => string.Join('\n', InlayHints.In(analysis, line, line + 5)));
            Same(analysis => string.Join('\n', SemanticTokens.In(analysis, line, line + 5)));
        }
        return (double)answered / asked;

        void Same<T>(Func<ProgramAnalysis, T> ask)
        {
            asked++;
            T early;
            try
            {
                early = ask(underWay);
            }
            catch (NotYetRunException)
            {
                return;
            }
            answered++;
            Assert.Equal(ask(whole), early);
        }
    }
}
