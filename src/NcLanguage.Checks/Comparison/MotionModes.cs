using NcLanguage.Control.State;

namespace NcLanguage.Checks.Comparison;

/// <summary>What a motion is done under, beside its way, feed, speed and coolant.</summary>
/// <param name="Side">The side of the path that the tool's centre is kept on by an amount not known; off where it is known how the centre runs.</param>
/// <param name="SideBy">The D that says by how much, where it is not known.</param>
/// <param name="Length">Whether a tool length counts, and which way: places are those of the tip only where it does.</param>
/// <param name="LengthBy">The H that says which; 0 where none counts.</param>
/// <param name="CuttingSpeed">The speed over ground that the spindle follows under G96, m/min; 0 where S is its speed, NaN where not known.</param>
/// <param name="Corners">How corners are taken (G61, G61.1, G62, G64).</param>
/// <param name="OverridesOff">Whether the override switches do nothing (M49).</param>
/// <param name="Stop">What a stop is, in tenths as in the code tables (M0, M1, M60; the end of the program); 0 for other motions.</param>
public readonly record struct MotionModes(
    CompensationSide Side, int SideBy, LengthOffsetMode Length, int LengthBy, double CuttingSpeed, PathControl Corners, bool OverridesOff, int Stop)
{
    /// <param name="share">How far apart numbers may be as a share of the greater.</param>
    public bool IsAs(in MotionModes other, double share) =>
        Side == other.Side && SideBy == other.SideBy && Length == other.Length && LengthBy == other.LengthBy && Motion.Near(CuttingSpeed, other.CuttingSpeed, share) && OverridesOff == other.OverridesOff && Stop == other.Stop
        // What neither program says, the machine does as it was left.
        && (Corners == other.Corners || Corners == PathControl.Unknown || other.Corners == PathControl.Unknown);
}
