using static NcLanguage.Control.Codes.Tables.Row;
using static NcLanguage.Control.Codes.WordUnit;

namespace NcLanguage.Control.Codes.Tables;

/// <summary>Drilling, tapping and boring cycles, and the level they return to. Words are those of the XY plane; in XZ and YZ the plane's
/// third axis takes the place of Z.</summary>
static class CycleCodes
{
    static readonly WordUse[] Hole =
    [
        Optional('X', Length, "hole along X"),
        Optional('Y', Length, "hole along Y"),
        Carried('Z', Length, "bottom of the hole"),
        Carried('R', Length, "R level, where the feed begins"),
        FeedWord,
        RepeatsL,
    ];

    static readonly WordUse BottomDwell = Optional('P', Dwell, "dwell at the bottom");

    static readonly WordUse[] Shift =
    [
        OneOf('Q', Length, "shift away from the bore's wall"),
        OneOf('I', Length, "shift along X"),
        OneOf('J', Length, "shift along Y"),
    ];

    public static CodeEntry[] Rows { get; } =
    [
        G(730, ModalGroup.Cycle, "chip-breaking peck drilling",
            "Feeds down peck by peck, backs off a little after each to break the chip, and leaves the hole at rapid.", Practice,
            [.. Hole, RepeatsK, Carried('Q', Length, "depth of one peck"), BottomDwell]),
        G(740, ModalGroup.Cycle, "left-hand tapping",
            "Feeds down with the spindle turning counterclockwise, reverses it at the bottom and feeds out.", Practice,
            [.. Hole, RepeatsK, BottomDwell]),
        G(760, ModalGroup.Cycle, "fine boring",
            "Feeds down, stops the spindle at its fixed angle, shifts the edge off the wall and leaves the bore at rapid without a mark.", Practice,
            [.. Hole, RepeatsK, BottomDwell, .. Shift]),
        G(800, ModalGroup.Cycle, "cycle off", "Ends the cycle, so that positions that follow are no longer drilled.", Nist("3.5.15")),
        G(810, ModalGroup.Cycle, "drilling", "Feeds to the bottom and leaves the hole at rapid.", Nist("3.5.16.2"), [.. Hole, RepeatsK]),
        G(820, ModalGroup.Cycle, "drilling with dwell", "Feeds to the bottom, waits there and leaves the hole at rapid.", Nist("3.5.16.3"),
            [.. Hole, RepeatsK, BottomDwell]),
        G(830, ModalGroup.Cycle, "peck drilling",
            "Feeds down peck by peck, comes out at rapid after each, to the level where the hole is left or, by the reading peckReturn, to R, to clear the chips, and goes back in at rapid.", Nist("3.5.16.4"),
            [.. Hole, RepeatsK, Carried('Q', Length, "depth of one peck"), BottomDwell]),
        G(840, ModalGroup.Cycle, "tapping",
            "Feeds down with the spindle turning clockwise, reverses it at the bottom and feeds out, one pitch for each turn.", Nist("3.5.16.5"),
            [.. Hole, RepeatsK, BottomDwell]),
        G(850, ModalGroup.Cycle, "reaming or boring, feed out", "Feeds to the bottom and feeds out again.", Nist("3.5.16.6"), [.. Hole, RepeatsK]),
        G(860, ModalGroup.Cycle, "boring, spindle stop, rapid out",
            "Feeds to the bottom, waits, stops the spindle, leaves the bore at rapid and starts the spindle again.", Nist("3.5.16.7"),
            [.. Hole, RepeatsK, BottomDwell]),
        G(870, ModalGroup.Cycle, "back boring",
            "Goes down through the hole beside its axis with the spindle stopped, then bores upwards from below: from Z up to K or, by the reading backBoring, from R up to Z.", Nist("3.5.16.8"),
            [.. Hole, Carried('K', Length, "level the counterbore reaches up to"), BottomDwell, .. Shift]),
        G(880, ModalGroup.Cycle, "boring, dwell, out by hand",
            "Feeds to the bottom, waits, stops the spindle and the program, and the operator brings the tool out.", Nist("3.5.16.9"),
            [.. Hole, RepeatsK, BottomDwell]),
        G(890, ModalGroup.Cycle, "boring with dwell, feed out", "Feeds to the bottom, waits there and feeds out again.", Nist("3.5.16.10"),
            [.. Hole, RepeatsK, BottomDwell]),
        G(980, ModalGroup.ReturnLevel, "return to the initial level",
            "Makes a cycle lift the tool to the level it stood at before the cycle, unless the R level is higher.", Nist("3.5.20")),
        G(990, ModalGroup.ReturnLevel, "return to the R level", "Makes a cycle lift the tool to the R level only.", Nist("3.5.20")),
    ];
}
