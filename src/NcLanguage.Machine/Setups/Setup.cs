using System.Collections.Immutable;
using NcLanguage.Machine.Cutting;
using NcLanguage.Machine.Files;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Machine.Setups;

/// <summary>What is on the table and in the carousel for one program. All lengths in mm, whatever the file used.</summary>
public sealed record Setup
{
    /// <summary>The setup that says nothing: used where no file was found.</summary>
    public static Setup None { get; } = new();

    /// <summary>True when a setup file was read; false for <see cref="None"/>.</summary>
    public bool IsPresent { get; init; }

    /// <summary>Path of the file, for messages and navigation; null for <see cref="None"/>.</summary>
    public string? Path { get; init; }

    /// <summary>True when its name makes it the setup of all programs at and below its folder.</summary>
    public bool IsShared => System.IO.Path.GetFileName(Path) == SetupLocator.SharedSetupName;

    /// <summary>The work offset that stock, obstacles, supports and holes are measured in: 54 to 59, or 591 to 593 for G59.1 to G59.3
    /// (<see cref="WorkOffsetName"/>); <see cref="UnknownFrame"/> where the file names one that is none.</summary>
    public int Frame { get; init; } = 54;

    /// <summary>The frame of a setup whose "frame" could not be read: no work offset has this number.</summary>
    public const int UnknownFrame = 0;

    /// <summary>The machine the setup names: a path as written in the file, or a built-in profile's name; null where it names none.</summary>
    public string? Machine { get; init; }

    /// <summary>True when the setup file is written in inches.</summary>
    public bool IsInch { get; init; }

    /// <summary>Key of the cutting-data table, such as aluminium.</summary>
    public string? Material { get; init; }

    /// <summary>The user's cutting data; null where none were found.</summary>
    public CuttingTable? OwnCutting { get; init; }

    /// <summary>The cutting data in force.</summary>
    public CuttingTable Cutting => OwnCutting ?? CuttingTable.BuiltIn;

    public Box3? Stock { get; init; }

    /// <summary>Where the stock is open from above before the first cut.</summary>
    public ImmutableArray<Hollow> Hollows { get; init; } = [];

    /// <summary>The least distance that counts as clear, mm.</summary>
    public double Clearance { get; init; } = DefaultClearance;

    /// <summary>Clearance where the file does not say, mm.</summary>
    public const double DefaultClearance = 2;

    /// <summary>No traverse below this height, mm; used where no obstacles are listed.</summary>
    public double? ClampHeight { get; init; }

    public ImmutableArray<Obstacle> Obstacles { get; init; } = [];

    /// <summary>True when the setup lists its obstacles; an empty list says that there are none.</summary>
    public bool ObstaclesAreListed { get; init; }

    /// <summary>False when an obstacle or support of the file could not be read: what stands on the table is then not fully known, and
    /// no level can be called clear.</summary>
    public bool ObstaclesAreKnown { get; init; } = true;

    /// <summary>What the stock rests on (parallels, table): drilling through must not reach it.</summary>
    public ImmutableArray<Obstacle> Supports { get; init; } = [];

    /// <summary>Machine coordinates of each datum, keyed as <see cref="Frame"/>.</summary>
    public ImmutableDictionary<int, Point3> WorkOffsets { get; init; } = ImmutableDictionary<int, Point3>.Empty;

    public ImmutableArray<Tool> Tools { get; init; } = [];

    public ImmutableArray<DrawingHole> Holes { get; init; } = [];

    /// <summary>Values of variables at program start, by name as written (#500).</summary>
    public ImmutableDictionary<string, double> Variables { get; init; } = ImmutableDictionary<string, double>.Empty;

    /// <summary>The line (from 1) of the setup file on which each of them is given.</summary>
    public ImmutableDictionary<string, int> VariableLines { get; init; } = ImmutableDictionary<string, int>.Empty;

    /// <summary>The tool a T word calls, or null when the list lacks it.</summary>
    public Tool? FindTool(int number)
    {
        foreach (var tool in Tools)
            if (tool.Number == number)
                return tool;
        return null;
    }

    /// <summary>The tool whose length an H word applies, or null.</summary>
    public Tool? FindLengthOffset(int h)
    {
        foreach (var tool in Tools)
            if ((tool.LengthOffset ?? tool.Number) == h)
                return tool;
        return null;
    }

    /// <summary>The tool whose radius a D word applies, or null.</summary>
    public Tool? FindRadiusOffset(int d)
    {
        foreach (var tool in Tools)
            if ((tool.RadiusOffset ?? tool.Number) == d)
                return tool;
        return null;
    }
}
