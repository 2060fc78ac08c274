using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Drawing;

/// <summary>What a tool does to a hole.</summary>
enum WorkKind
{
    /// <summary>Something that neither makes nor sizes the hole: a chamfer, back boring, a probe.</summary>
    Other,
    Spot,
    Drill,
    Ream,
    Bore,
    Tap,

    /// <summary>An end mill goes straight down.</summary>
    Plunge,

    /// <summary>A mill cuts a full circle.</summary>
    Mill,
    MillThread,

    /// <summary>No tool: the stock has the bore already.</summary>
    Hollow,
}

/// <summary>One cut at the place of a hole. Lengths in mm, levels in the setup's frame.</summary>
/// <param name="Tool">Null where the setup does not list it.</param>
/// <param name="Diameter">Of the hole that it leaves; NaN where not known.</param>
/// <param name="Tip">How low the tip goes; for a milled hole the lowest whole circle.</param>
/// <param name="Full">How low it cuts at its full diameter.</param>
/// <param name="Line">The line of its block in the whole text, from 0; −1 where the stock has it already.</param>
/// <param name="Number">The number of the cycle's hole, from 1; 0 where no cycle makes it.</param>
/// <param name="Cycle">0 where no cycle makes it.</param>
/// <param name="RLevel">R of the cycle; NaN without one.</param>
/// <param name="Pitch">Of a milled thread, as the helix climbs; NaN elsewhere.</param>
readonly record struct PlaceWork(
    WorkKind Kind, Tool? Tool, int ToolNumber, double Diameter, double Tip, double Full, Point3 ToFrame, int Line, int Number, int Cycle, double RLevel, double Pitch)
{
    /// <summary>How low the tool goes at all: on a helix that ends without a level circle lower than <see cref="Tip"/>.</summary>
    public double End { get; init; } = Tip;

    /// <summary>Whether it cuts a left-hand thread; null where it cuts none or that is not known.</summary>
    public bool? IsLeftHand { get; init; }

    /// <summary>What the program feeds for each turn of a tapping cycle, mm; NaN elsewhere and where not known.</summary>
    public double FeedPerTurn { get; init; } = double.NaN;

    /// <summary>Whether nothing but the feed tells the pitch of the thread.</summary>
    public bool IsPitchFed => Kind != WorkKind.MillThread && Tool?.Pitch is null;

    /// <summary>Pitch of the thread that it cuts, mm: the helix', the tap's, or else what the program feeds; NaN where not known.</summary>
    public double ThreadPitch => Kind == WorkKind.MillThread ? Pitch : Tool?.Pitch ?? FeedPerTurn;

    /// <summary>The tool in words: T5, or "the tool" where the program has called none.</summary>
    public string ToolName => ToolNumber > 0 ? $"T{ToolNumber}" : "the tool";

    /// <summary>The work coordinates of its block.</summary>
    public required WorkCoordinates Coordinates { get; init; }

    /// <summary>Whether it makes or sizes a hole.</summary>
    public bool Makes => Kind is WorkKind.Drill or WorkKind.Ream or WorkKind.Bore or WorkKind.Plunge or WorkKind.Mill or WorkKind.Hollow;

    /// <summary>Whether it cuts a thread.</summary>
    public bool Threads => Kind is WorkKind.Tap or WorkKind.MillThread;

    /// <summary>What a tool does that goes straight down.</summary>
    public static WorkKind KindOf(Tool? tool, int cycle) => tool?.Kind switch
    {
        ToolKind.Tap or ToolKind.ThreadMill => WorkKind.Tap,
        null when cycle is 74 or 84 => WorkKind.Tap,
        _ when cycle is 87 => WorkKind.Other,
        ToolKind.SpotDrill or ToolKind.CentreDrill => WorkKind.Spot,
        ToolKind.Countersink or ToolKind.ChamferMill or ToolKind.FaceMill or ToolKind.Probe => WorkKind.Other,
        ToolKind.Reamer => WorkKind.Ream,
        ToolKind.BoringBar => WorkKind.Bore,
        ToolKind.EndMill or ToolKind.BallMill or ToolKind.BullMill or ToolKind.SlotMill when cycle == 0 => WorkKind.Plunge,
        _ => WorkKind.Drill,
    };

    /// <summary>Length of a tool's end that is narrower than its diameter, mm: a point or a ball; 0 where it is flat or not known.</summary>
    public static double EndLength(Tool? tool) => tool switch
    {
        { Kind: ToolKind.BallMill, Diameter: { } ball } => ball / 2,
        { Kind: ToolKind.BullMill, CornerRadius: { } corner } => corner,
        { PointAngle: > 0 and < 180 and var angle, Diameter: { } diameter } => Cutting.PointShape.Length(diameter, angle),
        _ => 0,
    };
}

/// <summary>All that is done at one place, in the order of the run. X and Y in the setup's frame, mm.</summary>
sealed class WorkedPlace(double x, double y)
{
    public double X => x;

    public double Y => y;

    /// <summary>The next one that was found in the same cell of the search.</summary>
    public WorkedPlace? NextInCell { get; set; }

    /// <summary>Most are worked at by two tools: one that marks the hole, and one that makes it.</summary>
    public List<PlaceWork> Works { get; } = new(2);
}
