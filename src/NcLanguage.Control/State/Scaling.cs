using NcLanguage.Machine.Geometry;

namespace NcLanguage.Control.State;

/// <summary>A scaling of the programmed path (G51, common practice).</summary>
/// <param name="About">The point that stays, mm.</param>
/// <param name="Factors">One for each axis; negative ones mirror; never 0.</param>
public sealed record Scaling(Point3 About, Point3 Factors)
{
    /// <summary>Where a programmed place comes to lie, mm.</summary>
    public Point3 ToWork(Point3 programmed) => new(
        Stretch(programmed.X, About.X, Factors.X), Stretch(programmed.Y, About.Y, Factors.Y), Stretch(programmed.Z, About.Z, Factors.Z));

    /// <summary>Which programmed place lies there, mm.</summary>
    public Point3 ToProgram(Point3 work) => new(
        Stretch(work.X, About.X, 1 / Factors.X), Stretch(work.Y, About.Y, 1 / Factors.Y), Stretch(work.Z, About.Z, 1 / Factors.Z));

    static double Stretch(double place, double about, double factor) => factor == 1 ? place : about + (place - about) * factor;
}
