using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Clearance;

/// <summary>Where a mill with a neck first takes more at once than its flutes are long in a part of a run.</summary>
/// <param name="Cut">The cut, by its place among the part's.</param>
/// <param name="Depth">The most that anything stands above the tool's end on this move, mm; never too much.</param>
readonly record struct NeckMet(int Cut, int Tool, double Depth) : IToolContact;

/// <summary>Holds the cuts of mills with a neck against what stands of the stock before them: their shank keeps clear of a wall, so that not the depth below the stock's top counts,
/// but what is taken at once. Of each tool the first such cut of a part is kept.</summary>
struct NeckContact(Job job, StockField field)
{
    /// <summary>How far the chords of an arc may lie beside it, mm; the tool is made smaller by as much.</summary>
    const double Aside = 0.25;

    List<NeckMet>? _met;
    int _tool = int.MinValue;
    double _flutes = double.PositiveInfinity;

    public readonly NeckMet[] Met => _met is null ? [] : [.. _met];

    /// <summary>Looks at a cut that has not been taken away from the field yet.</summary>
    /// <param name="arc">Its path, where it is an arc.</param>
    public void Ask(in StockCut cut, in ArcPath arc, int index)
    {
        if (cut.Tool != _tool)
            (_tool, _flutes) = (cut.Tool, _met.Has(cut.Tool) ? double.PositiveInfinity : FlutesOf(job, cut.Tool));
        if (double.IsInfinity(_flutes))
            return;
        var end = job.EndOf(cut.Tool);
        if (cut.Arc < 0)
        {
            Ask(cut.From, cut.To, end, index);
            return;
        }
        if (!arc.IsKnown || !(end.Radius > Aside))
            return;
        foreach (var (from, to) in arc.ChordsWithin(Aside))
        {
            if (double.IsInfinity(_flutes))
                return;
            Ask(from, to, EndForm.Flat(end.Radius - Aside), index);
        }
    }

    void Ask(in Point3 from, in Point3 to, in EndForm end, int index)
    {
        if (!(Math.Min(from.Z, to.Z) + _flutes < field.Stock.Max.Z - StockField.Tolerance) || !field.Meets(from, to, end, out _, out var depth)
            || !(depth > _flutes + StockField.Tolerance))
            return;
        (_met ??= []).Add(new NeckMet(index, _tool, depth));
        _flutes = double.PositiveInfinity;
    }

    /// <summary>How long the flutes of a mill with a neck are, mm; infinite for every other tool, and where nobody knows.</summary>
    /// <remarks>A slot mill is made to leave standing what is above its flutes, which the field cannot hold.</remarks>
    public static double FlutesOf(Job job, int tool) =>
        job.Setup.FindTool(tool) is { HasNeck: true, IsMill: true, Kind: not ToolKind.SlotMill, FluteLength: { } flutes } ? flutes : double.PositiveInfinity;
}
