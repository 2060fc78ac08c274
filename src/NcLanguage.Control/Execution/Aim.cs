using NcLanguage.Machine.Geometry;

namespace NcLanguage.Control.Execution;

/// <summary>Where the axis words of a block lead, mm; NaN where not known.</summary>
/// <param name="Programmed">As the words say it, before scaling and rotation.</param>
/// <param name="Work">In work coordinates; axes that do not move stand where they stand.</param>
/// <param name="Frame">Polar words, scaling and rotation as they are behind the block; null where all are off.</param>
/// <param name="Axes">The axes that the words move, as bits.</param>
readonly record struct Aim(Point3 Programmed, Point3 Work, State.ProgramFrame? Frame, int Axes);
