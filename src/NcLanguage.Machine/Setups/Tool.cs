namespace NcLanguage.Machine.Setups;

/// <summary>The kinds of tool a setup can name.</summary>
public enum ToolKind
{
    CentreDrill, SpotDrill, Drill, Countersink, Counterbore, Reamer, Tap, BoringBar, EndMill, BallMill, BullMill,
    ChamferMill, FaceMill, SlotMill, ThreadMill, Probe,
}

/// <summary>One row of the setup's tool list. Lengths in mm, angles in degrees; null where the setup does not say.</summary>
public sealed record Tool
{
    /// <summary>The number a T word calls it by.</summary>
    public required int Number { get; init; }

    public ToolKind? Kind { get; init; }

    /// <summary>Cutting diameter, mm.</summary>
    public double? Diameter { get; init; }

    /// <summary>Included angle of the point, degrees.</summary>
    public double? PointAngle { get; init; }

    /// <summary>Radius of the corner between the end and the side, mm.</summary>
    public double? CornerRadius { get; init; }

    /// <summary>How deep the flutes can cut, mm from the tip.</summary>
    public double? FluteLength { get; init; }

    public int? Flutes { get; init; }

    /// <summary>Whether a mill's end cuts as far as its middle, so that it can go straight down into full material.</summary>
    public bool? CentreCutting { get; init; }

    /// <summary>Whether coolant comes out at its end, so that chips are washed out of a deep hole.</summary>
    public bool? ThroughCoolant { get; init; }

    /// <summary>Whether the spindle is to turn while the tool works; null where the setup leaves it to the kind (<see cref="Stands"/>).</summary>
    public bool? Turns { get; init; }

    /// <summary>From the spindle's gauge line to the tip, mm.</summary>
    public double? Length { get; init; }

    /// <summary>Diameter above the flutes up to the holder, mm; null where it is as thick as the cutting part.</summary>
    public double? ShankDiameter { get; init; }

    public double? HolderDiameter { get; init; }

    /// <summary>The part of <see cref="Length"/> that the holder takes, mm from the gauge line.</summary>
    public double? HolderGauge { get; init; }

    /// <summary>Tool material, a key of the cutting-data table such as HSS.</summary>
    public string? Material { get; init; }

    /// <summary>The H number that holds this tool's length.</summary>
    public int? LengthOffset { get; init; }

    /// <summary>The D number that holds this tool's radius.</summary>
    public int? RadiusOffset { get; init; }

    /// <summary>Thread pitch of a tap or thread mill, mm.</summary>
    public double? Pitch { get; init; }

    /// <summary>Whether it is one of the mills, which cut with their sides.</summary>
    public bool IsMill => Kind is ToolKind.EndMill or ToolKind.BallMill or ToolKind.BullMill or ToolKind.ChamferMill or ToolKind.FaceMill or ToolKind.SlotMill or ToolKind.ThreadMill;

    /// <summary>Whether it works with the spindle standing: a probe unless the setup says that it turns, and whatever the setup says does not turn.</summary>
    public bool Stands => Turns is { } turns ? !turns : Kind == ToolKind.Probe;

    /// <summary>Whether its shank stands clear of the wall that it cuts, so that it may go deeper than its flutes are long. Not so a drill: its chips come out along its flutes.</summary>
    public bool HasNeck => (IsMill || Kind is ToolKind.BoringBar or ToolKind.Reamer or ToolKind.Tap) && ShankDiameter < Diameter;

    /// <summary>1-based line of the row in the setup file.</summary>
    public int Line { get; init; }
}
