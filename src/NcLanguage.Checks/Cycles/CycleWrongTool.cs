using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>A cycle that the tool in the spindle is not made for: a tapping cycle with another tool, a tap, a reamer or a shifted bore with the wrong one.</summary>
public sealed class CycleWrongTool : Rule
{
    public override RuleInfo Info { get; } = new()
    {
        Id = "NC3053",
        Name = "cycle-wrong-tool",
        Severity = Severity.Error,
        Title = "A cycle that is not made for the tool",
        Finds = "G84 or G74 with a tool that the setup lists as something else than a tap; a tap in a drilling, pecking or boring cycle that does not go out as it went in (all but G84, G74, G85 and G89); "
            + "a reamer in a pecking cycle, and as a note one in G81 or G82; "
            + "G76 or G87, which move the tool aside at the bottom, with a tool that is listed as something else than a boring bar. Once for each run of holes.",
        AtTheMachine = "A tapping cycle feeds the tool by a pitch it has not got, and turns it backwards in the hole. A tap that is drawn out by a rapid, or turns on while it stands, tears out the thread or breaks. "
            + "A reamer that pecks packs its flutes with chips and scores the bore at each stroke, one that is drawn out by a rapid may leave a mark in it. A drill that is moved aside in its hole breaks.",
        Example = CycleExample.Program("""
            G98 G84 X12 Y20 Z-12 R5 S400 F500
            ~   ^^^
            X40
            """),
        Instead = CycleExample.Program("""
            G98 G81 X12 Y20 Z-12 R5 S1500 F150
            X40
            """),
        Setup = CycleExample.Drill,
        NotFound = "Tools that are not in the setup, or whose kind it does not give. A tap in G85 or G89, with a head that turns it back by itself. Whether another tool or another cycle was meant is not known.",
        Source = "NISTIR 6556 §3.5.16.2 to .10, what each cycle does at the bottom and on its way out; G73, G74 and G76 and which tool goes with which cycle: common practice. That a reamer does not peck and is fed out (G85): common practice, from memory.",
    };

    public override StepEvents Interest => StepEvents.HolesDiffer;

    public override void CheckStep(in StepContext step)
    {
        var (cycle, number) = (step.Step.After.Cycle, step.Step.After.Tool);
        if (!CycleRuns.Begins(step.Step) || step.Job.Setup.FindTool(number) is not { Kind: { } kind } || Fault(cycle, kind) is not { } fault)
            return;
        var name = ToolKindName.Format(kind);
        var isTaste = cycle is 81 or 82 && kind == ToolKind.Reamer;
        CycleRuns.Report(this, step, '\0', $"G{cycle} {fault} tool {number} is {("aeiou".Contains(name[0], StringComparison.Ordinal) ? "an" : "a")} {name}{(isTaste ? ": G85 feeds it out" : "")}.",
            severity: isTaste ? Severity.Note : null);
    }

    /// <summary>What a cycle does that a tool of some kind can't; null where it can.</summary>
    static string? Fault(int cycle, ToolKind kind) => (cycle, kind) switch
    {
        (84 or 74 or 85 or 89, ToolKind.Tap) => null,
        (84 or 74, _) => "taps, and",
        (73 or 83, ToolKind.Tap) => "pecks and draws the tool out by a rapid, and",
        (73, ToolKind.Reamer) => "breaks chips by drawing back, and",
        (83, ToolKind.Reamer) => "pecks and draws the tool out by a rapid, and",
        (81 or 82, ToolKind.Reamer) => "draws the tool out by a rapid, and",
        (81 or 82, ToolKind.Tap) => "draws the tool out by a rapid without turning it back, and",
        (76 or 87, not ToolKind.BoringBar) => "moves the tool aside with the spindle stopped, and",
        (_, ToolKind.Tap) => "bores, and",
        _ => null,
    };
}
