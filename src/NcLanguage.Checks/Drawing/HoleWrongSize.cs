using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Cutting;
using NcLanguage.Checks.Drawing;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>A hole, or a thread, of another size than the drawing's.</summary>
public sealed class HoleWrongSize : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC7004",
        Name = "hole-wrong-size",
        Severity = Severity.Error,
        Title = "A hole of another size than the drawing's",
        Finds = "A hole at a place of the drawing that no tool makes in the drawing's diameter, or that a larger tool opens to its bottom; a thread of another diameter, pitch or hand than the drawing's, or one in a hole that the drawing has plain. "
            + "A milled hole is as wide as its circle and its tool make it. Where the setup gives a tap no pitch, it is what the program feeds for each turn, to 1 %.",
        AtTheMachine = "The wrong tool is called, or the wrong hole got it: too small, it can be opened; too large, the part is scrap.",
        Setup = """
            { "stock": { "min": [0, 0, -30], "max": [100, 60, 0] },
              "tools": [ { "number": 3, "kind": "drill", "diameter": 8, "pointAngle": 118, "fluteLength": 60, "length": 120 },
                         { "number": 4, "kind": "drill", "diameter": 10, "pointAngle": 118, "fluteLength": 60, "length": 130 } ],
              "holes": [ { "x": 20, "y": 30, "diameter": 8, "depth": 12 }, { "x": 60, "y": 30, "diameter": 8, "depth": 12 } ] }
            """,
        Example = """
            G21 G90 G17 G54
            T4 M6
            S1500 M3
            G0 X20 Y30
            G43 H4 Z40 M8
            G99 G81 X20 Y30 R2 Z-15 F150
            ~^^^^^^^^^^^^^^^^^^^^^^^^^^^
            X60
            G80
            G0 Z60 M9
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T3 M6
            S1500 M3
            G0 X20 Y30
            G43 H3 Z40 M8
            G99 G81 X20 Y30 R2 Z-15 F150
            X60
            G80
            G0 Z60 M9
            M5
            M30
            """,
        NotFound = "Differences of up to 0.01 mm, for milled holes 0.02 mm; tools whose diameter the setup does not tell; threads that are neither metric nor unified, which check lists as not checked; the pitch of a tap that neither the setup gives nor the feed tells; a thread in a hole whose place alone is listed, without a diameter; what a drill that wanders, a worn tool or a radius offset at the machine makes of the hole. A thread whose hand alone is another, cut with the spindle turning the other way, is tap-direction. A mill that only "
            + "goes straight down says nothing of the hole it may mill from there. In a program whose setup is nc.setup.json a hole that is too small is reported only where "
            + "the program makes others of that size right: another program may open it. A hole left for a reamer of the list is hole-not-finished.",
        Source = "The drawing, as the setup lists it. Metric threads as ISO 965-1 names them, where a name without a pitch means the coarse one, unified ones as ASME B1.1 does (both from memory). "
            + "G84 cuts a right-hand thread (NISTIR 6556 §3.5.16.5), G74 a left-hand one (common practice).",
    };

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        var drawing = file.Drawing;
        var holes = drawing.Where(match => match is { IsOtherSize: true, Unfinished: HoleUnfinished.No }
            && (match.Diameter > match.Wanted!.Diameter || !drawing.MayBeDoneElsewhere(match)));
        foreach (var group in DrawingFindings.Groups(holes))
        {
            var (match, work) = (group[0], group[0].Work!.Value);
            var say = file.SayAt(work.Line, work.Coordinates);
            file.ReportBlock(this, work.Line,
                $"{DrawingFindings.Subject(group, say)} made with {say.Length(match.Diameter)} by T{work.ToolNumber}, and the drawing asks for {Wanted(match.Wanted!, say)}.");
        }
        foreach (var group in DrawingFindings.Groups(drawing.WhereThread(match => match.IsOtherThread || match.IsThreadUndrawn)))
        {
            var (wanted, work) = (group[0].Wanted!, group[0].Work!.Value);
            if (IsOfOtherHandAlone(wanted.Thread, work) && TapDirection.TurnsBackwards(file.Run.StepAt(work.Line)))
                continue;
            var say = file.SayAt(work.Line, work.Coordinates);
            file.ReportBlock(this, work.Line, $"{DrawingFindings.Subject(group, say)} threaded by T{work.ToolNumber}{ThreadOf(wanted.Thread, work, say)}, and the drawing asks for {wanted.Thread ?? $"a plain hole of {Wanted(wanted, say)}"}.");
        }
    }

    /// <summary>Whether nothing but the hand is another than the drawing's.</summary>
    static bool IsOfOtherHandAlone(string? wanted, in PlaceWork work) =>
        wanted is not null && ThreadName.Read(wanted) is { } thread && !ThreadFit.HasItsHand(thread, work) && ThreadFit.Fits(thread with { IsLeftHand = !thread.IsLeftHand }, work);

    static string Wanted(DrawingHole wanted, LengthText say) =>
        say.Length(wanted.Diameter!.Value) + (wanted.Thread is { } thread ? $" as the core of {thread}" : "");

    /// <summary>" with 8 mm by a pitch of 1.25 mm", where only the feed tells it so said, and the hand where that is another.</summary>
    static string ThreadOf(string? wanted, PlaceWork work, LengthText say)
    {
        var size = double.IsNaN(work.Diameter) ? "" : $" with {say.Length(work.Diameter)}";
        if (!double.IsNaN(work.ThreadPitch))
            size += $"{(size.Length == 0 ? " with" : " by")} a pitch of {say.Length(work.ThreadPitch)}{(work.IsPitchFed ? ", which is what the program feeds for each turn" : "")}";
        return wanted is null || ThreadName.Read(wanted) is not { } thread || ThreadFit.HasItsHand(thread, work) ? size : $"{size}, {(thread.IsLeftHand ? "right-hand" : "left-hand")}";
    }
}
