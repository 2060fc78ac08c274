using NcLanguage.Editing.Tests.Support;

namespace NcLanguage.Editing.Tests.Hovers;

/// <summary>What hovering a block says: by its N word, its blank space, and the word of its cycle.</summary>
public sealed class BlockHoverTests
{
    const string Head = "G21 G90 G17 G54\nT4 M6\nG43 H4\nS1500 M3 F120\nG0 X10 Y10 Z50\n";

    /// <summary>Depth of a contact is the shortest way out: from the middle of the clamp 10 mm and the tool's radius of 5. Times: 50 mm of rapid
    /// at 250 mm/s and 3,000 mm/s² last 0.2 + 0.083 s, 5 mm of feed at 2 mm/s 2.5 s, 5 mm of return 2·√(5/3000) s.</summary>
    [Fact]
    public void A_hole_of_a_running_cycle() => Editor.Shows(
        """
        **Hole 2** X60 Y10 · G82 from Z2 to Z-3 · 3.36 s

        1. traverse X10 → X60 at Z2 · 0.283 s · **hits clamp A, 15 mm deep**
        2. feed Z2 → Z-3 · 120 mm/min · 2.5 s
        3. dwell 0.5 s (12.5 turns at S1500)
        4. return Z-3 → Z2 · 0.082 s

        Left at Z2. On to hole 3 (line 8) at Z2; Z2 is the least that clears by 2 mm.

        A control that reads positions inside cycles as distances drills at X80 Y10.

        In force:
        - line 1: G90, G21 mm, G17, G54
        - line 2: T4
        - line 3: G43 H4
        - line 4: M3, S1500, F 120 mm/min
        - line 6: G82, G99 back to Z2, R level Z2, bottom Z-3, dwell 0.5 s
        - not set by the program: coolant off
        """,
        Head + "G99 G82 X10 Z-3 R2 P0.5\n$0N70 X60\nX80\nG80\nM30", Editor.PlateSetup);

    /// <summary>The clamp ends 25 mm up, the clearance is 2: over it the tip must run at Z27 at least.</summary>
    [Fact]
    public void A_return_too_low_for_the_next_hole() => Assert.Contains(
        "Left at Z2. On to hole 2 (line 7) at Z2: **too low**, Z27 is the least that clears by 2 mm.",
        Editor.Markdown(Head + "G99$0 G82 X10 Z-3 R2 P0.5\nX60\nG80\nM30", Editor.PlateSetup), StringComparison.Ordinal);

    [Fact]
    public void A_return_high_enough_for_the_next_hole() => Assert.Contains(
        "Left at Z50. On to hole 2 (line 7) at Z50; Z27 is the least that clears by 2 mm.",
        Editor.Markdown(Head + "G98$0 G82 X10 Z-3 R2 P0.5\nX60\nG80\nM30", Editor.PlateSetup), StringComparison.Ordinal);

    /// <summary>Beside the clamp: it begins at X25, the tool's edge is 5 mm from its axis at X10.</summary>
    [Fact]
    public void Distance_beside_a_clamp() => Assert.Contains(
        "1. rapid X9 → X10 at Z5 · 0.037 s · 10 mm from clamp A\n",
        Editor.Markdown("G90 T4 M6\nG43 H4\nG0 X9 Y10 Z5\n$0N10 X10\nM30", Editor.PlateSetup), StringComparison.Ordinal);

    [Fact]
    public void Nearer_than_the_clearance() => Assert.Contains(
        " · **only 1.5 mm from clamp A**\n",
        Editor.Markdown("G90 T4 M6\nG43 H4\nG0 X9 Y10 Z5\n$0N10 X18.5\nM30", Editor.PlateSetup), StringComparison.Ordinal);

    [Fact]
    public void Blank_space_and_the_block_number_tell_the_same()
    {
        var number = Editor.HoverAt("G90 G0 X0 Y0 Z5\nN$020 X10 Y0");
        var blank = Editor.HoverAt("G90 G0 X0 Y0 Z5\nN20$0 X10 Y0");
        Assert.Equal(number, blank);
        Assert.Equal((1, 0, 10), (number!.Line, number.StartColumn, number.EndColumn));
    }

    [Fact]
    public void Without_a_setup_it_says_so_once()
    {
        var text = Editor.Markdown("G90 G0 X0 Y0 Z5\nG99 G81$0 X10 Z-3 R2 F100\nX20\nM30");
        Assert.Single(text.Split("No setup file: clearance is not known.").Skip(1));
        Assert.DoesNotContain("·  ", text, StringComparison.Ordinal);
        Assert.DoesNotContain("No setup", Editor.Markdown("G90$0 G17"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_setup_without_clamps_says_so() => Assert.Contains(
        "The setup lists no clamps: clearance is not known.",
        Editor.Markdown("$0N10 G0 X0", """{ "units": "mm" }"""), StringComparison.Ordinal);

    [Fact]
    public void A_tool_without_diameter_is_told() => Assert.Contains(
        "The setup has no diameter for T9: distances are from its axis.",
        Editor.Markdown("T9 M6\nG0 X0 Y0 Z5\n$0N10 X1", Editor.PlateSetup), StringComparison.Ordinal);

    [Fact]
    public void Where_only_the_clamp_height_is_known() => Assert.Contains(
        "1. traverse X0 → X10 at Z5 · 0.115 s · **25 mm below the clamp height**\n",
        Editor.Markdown("G90 G0 X0 Y0 Z5\nG98 G81$0 X10 Z-3 R2 F100", """{ "units": "mm", "clampHeight": 30 }"""), StringComparison.Ordinal);

    /// <summary>10·cos 30° and 10·sin 30°; X sets the pace, 8.66 mm at 3,000 mm/s² from rest to rest in 2·√(8.66/3000) s.</summary>
    [Fact]
    public void What_bends_the_path_is_in_force() => Editor.Shows(
        """
        1. rapid X0 Y0 → X8.66 Y5 at Z5 · 0.107 s

        No setup file: clearance is not known.

        In force:
        - line 1: G90
        - line 2: G68 turned by 30° about X0 Y0, exact stop, G0
        - line 3: M49 overrides off, G96 S is a cutting speed
        - not set by the program: G21 mm, G17, G54, no length offset, spindle off, coolant off
        - not known here: tool, speed, feed
        """,
        "G90 G0 X0 Y0 Z5\nG61.1 G68 X0 Y0 R30 G0\nM49 G96 S50\n$0N10 X10 Y0");

    [Fact]
    public void A_probe_move() => Assert.Contains(
        "1. feed until contact, at most Z5 → Z-10 · 50 mm/min",
        Editor.Markdown("G90 G0 X0 Y0 Z5\n$0N10 G38.2 Z-10 F50"), StringComparison.Ordinal);

    [Fact]
    public void What_is_not_known_is_told_so() => Editor.Shows(
        """
        1. rapid to X0 Y0, from a place not known here · time not known here

        No setup file: clearance is not known.

        In force:
        - this block: G0
        - not set by the program: G90, G21 mm, G17, G54, no length offset, spindle off, coolant off
        - not known here: tool, speed, feed
        """,
        "$0N10 G0 X0 Y0");

    [Fact]
    public void A_block_that_moves_nothing() => Editor.Shows(
        """
        Nothing moves. The tool stands at X0, Y0, Z5.

        In force:
        - line 1: G90, G0
        - this block: S800
        - not set by the program: G21 mm, G17, G54, no length offset, spindle off, coolant off
        - not known here: tool, feed
        """,
        "G90 G0 X0 Y0 Z5\nN10$0 S800");

    [Fact]
    public void Switching_is_told_in_the_order_it_happens() => Assert.StartsWith(
        "1. tool change to T4 · 6 s\n2. spindle clockwise at S800\n3. coolant on\n4. rapid X0 → X1 at Z5 · 0.037 s\n\nIn all 6.04 s.\n",
        Editor.Markdown("G90 G0 X0 Y0 Z5\nN10$0 X1 M8 M3 S800 M6 T4"), StringComparison.Ordinal);

    [Fact]
    public void Behind_the_end_it_says_that_it_does_not_run()
    {
        Assert.Equal("**Does not run**: the program has ended above this block.", Editor.Markdown("G0 X0\nM30\nN10$0 X5"));
        Assert.EndsWith("**Does not run**: the program has ended above this block.", Editor.Markdown("G0 X0\nM30\nN10 X$05"), StringComparison.Ordinal);
        Assert.Contains("**Does not run**: the program has ended above this block.", Editor.Markdown("G0 X0\nM30\nG$081 X5"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_skipped_block_says_so()
    {
        Assert.Equal("**Passed over**: block skip is on.", Editor.Markdown("G0 X0\n/N10$0 X5", options: new(Skip: true)));
        Assert.Contains("Here it is on.", Editor.Markdown("G0 X0\n$0/N10 X5", options: new(Skip: true)), StringComparison.Ordinal);
        Assert.Contains("Here it is off.", Editor.Markdown("G0 X0\n$0/N10 X5"), StringComparison.Ordinal);
    }

    [Fact]
    public void Repeats_and_long_lists_are_cut()
    {
        var text = Editor.Markdown("G90 G0 X0 Y0 Z5\nG91\nG99$0 G81 X10 Z-3 R-3 F100 L30");
        Assert.StartsWith("**Holes 1 to 30** X10 Y0 to X300 Y0 · G81 from ", text, StringComparison.Ordinal);
        Assert.Contains("\n24. ", text, StringComparison.Ordinal);
        Assert.DoesNotContain("\n25. ", text, StringComparison.Ordinal);
        Assert.Contains("\n… and ", text, StringComparison.Ordinal);
    }

    /// <summary>In XZ the cycle goes down along Y (NISTIR 6556 §3.5.16: the plane's third axis takes the place of Z).</summary>
    [Fact]
    public void A_cycle_in_another_plane()
    {
        const string Program = "G21 G90 G18\nF120\nG0 X0 Y10 Z0\nG99 G81$0 X5 Z7 Y-3 R2\nM30";
        Assert.Contains(
            """
            **Hole 1** X5 Z7 · G81 from Y2 to Y-3 · 2.78 s

            1. traverse X0 Z0 → X5 Z7 · 0.097 s
            2. rapid Y10 → Y2 at Z7 · 0.103 s
            3. feed Y2 → Y-3 at Z7 · 120 mm/min · 2.5 s
            4. return Y-3 → Y2 at Z7 · 0.082 s

            Left at Y2.
            """.ReplaceLineEndings("\n"), Editor.Markdown(Program.Replace("G99 G81$0", "G99$0 G81", StringComparison.Ordinal)), StringComparison.Ordinal);
        Assert.StartsWith("**Y-3** bottom of the hole\n\nBottom at Y-3, 5 mm below the R level Y2.", Editor.Markdown(At(Program, "Y-3")), StringComparison.Ordinal);
        Assert.StartsWith("**Z7** hole along Z\n\nTo Z7, +7 mm from Z0", Editor.Markdown(At(Program, "Z7")), StringComparison.Ordinal);
    }

    [Fact]
    public void Names_from_the_setup_cannot_become_Markdown() => Assert.Contains(
        @"from \*\*clamp\*\* \[x\]\(y\)".Replace(@"\(", "(", StringComparison.Ordinal).Replace(@"\)", ")", StringComparison.Ordinal),
        Editor.Markdown("G90 T4 M6\nG0 X0 Y0 Z5\n$0N10 X1", Editor.PlateSetup.Replace("clamp A", "**clamp** [x](y)", StringComparison.Ordinal)),
        StringComparison.Ordinal);

    static string At(string program, string word)
    {
        program = program.Replace(Editor.Cursor, "", StringComparison.Ordinal);
        return program.Insert(program.IndexOf(word, StringComparison.Ordinal), Editor.Cursor);
    }

    [Fact] // NISTIR 6556 §3.5.13: the same numbers under another work offset are another place.
    public void A_place_says_its_work_offset_where_there_is_more_than_one()
    {
        Assert.StartsWith("**Hole 2** X60 Y10 (G55) · G82", Editor.Markdown(Head + "G99 G82 X10 Z-3 R2 P0.5\n$0N70 G55 X60 Y10 Z-3 R2\nG80\nM30"), StringComparison.Ordinal);
        Assert.StartsWith("**Hole 1** X10 Y10 (G54) · G82", Editor.Markdown(Head + "$0N60 G99 G82 X10 Z-3 R2 P0.5\nG55 X60 Y10 Z-3 R2\nG80\nM30"), StringComparison.Ordinal);
    }
}
