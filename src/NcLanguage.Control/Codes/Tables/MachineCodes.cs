using static NcLanguage.Control.Codes.Tables.Row;
using static NcLanguage.Control.Codes.WordUnit;

namespace NcLanguage.Control.Codes.Tables;

/// <summary>The M codes: stops, spindle, tool, coolant, overrides, subprograms.</summary>
static class MachineCodes
{
    static readonly WordUse Turns = Optional('S', WordUnit.Speed, "spindle speed");

    public static CodeEntry[] Rows { get; } =
    [
        M(0, ModalGroup.Stop, "program stop", "Stops the program after this block until the operator starts it again.", Nist("3.6.1")),
        M(10, ModalGroup.Stop, "optional stop", "Stops the program after this block when the operator has switched optional stop on.", Nist("3.6.1")),
        M(20, ModalGroup.Stop, "program end", "Ends the program and brings the control back to its starting state.", Nist("3.6.1")),
        M(30, ModalGroup.Spindle, "spindle clockwise", "Turns the spindle clockwise at the speed S.", Nist("3.6.2"), Turns),
        M(40, ModalGroup.Spindle, "spindle counterclockwise", "Turns the spindle counterclockwise at the speed S.", Nist("3.6.2"), Turns),
        M(50, ModalGroup.Spindle, "spindle stop", "Stops the spindle.", Nist("3.6.2")),
        M(60, ModalGroup.ToolChange, "tool change", "Stops the spindle and puts the chosen tool into it; coolant and axes stay as they are.", Nist("3.6.3"), Optional('T', Whole, "number of the tool")),
        M(70, ModalGroup.Coolant, "mist coolant on", "Turns the mist coolant on.", Nist("3.6.4")),
        M(80, ModalGroup.Coolant, "flood coolant on", "Turns the flood coolant on.", Nist("3.6.4")),
        M(90, ModalGroup.Coolant, "coolant off", "Turns all coolant off.", Nist("3.6.4")),
        M(190, ModalGroup.Spindle, "oriented spindle stop", "Stops the spindle at a fixed angle, or at the angle R.", Iso, Optional('R', Degrees, "angle of the spindle")) with { Until = "until M3 or M4 turns the spindle again" },
        M(290, ModalGroup.Other, "rigid tapping (spindle and feed synchronised)", "Couples the spindle with the feed for the tapping cycle that follows, which starts, reverses and stops it.", Practice, Turns) with { Until = "until G80 or a tool change" },
        M(300, ModalGroup.Stop, "program end and back to the start",
            "Ends the program, brings the control back to its starting state and goes back to the first block.", Nist("3.6.1")),
        M(480, ModalGroup.Override, "overrides on", "Lets the operator change feed and speed by the override switches.", Nist("3.6.5")),
        M(490, ModalGroup.Override, "overrides off", "Runs feed and speed as programmed, whatever the override switches say.", Nist("3.6.5")),
        M(600, ModalGroup.Stop, "workpiece change and stop", "Changes the workpiece and stops the program until the operator starts it again.", Nist("3.6.1")),
        M(980, ModalGroup.Subprogram, "subprogram call", "Runs subprogram P once or L times, then goes on with the next block.", Practice,
            Required('P', Whole, "number of the subprogram"), Optional('L', Whole, "times it runs")),
        M(990, ModalGroup.Subprogram, "subprogram end", "Goes back to the block behind the call, or to the first block in a main program.", Practice,
            Optional('P', Whole, "block number to go on at")),
    ];
}
