using static NcLanguage.Control.Codes.Tables.Row;
using static NcLanguage.Control.Codes.WordUnit;

namespace NcLanguage.Control.Codes.Tables;

/// <summary>Moves of the tool that are no cycle, and the dwell.</summary>
static class MotionCodes
{
    static readonly WordUse X = Optional('X', Length, "end point along X");
    static readonly WordUse Y = Optional('Y', Length, "end point along Y");
    static readonly WordUse Z = Optional('Z', Length, "end point along Z");

    static readonly WordUse[] Line = [X, Y, Z, FeedWord];

    static readonly WordUse[] Arc =
    [
        X, Y, Z,
        OneOf('I', Length, "arc centre along X"),
        OneOf('J', Length, "arc centre along Y"),
        OneOf('K', Length, "arc centre along Z"),
        OneOf('R', Length, "radius; with a minus sign for more than half a turn"),
        FeedWord,
    ];

    static readonly WordUse[] Contact =
    [
        OneOf('X', Length, "farthest point along X"),
        OneOf('Y', Length, "farthest point along Y"),
        OneOf('Z', Length, "farthest point along Z"),
        FeedWord,
    ];

    static readonly WordUse[] Reference =
    [
        Optional('X', Length, "point on the way along X"),
        Optional('Y', Length, "point on the way along Y"),
        Optional('Z', Length, "point on the way along Z"),
    ];

    public static CodeEntry[] Rows { get; } =
    [
        G(0, ModalGroup.Motion, "rapid", "Moves to the end point as fast as the axes can.", Nist("3.5.1"), X, Y, Z),
        G(10, ModalGroup.Motion, "straight cut", "Moves in a straight line to the end point at the feed.", Nist("3.5.2"), Line),
        G(20, ModalGroup.Motion, "clockwise arc",
            "Moves along an arc in the active plane, clockwise as seen against the plane's third axis, at the feed.", Nist("3.5.3"), Arc),
        G(30, ModalGroup.Motion, "counterclockwise arc",
            "Moves along an arc in the active plane, counterclockwise as seen against the plane's third axis, at the feed.", Nist("3.5.3"), Arc),
        G(40, ModalGroup.NonModal, "dwell", "Waits where the tool stands, with the spindle left as it is.", Nist("3.5.4"),
            OneOf('P', Dwell, "time to wait"), OneOf('X', Dwell, "time to wait, on controls that take X here")),
        G(90, ModalGroup.NonModal, "exact stop in this block", "Comes to rest at this block's end point before the next block starts.", Iso),
        G(280, ModalGroup.NonModal, "to the reference point",
            "Moves at rapid to the reference point, by way of the point programmed, if there is one.", Nist("3.5.8"), Reference),
        G(300, ModalGroup.NonModal, "to the second reference point",
            "Moves at rapid to a second reference point, by way of the point programmed, if there is one.", Nist("3.5.8"),
            [.. Reference, Optional('P', Whole, "which of the further reference points")]),
        G(310, ModalGroup.NonModal, "move until the probe signals",
            "Feeds towards the end point, stops when the probe signals and leaves out the rest of the move.", Practice, Contact),
        G(330, ModalGroup.Motion, "thread cut", "Feeds in a straight line, one lead for each revolution of the spindle.", Iso,
            X, Y, Z, OneOf('K', Length, "lead for each turn"), OneOf('F', Length, "lead for each turn, where K is left out")),
        G(382, ModalGroup.Motion, "probe towards, contact expected",
            "Feeds towards the end point until the probe touches, and stops the program when it does not touch.", Nist("3.5.9"), Contact),
        G(383, ModalGroup.Motion, "probe towards", "Feeds towards the end point and stops there or where the probe touches.", Practice, Contact),
        G(384, ModalGroup.Motion, "probe away, release expected",
            "Feeds towards the end point until the probe comes free, and stops the program when it does not.", Practice, Contact),
        G(385, ModalGroup.Motion, "probe away", "Feeds towards the end point and stops there or where the probe comes free.", Practice, Contact),
    ];
}
