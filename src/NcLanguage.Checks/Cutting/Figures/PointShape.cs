namespace NcLanguage.Checks.Cutting;

/// <summary>Points of drills, spot drills and countersinks as cones (engineering reference; the same table as Machinery's Handbook).</summary>
public static class PointShape
{
    /// <summary>Length of the point in mm: Z = (D − T)/2·cot(α/2). It is also the depth at which a point leaves a diameter, and how far a
    /// countersink goes down from where it touches the rim of a hole of diameter T.</summary>
    /// <param name="diameter">D, mm.</param>
    /// <param name="angle">Included angle α, degrees.</param>
    /// <param name="flat">Diameter T of a flat at the tip, or of the hole, mm.</param>
    public static double Length(double diameter, double angle, double flat = 0) => (diameter - flat) / 2 / Math.Tan(double.DegreesToRadians(angle / 2));

    /// <summary>Diameter in mm that a point leaves at a depth: D = T + 2·Z·tan(α/2).</summary>
    /// <param name="depth">Z, mm.</param>
    /// <param name="angle">Included angle α, degrees.</param>
    /// <param name="flat">Diameter T of a flat at the tip, mm.</param>
    public static double Diameter(double depth, double angle, double flat = 0) => flat + 2 * depth * Math.Tan(double.DegreesToRadians(angle / 2));

    /// <summary>Depth of the tip below the surface in mm, for a drill to come out at full diameter: thickness + point + clearance.</summary>
    /// <param name="thickness">Of the part, mm.</param>
    /// <param name="point">Length of the point, mm.</param>
    /// <param name="clearance">How far the full diameter is to go beyond, mm.</param>
    public static double Through(double thickness, double point, double clearance) => thickness + point + clearance;
}
