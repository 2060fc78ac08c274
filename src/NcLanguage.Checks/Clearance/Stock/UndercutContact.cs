using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Clearance;

/// <summary>A slot mill that is lifted at rapid where stock stands above its flutes.</summary>
/// <param name="Rapid">The lift, by its place among the part's low rapids.</param>
/// <param name="Above">How thick what stands above the flutes is, mm; never too much.</param>
readonly record struct LiftMet(int Rapid, double Above);

/// <summary>A place where a slot mill has cut under stock.</summary>
/// <param name="Tip">Where its tip came to, in the setup's frame, mm.</param>
/// <param name="Above">How thick what stands above the flutes there is, mm.</param>
readonly record struct Undercut(int Tool, Point3 Tip, double Above);

/// <summary>Remembers whether a slot mill with a neck has fed itself sideways under stock, which the field cannot hold: where it is then lifted, its flutes come against what they have left standing.</summary>
/// <remarks>Only the end of the last cut is remembered; whoever leads the tool on without cutting anything new is trusted to lead it out.</remarks>
struct UndercutContact(Job job, StockField field)
{
    /// <summary>Feeds that rise or fall by more are no level cuts, mm.</summary>
    public const double Level = 0.01;

    /// <summary>How far a lift may go with nothing said, mm: what is let go before the flutes are led out.</summary>
    const double Lift = 0.5;

    /// <summary>Play that is granted at the rim of the flutes, mm.</summary>
    const double Play = 0.25;

    List<LiftMet>? _met;
    int _tool = int.MinValue;
    double _flutes = double.NaN;
    double _radius;

    public readonly LiftMet[] Met => _met is null ? [] : [.. _met];

    /// <summary>Where the tool stands under stock; null where it does not.</summary>
    public Undercut? Present { get; set; }

    /// <summary>Looks at a cut that has not been taken away from the field yet.</summary>
    public void AskCut(in StockCut cut)
    {
        if (cut.Tool != _tool)
            Take(cut.Tool);
        if (double.IsNaN(_flutes))
            return;
        // Whoever goes straight up or down stays under what stands there.
        if (Present is { } present && present.Tool == cut.Tool && Upright.Is(cut.From, cut.To) && cut.To.Z <= present.Tip.Z + Level)
            return;
        Present = null;
        if (!(Math.Abs(cut.From.Z - cut.To.Z) <= Level) || !(cut.To.Z + _flutes < field.Stock.Max.Z - StockField.Tolerance))
            return;
        if (field.Meets(cut.To, cut.To, EndForm.Flat(_radius), out _, out var depth) && depth > _flutes + Lift)
            Present = new Undercut(cut.Tool, cut.To, depth - _flutes);
    }

    /// <summary>Looks at a rapid.</summary>
    public void AskRapid(in LowRapid rapid, int index, bool asks)
    {
        if (Present is not { } present)
            return;
        Present = null;
        if (asks && rapid.Tool == present.Tool && IsLiftOfUndercutter(job, rapid.Tool, rapid.From, rapid.To) && Upright.Is(rapid.From with { Z = present.Tip.Z - 1 }, present.Tip)
            && rapid.To.Z > present.Tip.Z + Lift)
            (_met ??= []).Add(new LiftMet(index, present.Above));
    }

    /// <summary>Whether a rapid lifts a tool that can cut under stock.</summary>
    public static bool IsLiftOfUndercutter(Job job, int tool, in Point3 from, in Point3 to) => to.Z > from.Z && from.X == to.X && from.Y == to.Y && IsUndercutter(job.Setup.FindTool(tool));

    /// <summary>A slot mill with a neck is made for T-slots and grooves under an edge: it leaves standing what is above its flutes.</summary>
    public static bool IsUndercutter(Tool? tool) => tool is { Kind: ToolKind.SlotMill, HasNeck: true, FluteLength: > 0 };

    /// <summary>How far above a cut the neck of a slot mill goes the same way, mm: the height of its flutes. NaN for what is no level cut of such a tool.</summary>
    public static double NeckOver(Job job, in StockCut cut) =>
        Math.Abs(cut.From.Z - cut.To.Z) <= Level && job.Setup.FindTool(cut.Tool) is var tool && IsUndercutter(tool) ? tool!.FluteLength!.Value : double.NaN;

    void Take(int tool)
    {
        (_tool, _flutes, _radius) = (tool, double.NaN, 0);
        if (job.Setup.FindTool(tool) is not { } row || !IsUndercutter(row))
            return;
        _radius = row.Diameter!.Value / 2 - Play - 1.5 * Math.Max(field.CellWidth, field.CellDepth);
        if (_radius > row.ShankDiameter!.Value / 2)
            _flutes = row.FluteLength!.Value;
    }
}
