using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Clearance;

/// <summary>Where the holder or the shank of a tool first meets what still stands of the stock in a part of a run.</summary>
/// <param name="Cut">The cut, by its place among the part's; −1 for a rapid.</param>
/// <param name="Rapid">The rapid, by its place among the part's low rapids; −1 for a cut.</param>
/// <param name="LowestTip">The lowest Z of the tip on this move, in the setup's frame, mm.</param>
/// <param name="Depth">The most that anything stands above the underside of holder or shank on this move, mm; never too much.</param>
readonly record struct BodyMet(int Cut, int Rapid, int Tool, ToolPart Part, double LowestTip, double Depth) : IToolContact;

/// <summary>Holds the holder and a thicker shank of the tools of one part of a run against what stands of the stock when a move has cut: flat cylinders, so that
/// what they meet is beside or above what the tool itself takes away; and the neck of a slot mill, which meets what stands above its flutes.</summary>
/// <remarks>Of each tool the first contact is kept. The work is bounded for each part alone, so that an edit changes nothing in the parts before it: moves
/// behind the first <see cref="MostVisits"/> cells are not looked at.</remarks>
struct BodyContact(Job job, StockField field)
{
    /// <summary>Cells that the holders of one part of a run may go over.</summary>
    const double MostVisits = 2_000_000;

    /// <summary>How far the chords of an arc may lie beside it, mm; the cylinders are made smaller by as much.</summary>
    const double Aside = 0.25;

    double _left = MostVisits;
    int _tool = int.MinValue;
    bool _isAsked;
    double _lowest;
    List<BodyMet>? _met;

    public readonly BodyMet[] Met => _met is null ? [] : [.. _met];

    /// <summary>Looks at a cut that has been taken away from the field.</summary>
    /// <param name="arc">Its path, where it is an arc.</param>
    public void AskCut(in StockCut cut, in ArcPath arc, int index)
    {
        // A bar that cuts from below stands in its own hole, which the field cannot hold.
        if (!MayAsk(cut.Tool) || cut.IsFromBelow)
            return;
        if (cut.Arc < 0)
        {
            Keep(Look(default, cut.From, cut.To, cut.Tool, 0), cut.Tool, index, -1);
            return;
        }
        if (!arc.IsKnown || arc.Low.Z + _lowest >= field.Stock.Max.Z)
            return;
        var met = default(Meeting);
        foreach (var (from, to) in arc.ChordsWithin(Aside))
            met = Look(met, from, to, cut.Tool, Aside);
        Keep(met, cut.Tool, index, -1);
    }

    /// <summary>Looks at a cut that has not been taken away from the field yet: the neck of a slot mill goes where its flutes, which are below it, open nothing.</summary>
    /// <param name="arc">Its path, where it is an arc.</param>
    public void AskNeck(in StockCut cut, in ArcPath arc, int index)
    {
        if (!(UndercutContact.NeckOver(job, cut) is > 0 and var flutes) || !MayAsk(cut.Tool))
            return;
        var (up, radius) = (new Point3(0, 0, flutes), job.Setup.FindTool(cut.Tool)!.ShankDiameter!.Value / 2);
        if (cut.Arc < 0)
        {
            AskNeck(cut.From + up, cut.To + up, radius, cut.Tool, index);
            return;
        }
        if (!arc.IsKnown || arc.Low.Z + up.Z >= field.Stock.Max.Z || !(radius > Aside))
            return;
        foreach (var (from, to) in arc.ChordsWithin(Aside))
            if (_left <= 0 || AskNeck(from + up, to + up, radius - Aside, cut.Tool, index))
                return;
    }

    bool AskNeck(in Point3 from, in Point3 to, double radius, int tool, int cut)
    {
        if (!(from.Z < field.Stock.Max.Z - StockField.Tolerance))
            return false;
        _left -= VisitsOf(from, to, radius);
        if (!field.Meets(from, to, EndForm.Flat(radius), out _, out var depth))
            return false;
        (_met ??= []).Add(new BodyMet(cut, -1, tool, ToolPart.Shank, from.Z - job.Setup.FindTool(tool)!.FluteLength!.Value, depth));
        _isAsked = false;
        return true;
    }

    /// <summary>Looks at a rapid.</summary>
    public void AskRapid(in LowRapid rapid, int index)
    {
        if (!MayAsk(rapid.Tool))
            return;
        if (rapid.IsFed || job.Readings.RapidPath == RapidPathReading.Straight)
        {
            Keep(Look(default, rapid.From, rapid.To, rapid.Tool, 0), rapid.Tool, -1, index);
            return;
        }
        Span<Point3> path = stackalloc Point3[4];
        var points = BentRapid.Points(rapid.From, rapid.To, job.Machine.Rapid, path);
        var met = default(Meeting);
        for (var i = 1; i < points; i++)
            met = Look(met, path[i - 1], path[i], rapid.Tool, 0);
        Keep(met, rapid.Tool, -1, index);
    }

    bool MayAsk(int tool)
    {
        if (tool != _tool)
            (_tool, _lowest, _isAsked) = (tool, LowestBody(job, tool), !_met.Has(tool));
        return _isAsked && _left > 0 && field.IsKnown;
    }

    /// <summary>How far above the tip the first part of a tool begins that may meet what the tool leaves standing, mm: a thicker one, or the neck of a slot mill; infinite where it has none.</summary>
    public static double LowestBody(Job job, int tool)
    {
        if (job.Setup.FindTool(tool) is { } row && UndercutContact.IsUndercutter(row))
            return row.FluteLength!.Value;
        foreach (ref readonly var body in job.ShapeOf(tool).Cylinders)
            if (Counts(job, body, tool))
                return body.Bottom;
        return double.PositiveInfinity;
    }

    /// <summary>A centre drill cuts with its body too.</summary>
    static bool Counts(Job job, in ToolCylinder body, int tool) =>
        body.Part != ToolPart.Cutting && body.Radius > job.ShapeOf(tool).Radius
        && (body.Part == ToolPart.Holder || job.Setup.FindTool(tool)?.Kind != ToolKind.CentreDrill);

    /// <summary>What has been found on the pieces of a move so far.</summary>
    /// <param name="Part">Holder or shank; the cutting part where nothing is met.</param>
    /// <param name="Lowest">The lowest Z of the tip, mm; of no meaning before the first piece.</param>
    readonly record struct Meeting(ToolPart Part, double Lowest, double Depth, bool HasPieces);

    /// <summary>Looks at the next straight piece of a move.</summary>
    /// <param name="so">What was found on those before.</param>
    Meeting Look(in Meeting so, in Point3 from, in Point3 to, int tool, double smaller)
    {
        var lowest = Math.Min(from.Z, to.Z);
        var met = so with { Lowest = so.HasPieces ? Math.Min(so.Lowest, lowest) : lowest, HasPieces = true };
        if (_left <= 0 || !(lowest + _lowest < field.Stock.Max.Z - StockField.Tolerance))
            return met;
        foreach (ref readonly var body in job.ShapeOf(tool).Cylinders)
        {
            var (up, radius) = (new Point3(0, 0, body.Bottom), body.Radius - smaller);
            // What was met first is told, by how deep it goes in all.
            if (!Counts(job, body, tool) || (so.Depth > 0 && body.Part != so.Part) || !(radius > 0) || !(lowest + body.Bottom < field.Stock.Max.Z - StockField.Tolerance))
                continue;
            _left -= VisitsOf(from, to, radius);
            if (field.Meets(from + up, to + up, EndForm.Flat(radius), out _, out var depth))
                return met with { Part = body.Part, Depth = Math.Max(so.Depth, depth) };
        }
        return met;
    }

    void Keep(in Meeting met, int tool, int cut, int rapid)
    {
        if (!(met.Depth > 0))
            return;
        (_met ??= []).Add(new BodyMet(cut, rapid, tool, met.Part, met.Lowest, met.Depth));
        _isAsked = false;
    }

    readonly double VisitsOf(in Point3 from, in Point3 to, double radius)
    {
        var (width, depth) = (2 * radius + Math.Abs(to.X - from.X), 2 * radius + Math.Abs(to.Y - from.Y));
        return Math.Min(field.Cells, width * depth / (field.CellWidth * field.CellDepth));
    }
}
