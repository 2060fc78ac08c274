using NcLanguage.Machine.Profiles;
using static NcLanguage.Control.Codes.Tables.Row;
using static NcLanguage.Control.Codes.WordUnit;

namespace NcLanguage.Control.Codes.Tables;

/// <summary>How numbers that follow are read: plane, units, distances, feed, speed, and how corners are taken.</summary>
static class ModeCodes
{
    static readonly WordUse Speed = Optional('S', WordUnit.Speed, "spindle speed");

    public static CodeEntry[] Rows { get; } =
    [
        G(170, ModalGroup.Plane, "XY plane", "Puts arcs, compensation and cycles in the XY plane, with Z the cycle's axis.", Nist("3.5.6")),
        G(180, ModalGroup.Plane, "XZ plane", "Puts arcs and cycles in the XZ plane, with Y the cycle's axis.", Nist("3.5.6")),
        G(190, ModalGroup.Plane, "YZ plane", "Puts arcs and cycles in the YZ plane, with X the cycle's axis.", Nist("3.5.6")),
        G(200, ModalGroup.Units, "inch", "Reads lengths that follow in inches.", Nist("3.5.7")) with { OnlyUnder = UnitReading.G20G21 },
        G(210, ModalGroup.Units, "millimetre", "Reads lengths that follow in millimetres.", Nist("3.5.7")) with { OnlyUnder = UnitReading.G20G21 },
        G(700, ModalGroup.Units, "inch", "Reads lengths that follow in inches.", Iso) with { OnlyUnder = UnitReading.G70G71 },
        G(710, ModalGroup.Units, "millimetre", "Reads lengths that follow in millimetres.", Iso) with { OnlyUnder = UnitReading.G70G71 },
        G(600, ModalGroup.PathControl, "exact positioning", "Comes to rest at the end of every move, within the finer of two tolerances.", Iso),
        G(610, ModalGroup.PathControl, "exact path", "Follows the programmed path exactly and slows down at corners where it must.", Nist("3.5.14")),
        G(611, ModalGroup.PathControl, "exact stop", "Comes to rest at the end of every move.", Nist("3.5.14")),
        G(620, ModalGroup.PathControl, "slower in corners", "Lowers the feed in inside corners while radius compensation is on, so that the tool is not overloaded there; at which angle and by how much the control's settings say.", Practice),
        G(640, ModalGroup.PathControl, "continuous path", "Keeps the feed up through corners and rounds them a little.", Nist("3.5.14"),
            Optional('P', Length, "how far a corner may be rounded")),
        G(900, ModalGroup.Distance, "absolute positions", "Reads axis words as positions in the work coordinates.", Nist("3.5.17")),
        G(910, ModalGroup.Distance, "incremental distances", "Reads axis words as distances from where the tool stands.", Nist("3.5.17")),
        G(930, ModalGroup.FeedMode, "inverse time feed", "Reads F as one over the minutes that the block's move takes.", Nist("3.5.19"), FeedWord),
        G(940, ModalGroup.FeedMode, "feed per minute", "Reads F as length units per minute.", Nist("3.5.19"), FeedWord),
        G(950, ModalGroup.FeedMode, "feed per revolution", "Reads F as length units per revolution of the spindle.", Iso, FeedWord),
        G(960, ModalGroup.SpeedMode, "constant cutting speed", "Reads S as a cutting speed, in m/min or ft/min, and turns the spindle to keep it at the diameter being turned: a lathe's code, which leaves a mill's spindle speed open.", Iso, Speed),
        G(970, ModalGroup.SpeedMode, "spindle speed in rev/min", "Reads S as revolutions of the spindle per minute.", Iso, Speed),
    ];
}
