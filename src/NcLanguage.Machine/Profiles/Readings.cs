namespace NcLanguage.Machine.Profiles;

/// <summary>Unit of a dwell's number.</summary>
public enum DwellReading { Milliseconds, Seconds, ByPoint }

/// <summary>What a length without a decimal point means: whole units or least increments (0.001 mm, 0.0001 in).</summary>
public enum IntegerReading { Whole, Increments }

/// <summary>Whether X and Y inside a cycle follow G90/G91 or are always distances from where the tool stands.</summary>
public enum HolePositionReading { DistanceMode, Incremental }

/// <summary>When G98/G99 act: after the block's hole, or by a lift before the block's traverse.</summary>
public enum ReturnLevelReading { AfterHole, BeforeMove }

/// <summary>Whether a rapid runs straight or each axis at its own rate, so that the path bends.</summary>
public enum RapidPathReading { Straight, PerAxis }

/// <summary>The address that counts a cycle's repeats.</summary>
public enum RepeatReading { L, K }

/// <summary>Whether I, J, K are distances from the arc's start or coordinates.</summary>
public enum ArcCentreReading { Incremental, Absolute }

/// <summary>Whether M6 changes the tool or the T word does.</summary>
public enum ToolChangeReading { M6, T }

/// <summary>Which pair of codes selects inch and millimetre.</summary>
public enum UnitReading { G20G21, G70G71 }

/// <summary>Whether the tool length is applied by G43 H or comes with the T word.</summary>
public enum LengthOffsetReading { G43, WithTool }

/// <summary>Whether M5 and M9 act before or after the motion of their block.</summary>
public enum StopReading { BeforeMotion, AfterMotion }

/// <summary>Where a cycle's R counts from under G91.</summary>
public enum IncrementalRReading { PresentLevel, InitialLevel }

/// <summary>How far the tool comes out between the pecks of G83: to the level at which the hole is left, or to R.</summary>
public enum PeckReturnReading { ReturnLevel, RLevel }

/// <summary>What 0 repeats in a cycle mean.</summary>
public enum ZeroRepeatsReading { Alarm, KeepsCycle }

/// <summary>Which words give the levels of back boring (G87): Z where the bar begins and K how far it bores up, or R where it begins and Z how far it bores up.</summary>
public enum BackBoringReading { FromZToK, FromRToZ }

/// <summary>What a file must hold for the control to load it.</summary>
public sealed record ProgramMarks
{
    /// <summary>A % line must open and close the file.</summary>
    public bool Percent { get; init; }

    /// <summary>A program number is needed.</summary>
    public bool Number { get; init; }

    /// <summary>Longest block in characters.</summary>
    public int LongestBlock { get; init; } = 256;

    /// <summary>Whether lower-case letters can be sent.</summary>
    public bool LowerCase { get; init; } = true;

    /// <summary>The signs beside letters, digits and blanks that can be sent; null where every one of ASCII can.</summary>
    public string? Characters { get; init; }
}

/// <summary>How one control reads a text where controls differ. Each member is a named reading of a machine profile.</summary>
public sealed record Readings
{
    public DwellReading Dwell { get; init; } = DwellReading.Seconds;

    public IntegerReading Integers { get; init; } = IntegerReading.Whole;

    public HolePositionReading HolePositions { get; init; } = HolePositionReading.DistanceMode;

    public ReturnLevelReading ReturnLevel { get; init; } = ReturnLevelReading.AfterHole;

    public RapidPathReading RapidPath { get; init; } = RapidPathReading.Straight;

    public RepeatReading Repeats { get; init; } = RepeatReading.L;

    public ArcCentreReading ArcCentre { get; init; } = ArcCentreReading.Incremental;

    public ToolChangeReading ToolChange { get; init; } = ToolChangeReading.M6;

    public UnitReading Units { get; init; } = UnitReading.G20G21;

    public LengthOffsetReading LengthOffset { get; init; } = LengthOffsetReading.G43;

    public StopReading StopsAct { get; init; } = StopReading.BeforeMotion;

    public IncrementalRReading IncrementalR { get; init; } = IncrementalRReading.PresentLevel;

    public PeckReturnReading PeckReturn { get; init; } = PeckReturnReading.ReturnLevel;

    public ZeroRepeatsReading ZeroRepeats { get; init; } = ZeroRepeatsReading.Alarm;

    public BackBoringReading BackBoring { get; init; } = BackBoringReading.FromZToK;

    /// <summary>Whether G0 to G3 end a cycle as G80 does.</summary>
    public bool RapidsEndCycle { get; init; } = true;

    public ProgramMarks ProgramMarks { get; init; } = new();
}
