using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Clearance;

/// <summary>Where a tool not made to cut with its side is first fed sideways into what still stands of the stock in a part of a run.</summary>
/// <param name="Cut">The cut, by its place among the part's.</param>
/// <param name="Depth">The most that anything stands above the tool's end on this move, mm; never too much.</param>
readonly record struct SidewaysMet(int Cut, int Tool, double Depth) : IToolContact;

/// <summary>Holds the feeds of drills, reamers and taps that go aside against what stands of the stock before they cut. Of each tool the first contact of a part is kept.</summary>
struct SidewaysContact(Job job, StockField field)
{
    List<SidewaysMet>? _met;
    int _tool = int.MinValue;
    bool _isAsked;

    public readonly SidewaysMet[] Met => _met is null ? [] : [.. _met];

    /// <summary>Looks at a cut that has not been taken away from the field yet.</summary>
    public void Ask(in StockCut cut, int index)
    {
        if (cut.Tool != _tool)
            (_tool, _isAsked) = (cut.Tool, IsNoMill(cut.Tool) && !_met.Has(cut.Tool));
        if (!_isAsked || cut.Arc >= 0 || Upright.Is(cut.From, cut.To))
            return;
        if (!field.Meets(cut.From, cut.To, job.EndOf(cut.Tool), out _, out var depth))
            return;
        (_met ??= []).Add(new SidewaysMet(index, cut.Tool, depth));
        _isAsked = false;
    }

    readonly bool IsNoMill(int tool) => job.Setup.FindTool(tool)?.Kind is ToolKind.Drill or ToolKind.Reamer or ToolKind.Tap;
}
