using static NcLanguage.Control.Codes.Tables.Row;
using static NcLanguage.Control.Codes.WordUnit;

namespace NcLanguage.Control.Codes.Tables;

/// <summary>Tool radius, tool length, and where the work's datum lies.</summary>
static class OffsetCodes
{
    static readonly WordUse RadiusNumber = Optional('D', Whole, "number of the radius offset; the tool's own where left out");
    static readonly WordUse LengthNumber = Required('H', Whole, "number of the length offset; 0 for none");

    const string ShiftUntil = "until another G92 changes it, or G92.1, G92.2 or the end of the program takes it out";

    static readonly WordUse[] NewPosition =
    [
        OneOf('X', Length, "what X shall read here"),
        OneOf('Y', Length, "what Y shall read here"),
        OneOf('Z', Length, "what Z shall read here"),
    ];

    static readonly WordUse[] LocalShift =
    [
        OneOf('X', Length, "shift of the datum along X"),
        OneOf('Y', Length, "shift of the datum along Y"),
        OneOf('Z', Length, "shift of the datum along Z"),
    ];

    public static CodeEntry[] Rows { get; } =
    [
        G(100, ModalGroup.NonModal, "set offset data",
            "Writes the values of the block into a work offset or a tool's offset, or in G91 adds them to it, without moving.", Nist("3.5.5"),
            Required('L', Whole, "kind of data: 2 a datum in machine coordinates; by common practice 20 a datum by what the place of the tool shall read, 1 or 10 a tool's length, "
                + "11 its wear, 12 a tool's radius, 13 its wear"),
            Required('P', Whole, "number of the offset: work offsets 1 to 9, or H or D of the tool"),
            Optional('X', Length, "value for X"), Optional('Y', Length, "value for Y"), Optional('Z', Length, "value for Z"),
            Optional('R', Length, "value for a tool's length or radius")) with { Until = "until the values are written anew, behind the end of the program too" },
        G(400, ModalGroup.RadiusCompensation, "radius compensation off", "Moves the tool's centre along the programmed path again.", Nist("3.5.10")),
        G(410, ModalGroup.RadiusCompensation, "radius compensation left",
            "Keeps the tool its radius to the left of the programmed path, as seen in the direction of travel.", Nist("3.5.10"), RadiusNumber),
        G(420, ModalGroup.RadiusCompensation, "radius compensation right",
            "Keeps the tool its radius to the right of the programmed path, as seen in the direction of travel.", Nist("3.5.10"), RadiusNumber),
        G(430, ModalGroup.LengthOffset, "length offset", "Adds the length offset H, so that Z is where the tool's tip stands.", Nist("3.5.11"), LengthNumber),
        G(440, ModalGroup.LengthOffset, "length offset, negative", "Takes the length offset H away instead of adding it.", Practice, LengthNumber),
        G(490, ModalGroup.LengthOffset, "length offset off", "Takes the length offset out, so that Z no longer counts from the tool's tip.", Nist("3.5.11")),
        G(520, ModalGroup.NonModal, "local datum shift", "Shifts the datum of every work offset, beside any shift by G92, until it is set back to 0.", Practice, LocalShift) with
        {
            Until = "until another G52 takes its place, or the end of the program takes it out",
        },
        G(530, ModalGroup.NonModal, "machine coordinates", "Reads this block's axis words in machine coordinates, without any offset.", Nist("3.5.12")),
        Work(540, 1), Work(550, 2), Work(560, 3), Work(570, 4), Work(580, 5), Work(590, 6), Work(591, 7), Work(592, 8), Work(593, 9),
        G(541, ModalGroup.WorkOffset, "further work offset", "Counts positions from the datum of the further work offset P.", Practice,
            Required('P', Whole, "number of the work offset")),
        G(920, ModalGroup.NonModal, "set position here",
            "Shifts the work coordinates so that the tool stands at the values given, without moving.", Nist("3.5.18"), NewPosition) with { Until = ShiftUntil },
        G(921, ModalGroup.NonModal, "position shift off, forgotten", "Takes the shift set by G92 out and forgets it.", Nist("3.5.18")) with { Until = "until another G92" },
        G(922, ModalGroup.NonModal, "position shift off, kept", "Takes the shift set by G92 out and keeps its values.", Nist("3.5.18")) with { Until = "until G92.3 or another G92" },
        G(923, ModalGroup.NonModal, "position shift on again", "Brings back the shift whose values were kept.", Nist("3.5.18")) with { Until = ShiftUntil },
    ];

    static CodeEntry Work(int tenths, int number) =>
        G(tenths, ModalGroup.WorkOffset, $"work offset {number}", $"Counts positions from the datum of work offset {number}.", Nist("3.5.13"));
}
