using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Clearance;

/// <summary>What the moves of a part of a run ask of the stock that stands when they come: many parts, of drilling mostly, ask nothing, and need no stock to be cut before them.</summary>
sealed class StockQuestions
{
    public static StockQuestions None { get; } = new([], [], false);

    readonly int[] _cutters;
    readonly int[] _travellers;

    StockQuestions(int[] cutters, int[] travellers, bool areOwn)
    {
        _cutters = cutters;
        _travellers = travellers;
        AreOwn = areOwn;
    }

    /// <summary>The tools of the part's cuts, each once for as long as it goes on cutting.</summary>
    public ReadOnlySpan<int> Cutters => _cutters;

    /// <summary>The tools that cut on any other way than straight up or down, and those whose work is a stroke. Of their cuts it is asked, in all parts, whether they are cuts in air; what else only goes
    /// down and up goes to its work and leaves it, be it in air.</summary>
    public ReadOnlySpan<int> Travellers => _travellers;

    /// <summary>Whether the part asks, whatever stands in others: it has low rapids, or holder, shank or neck go below the stock's top.</summary>
    public bool AreOwn { get; }

    /// <summary>Whether the part asks anything in a run with these travellers.</summary>
    public bool AreAsked(ReadOnlySpan<int> travellersOfRun) => AreOwn || _cutters.AsSpan().ContainsAny(travellersOfRun);

    /// <summary>Whether a tool works on its way straight down, as a broach does: it stands and is no probe.</summary>
    public static bool WorksByStrokes(Job job, int tool) => job.Setup.FindTool(tool) is { Stands: true, Kind: not ToolKind.Probe };

    /// <param name="cuts">The cuts of a part.</param>
    /// <param name="hasLowRapids">Whether it has low rapids.</param>
    /// <param name="job">The job.</param>
    public static StockQuestions Of(ReadOnlySpan<StockCut> cuts, bool hasLowRapids, Job job)
    {
        if (job.Setup.Stock is not { } stock || (cuts.IsEmpty && !hasLowRapids))
            return None;
        List<int> cutters = [], travellers = [];
        var (areOwn, lowest, tool, travels) = (hasLowRapids, double.NaN, 0, false);
        foreach (ref readonly var cut in cuts)
        {
            if (cutters.Count == 0 || cut.Tool != tool)
            {
                cutters.Add(tool = cut.Tool);
                (lowest, travels) = (Math.Min(BodyContact.LowestBody(job, tool), NeckContact.FlutesOf(job, tool)), travellers.Contains(tool));
            }
            if (!travels && !(cut.Arc < 0 && Upright.Is(cut.From, cut.To) && !WorksByStrokes(job, tool)))
            {
                travellers.Add(tool);
                travels = true;
            }
            areOwn |= Math.Min(cut.From.Z, cut.To.Z) + lowest < stock.Max.Z;
        }
        return new StockQuestions([.. cutters], [.. travellers], areOwn);
    }
}
