using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Drawing;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>A milled thread that turns out left-hand where nothing says so.</summary>
public sealed class ThreadLeftHand : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC5019",
        Name = "thread-left-hand",
        Severity = Severity.Note,
        Title = "The helix of a thread mill cuts a left-hand thread",
        Finds = "A helix of a thread mill that rises clockwise or falls counterclockwise, seen from above, where neither the drawing's list has a thread at that place nor any comment of the program says LH or LEFT. Once for each tool.",
        AtTheMachine = "The thread is left-hand: no usual screw goes in. One swapped G2 or G3, or the sign of one Z, does it.",
        Setup = """
            { "tools": [ { "number": 11, "kind": "thread-mill", "diameter": 12, "pitch": 1.5, "length": 105 } ] }
            """,
        Example = """
            G21 G90 G17 G54
            T11 M6
            S2400 M3
            G0 X0 Y0
            G43 H11 Z20 M8
            G1 Z-9 F1000
            X9
            G2 I-9 Z-7.5 F240
            ~^^^^^^^^^^^^^^^^
            G1 X0 Y0 F600
            G0 Z20 M9
            M5
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T11 M6
            S2400 M3
            G0 X0 Y0
            G43 H11 Z20 M8
            G1 Z-9 F1000
            X9
            G3 I-9 Z-7.5 F240
            G1 X0 Y0 F600
            G0 Z20 M9
            M5
            M30
            """,
        NotFound = "Helices of less than a whole turn; one that turns against the others of its thread: thread-both-hands. At a place where the drawing's list has a thread, its hand is held against that: hole-wrong-size.",
        Source = "A right-hand helix rises counterclockwise, seen along its axis from above (geometry); that threads are right-hand where nothing is said: ISO 6410-1 (from memory).",
    };

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        var run = file.Run;
        if (!file.HasFewHoles || !run.Job.Setup.Tools.Any(tool => tool.Kind == ToolKind.ThreadMill))
            return;
        var faults = new List<PlaceFault>();
        foreach (var place in file.Places.All)
            foreach (var work in place.Works)
                if (work is { Kind: WorkKind.MillThread, IsLeftHand: true } && !run.Job.Setup.Holes.Any(hole => hole.Thread is not null && WorkedPlaces.IsAt(hole, place)))
                    faults.Add(new PlaceFault(place, work, work));
        if (faults.Count == 0 || IsSaid(run))
            return;
        // A turn against the others of its thread is thread-both-hands.
        var odd = ThreadHands.OddOnes(run).Select(arc => arc.Line).ToHashSet();
        faults.RemoveAll(fault => odd.Contains(fault.Work.Line));
        foreach (var ofTool in faults.GroupBy(fault => fault.Work.ToolNumber))
        {
            var group = ofTool.ToList();
            var work = group[0].Work;
            file.ReportBlock(this, work.Line, $"The helix of T{work.ToolNumber} {PlaceGroups.Places(group, file.SayAt(work.Line, work.Coordinates))} cuts a left-hand thread: for a right-hand one G3 leads up, or G2 down.");
        }
    }

    /// <summary>Whether a comment of the program says that it is meant.</summary>
    static bool IsSaid(ProgramRun run)
    {
        for (var line = 0; line < run.Text.LineCount; line++)
        {
            var block = run.BlockAt(line);
            foreach (ref readonly var token in block.Tokens)
                if (token.IsComment && block.StringOf(token).ToUpperInvariant() is var text && (text.Contains("LH", StringComparison.Ordinal) || text.Contains("LEFT", StringComparison.Ordinal)))
                    return true;
        }
        return false;
    }
}
