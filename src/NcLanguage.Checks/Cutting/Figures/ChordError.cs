namespace NcLanguage.Checks.Cutting;

/// <summary>An arc followed by straight pieces (geometry of the circle).</summary>
public static class ChordError
{
    /// <summary>How far a chord lies inside the arc at most, mm: e = r·(1 − cos(θ/2)).</summary>
    /// <param name="radius">r, mm.</param>
    /// <param name="angle">θ that a chord spans, degrees.</param>
    public static double Of(double radius, double angle) => radius * (1 - Math.Cos(double.DegreesToRadians(angle / 2)));

    /// <summary>The greatest angle in degrees that a chord may span: θ = 2·acos(1 − e/r).</summary>
    /// <param name="radius">r, mm.</param>
    /// <param name="error">e, mm; below r.</param>
    public static double Angle(double radius, double error) => double.RadiansToDegrees(2 * Math.Acos(1 - error / radius));

    /// <summary>Chords that a full circle needs: 360°/θ, rounded up.</summary>
    /// <param name="radius">mm.</param>
    /// <param name="error">mm; below the radius.</param>
    public static double Pieces(double radius, double error) => Math.Ceiling(360 / Angle(radius, error) - 1e-9);
}
