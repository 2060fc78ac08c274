using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Editing.Tests.Support;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Editing.Tests.Hints;

/// <summary>Programs as an editor shows them with their hints between ‹ and ›.</summary>
public sealed class InlayHintTests
{
    /// <summary>Demands the hints marked in the text, and no others.</summary>
    static void Shows(string marked, MachineProfile? machine = null, AnalysisOptions? options = null)
    {
        marked = marked.ReplaceLineEndings("\n");
        var plain = System.Text.RegularExpressions.Regex.Replace(marked, "‹[^›]*›", "");
        var analysis = Editor.Analyse(plain, machine: machine, options: options);
        var lines = plain.Split('\n').Select(line => new StringBuilder(line)).ToArray();
        foreach (var hint in InlayHints.In(analysis, 0, int.MaxValue).Reverse())
        {
            Assert.InRange(hint.Text.Length, 1, InlayHints.LongestText);
            Assert.NotEmpty(hint.Tooltip);
            lines[hint.Line].Insert(hint.Column, $"‹{hint.Text}›");
        }
        Assert.Equal(marked, string.Join('\n', lines.Select(line => line.ToString())));
    }

    [Fact]
    public void Those_of_a_long_program_end_where_they_are_not_wanted_any_longer() =>
        Assert.Throws<OperationCanceledException>(() => InlayHints.In(Editor.Analyse("G4 P1\n"), 0, int.MaxValue, new CancellationToken(canceled: true)));

    [Fact]
    public void Places_that_are_not_written_out() => Shows(
        """
        G21 G90 G17 G54
        G0 X10 Y10 Z50
        G99 G82 X10 Y20 Z-3 R2 P0.5‹= 0.5 s› F120
        X50‹→ X50 Y20› (front)
        Y40‹→ X50 Y40›
        N80 Z-4‹→ X50 Y40›
        X0 Y0
        G80
        X10
        """);

    /// <summary>How loops and calls run: common practice; places by hand.</summary>
    [Fact]
    public void A_block_that_drills_at_each_of_its_runs_tells_them_together() => Shows(
        """
        G21 G90 G17 G54
        G0 X40 Y0 Z50
        #1=0
        WHILE [#1 LT 8] DO 1
        G99 G81 X[40+#1*10] Y0‹→ 8 holes, first X40 Y0› Z-3 R2 F120
        #1=#1+1
        END 1
        X0 Y5
        G80
        M30
        """);

    [Fact]
    public void A_call_of_another_file_tells_the_holes_drilled_there() => Shows(
        """
        G21 G90 G17 G54
        G0 X40 Y10 Z50
        M98 P1200 L2‹→ 4 holes, first X40 Y10›
        M30
        """, options: Folder.Of(1200, "O1200\nG91 G99 G81 Z-5 R-48 F120\nX5\nG80 G90\nM99\n"));

    [Fact]
    public void Distances() => Shows(
        """
        G21 G90 G0 X10 Y10 Z50
        G91
        G99 G81 X10‹→ X20 Y10› Z-3 R-48 F120
        X10 Y5‹→ X30 Y15›
        X10‹→ 3 holes, last X60 Y15› L3
        G90 X0‹→ 2 times X0 Y15› L2
        """);

    [Fact]
    public void A_control_that_takes_distances_in_cycles() => Shows(
        """
        G21 G90 G0 X10 Y10 Z50
        G99 G82 X10 Y5‹→ X20 Y15› Z-3 R2 P500‹= 0.5 s› F120
        X10‹→ X30 Y15›
        """, MachineProfile.TrainingMill);

    [Fact]
    public void Expressions_are_no_places() => Shows(
        """
        G21 G90 G0 X10 Y10 Z50
        #1=20
        G99 G81 X#1 Y[2*5]‹→ X20 Y10› Z-3 R2 F120
        """);

    [Fact]
    public void Inches_are_shown_as_inches() => Shows(
        """
        G20 G90 G0 X1 Y1 Z2
        G99 G81 X1.5 Y2 Z-.1 R.1 F5
        X2.0625‹→ X2.0625 Y2›
        """);

    [Fact]
    public void Another_plane() => Shows(
        """
        G21 G90 G18 G0 X0 Y10 Z0
        G99 G81 X5 Z7 Y-3 R2 F100
        Z9‹→ X5 Z9›
        """);

    [Fact]
    public void Least_increments() => Shows(
        """
        G21 G90 G0 X0. Y0. Z50.
        G99 G81 X15 Y20.‹→ X0.015 Y20› Z-3. R2. F120
        """, Editor.Reading("integers=increments"));

    [Theory]
    [InlineData("dwell=seconds", "G4 P2‹= 2 s›")]
    [InlineData("dwell=seconds", "G4 P500‹= 8 min 20 s›")]
    [InlineData("dwell=milliseconds", "G4 P500‹= 0.5 s›")]
    [InlineData("dwell=milliseconds", "G4 P0.1‹= 0.0001 s›")]
    [InlineData("dwell=milliseconds", "G4 P0‹= 0 s›")]
    [InlineData("dwell=milliseconds", "G4 X2‹= 2 s›")]
    [InlineData("dwell=byPoint", "G4 P500‹= 0.5 s›")]
    [InlineData("dwell=byPoint", "G4 X500‹= 0.5 s›")]
    [InlineData("integers=increments", "G4 X500‹= 0.5 s›")]
    [InlineData("integers=increments", "G4 X0.5‹= 0.5 s›")]
    [InlineData("dwell=byPoint", "G4 P.5‹= 0.5 s›")]
    [InlineData("dwell=seconds", "G4 P#7")]
    [InlineData("dwell=seconds", "G64 P0.1")]
    public void Dwells(string reading, string block) => Shows(block, Editor.Reading(reading));

    [Fact]
    public void Nothing_where_the_place_is_not_known() => Shows(
        """
        G90 G99 G81 X10 Z-3 R2 F120
        G80 G0 X0 Y0 Z50
        G68 X0 Y0 R30
        G16 X#9
        G99 G81 Y10 Z-3 R2 F120
        M30
        G81 X1 Z-1 R1
        """);

    /// <summary>Turned by 30° about the datum: 10·cos 30° and 10·sin 30°.</summary>
    [Fact]
    public void The_place_a_hole_is_turned_to() => Shows(
        """
        G90 G0 X0 Y0 Z50
        G68 X0 Y0 R30
        G99 G81 X10 Y0‹→ X8.66 Y5› Z-3 R2 F120
        G69
        X10 Y0
        M30
        """);

    [Fact]
    public void A_hint_too_long_for_an_editor_is_left_out() => Shows(
        "G90 G0 X0 Y0 Z5\nG99 G81 X" + new string('9', 60) + " Z-1 R1 F1\nG80");

    /// <summary>A part of the text gets the hints that the whole gives there.</summary>
    [Fact]
    public void Any_range_gives_its_part_of_all()
    {
        var analysis = Editor.Analyse(
            "G21 G90 G0 X0 Y0 Z50\n" + string.Concat(Enumerable.Range(0, 300).Select(i => i % 7 == 3 ? $"G99 G81 X{i} Z-3 R2 F120\n" : i % 7 == 6 ? "G80 G0 Y5\n\n" : $"X{i}\n")));
        var all = InlayHints.In(analysis, 0, int.MaxValue);
        Assert.NotEmpty(all);
        foreach (var (first, last) in new[] { (0, 0), (5, 20), (120, 140), (127, 128), (250, 400), (-5, 3), (int.MinValue, int.MaxValue), (20, 10), (9999, 99999) })
            Assert.Equal(all.Where(hint => hint.Line >= first && hint.Line <= last), InlayHints.In(analysis, first, last));
    }
}
