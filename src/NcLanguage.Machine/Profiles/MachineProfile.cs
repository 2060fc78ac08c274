using System.Collections.Immutable;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Machine.Profiles;

/// <summary>Least and greatest value of an axis or a speed, in mm or 1/min.</summary>
public readonly record struct Limits(double Min, double Max);

/// <summary>One machine and the way its control reads programs. Lengths in mm, rates in mm/min, time in seconds.</summary>
public sealed record MachineProfile
{
    public required string Name { get; init; }

    /// <summary>Path of the file, or null for a built-in profile.</summary>
    public string? Path { get; init; }

    /// <summary>True when somebody chose it (setup, nc.machine.json or --machine); false when it is only the fallback.</summary>
    public bool IsChosen { get; init; }

    public Limits? TravelX { get; init; }

    public Limits? TravelY { get; init; }

    public Limits? TravelZ { get; init; }

    /// <summary>Whether the travel of an axis is known.</summary>
    public bool HasTravel => TravelX is not null || TravelY is not null || TravelZ is not null;

    /// <summary>Machine coordinates of the reference point, mm.</summary>
    public Point3 Home { get; init; }

    /// <summary>Machine coordinates where tools are changed, mm.</summary>
    public Point3 ToolChange { get; init; }

    /// <summary>Rapid rate of each axis, mm/min.</summary>
    public Point3 Rapid { get; init; } = new(15000, 15000, 15000);

    /// <summary>Acceleration, mm/s².</summary>
    public double Acceleration { get; init; } = 3000;

    /// <summary>Greatest feed, mm/min; null where no limit is set.</summary>
    public double? MaxFeed { get; init; }

    /// <summary>Spindle speeds the machine has, 1/min; null where no limit is set.</summary>
    public Limits? Spindle { get; init; }

    /// <summary>The speed that the spindle turns at where a program asks for one, 1/min; 0 is a stop.</summary>
    public double SpeedOf(double programmed) =>
        Spindle is { } limits && programmed > 0 ? Math.Clamp(programmed, Math.Min(limits.Min, limits.Max), limits.Max) : programmed;

    /// <summary>Seconds of one tool change.</summary>
    public double ToolChangeSeconds { get; init; } = 6;

    /// <summary>Places in the carousel; null where not set.</summary>
    public int? Tools { get; init; }

    /// <summary>Codes that it has beside those of the table of codes, in order.</summary>
    public ImmutableArray<MachineCode> Codes { get; init; } = [];

    public Readings Readings { get; init; } = new();

    /// <summary>The profile of the published specification (NISTIR 6556): the fallback where none is chosen.</summary>
    public static MachineProfile IsoMill { get; } = new() { Name = "iso-mill" };

    /// <summary>As small teaching mills commonly read programs (common practice): distances in cycles, lift before the move, milliseconds.</summary>
    public static MachineProfile TrainingMill { get; } = new()
    {
        Name = "training-mill",
        Readings = new Readings
        {
            HolePositions = HolePositionReading.Incremental,
            ReturnLevel = ReturnLevelReading.BeforeMove,
            Dwell = DwellReading.Milliseconds,
        },
    };

    /// <summary>The profiles that need no file.</summary>
    public static ImmutableArray<MachineProfile> BuiltIns { get; } = [IsoMill, TrainingMill];

    /// <summary>The built-in profile of that name, or null.</summary>
    public static MachineProfile? FindBuiltIn(string name) => BuiltIns.FirstOrDefault(profile => profile.Name == name);
}
