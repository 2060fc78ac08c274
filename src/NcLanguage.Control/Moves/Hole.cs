namespace NcLanguage.Control.Moves;

/// <summary>One hole of a cycle, in work coordinates. Lengths in mm, NaN where not known.</summary>
/// <param name="Cycle">73 to 89.</param>
/// <param name="Tool">Tool in the spindle; −1 not known.</param>
/// <param name="InitialLevel">Level before the run of cycles.</param>
/// <param name="ArriveAt">Level of the traverse that reached the hole.</param>
/// <param name="ReturnTo">Level at which the hole is left.</param>
/// <param name="Feed">What the machine makes of the program's, within its limits, mm/min.</param>
/// <param name="Speed">As the program says it, 1/min.</param>
/// <param name="IsHop">Reached from another hole of the same run.</param>
public readonly record struct Hole(
    int Cycle, int Tool, double X, double Y, double RLevel, double Bottom, double InitialLevel, double ArriveAt, double ReturnTo,
    double DwellSeconds, double Feed, double Speed, double Peck, bool IsHop)
{
    /// <summary>Index, in the step that drills it, of the first move that belongs to it; −1 of one that is kept longer than the step.</summary>
    public int FirstMove { get; init; } = -1;

    /// <summary>The feed as the program says it, mm/min; in feed per revolution what it comes to at its speed.</summary>
    public double ProgrammedFeed { get; init; } = Feed;
}
