namespace NcLanguage.Machine.Setups;

/// <summary>A hole the drawing asks for, in the setup's frame, mm. Depth is full-diameter depth; for a thread the
/// diameter is the core hole and the depth that of the thread.</summary>
public sealed record DrawingHole(double X, double Y, double? Diameter, double? Depth, string? Thread)
{
    /// <summary>1-based line of the hole in the setup file.</summary>
    public int Line { get; init; }
}
