using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Clearance;

/// <summary>What a move comes too near to: each contact is of one kind, so that it gives one finding.</summary>
enum ContactKind
{
    /// <summary>Nearer than the setup's clearance, but not touching.</summary>
    Near,

    /// <summary>A rapid touches.</summary>
    Rapid,

    /// <summary>A feed or an arc touches.</summary>
    Cut,

    /// <summary>The holder touches before anything else of the tool.</summary>
    Holder,
}

/// <summary>A move of a step, apart from the traverses between holes, that comes too near to an obstacle.</summary>
/// <param name="Move">Index of the move.</param>
/// <param name="Obstacle">What it comes near to.</param>
/// <param name="Distance">Least distance, mm; negative: how deep.</param>
/// <param name="Tip">Where the tip then is, in work coordinates, mm.</param>
/// <param name="Part">The part of the tool that comes nearest.</param>
readonly record struct Contact(ContactKind Kind, int Move, Obstacle Obstacle, double Distance, Point3 Tip, ToolPart Part)
{
    /// <summary>The first contact of this kind in a step, in the order of its moves; null where there is none.</summary>
    public static Contact? FirstOf(ContactKind kind, in StepContext step) =>
        step.Job.Obstacles.IsEmpty || !step.ComesNear ? null : step.Contacts.FirstOf(kind);
}
