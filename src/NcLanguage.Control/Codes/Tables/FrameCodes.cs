using static NcLanguage.Control.Codes.Tables.Row;
using static NcLanguage.Control.Codes.WordUnit;

namespace NcLanguage.Control.Codes.Tables;

/// <summary>Polar words, scaling, rotation, mirror, and the call of a program with arguments.</summary>
static class FrameCodes
{
    public static CodeEntry[] Rows { get; } =
    [
        G(150, ModalGroup.Polar, "polar coordinates off", "Reads both words of the plane as straight coordinates again.", Practice),
        G(160, ModalGroup.Polar, "polar coordinates", "Reads the plane's first axis word as a radius and its second as an angle in degrees counterclockwise from that axis: in G90 about the datum, in G91 the radius about where the tool stands and the angle from the one before.", Practice),
        G(500, ModalGroup.Scaling, "scaling off", "Takes lengths at their full size again.", Practice),
        G(501, ModalGroup.Mirror, "mirror off", "Ends the mirror of the axes named, whatever their numbers; of all where none is named.", Practice,
            Optional('X', Length, "end of the mirror along X, with any number"), Optional('Y', Length, "end of the mirror along Y, likewise"), Optional('Z', Length, "end of the mirror along Z, likewise")),
        G(510, ModalGroup.Scaling, "scaling", "Stretches or shrinks the path that follows about a fixed point, a place and no distance also in G91; a negative factor mirrors, and a cycle's levels keep their size.", Practice,
            Optional('X', Length, "fixed point along X; where the tool stands where left out"), Optional('Y', Length, "fixed point along Y, likewise"),
            Optional('Z', Length, "fixed point along Z, likewise"), OneOf('P', Factor, "factor for all axes"), OneOf('I', Factor, "factor for X, 1 where left out beside J or K"), OneOf('J', Factor, "factor for Y"),
            OneOf('K', Factor, "factor for Z")),
        G(511, ModalGroup.Mirror, "mirror", "Mirrors the path that follows about the place named on each axis, a place and no distance also in G91: arcs, rotations and the side of radius compensation turn round where one axis of the plane is mirrored, and a cycle's levels stay.", Practice,
            OneOf('X', Length, "place that X is mirrored about"), OneOf('Y', Length, "place that Y is mirrored about"), OneOf('Z', Length, "place that Z is mirrored about")),
        G(650, ModalGroup.MacroCall, "call with arguments", "Runs program P once or L times, with the other words of the block as its variables.", Practice,
            Required('P', Whole, "number of the program"), Optional('L', Whole, "times it runs")) with { TakesArguments = true },
        G(680, ModalGroup.Rotation, "rotation", "Turns the path that follows in the active plane about a fixed point, a place and no distance also in G91; in G91 the angle is added to the one in force.", Practice,
            Optional('X', Length, "fixed point along X; where the tool stands where left out"), Optional('Y', Length, "fixed point along Y, likewise"),
            Optional('Z', Length, "fixed point along Z in the planes that hold Z"), Required('R', Degrees, "angle, counterclockwise")),
        G(690, ModalGroup.Rotation, "rotation off", "Takes the path without rotation again.", Practice),
    ];
}
