using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Clearance;

/// <summary>A low rapid of a part that meets stock which still stands.</summary>
/// <param name="Rapid">Its place among the part's low rapids.</param>
/// <param name="Tip">Where the tip is when the tool first meets it, in the setup's frame, mm.</param>
/// <param name="Depth">The most that anything stands above the tool's end, mm.</param>
readonly record struct RapidMet(int Rapid, Point3 Tip, double Depth);

/// <summary>What the moves of one part of a run meet of the stock.</summary>
/// <param name="Source">The part.</param>
/// <param name="Met">Its low rapids that meet what stands.</param>
/// <param name="Bodies">Where holders and shanks meet what stands.</param>
/// <param name="Sideways">Where drills and the like are fed sideways into what stands.</param>
/// <param name="Necks">Where mills with a neck take more at once than their flutes are long.</param>
/// <param name="Lifts">Where slot mills are lifted under what stands.</param>
/// <param name="InAir">For each of its cuts, whether it certainly came nowhere near what stood; empty where none of them did. Of tools that only go up and down it is not asked.</param>
sealed record PartStock(PartResult Source, RapidMet[] Met, BodyMet[] Bodies, SidewaysMet[] Sideways, NeckMet[] Necks, LiftMet[] Lifts, bool[] InAir)
{
    public bool IsInAir(int cut) => InAir.Length > 0 && InAir[cut];
}

/// <summary>Holds the moves of a program against what the cuts before them have left of the stock, part by part; of a new version of the text no more is followed
/// again than what lies behind the first cut that changed, from the last kept picture of the stock before it. Behind the last part that asks anything nothing is followed.</summary>
/// <remarks>The work is bounded: cells are made larger until the cuts that are followed together touch no more than <see cref="MostVisits"/> of them (larger cells never make
/// a false alarm, they let narrow contacts pass), and no more than the first <see cref="MostCuts"/> cuts are followed; moves behind them are not looked at.</remarks>
sealed class StockReplay
{
    /// <summary>Cells that all cuts of a program together may touch: a hundredth of a second's work or so.</summary>
    const double MostVisits = 500_000;

    /// <summary>Cells of the field, and with them the size of a kept picture.</summary>
    const double MostCells = 500_000;

    /// <summary>Cuts of a program that are followed.</summary>
    public const int MostCuts = 50_000;

    /// <summary>How near to what stands a cut may come and still count as one in air, mm.</summary>
    public const double AirGap = 1;

    /// <summary>The same of a cone, mm: what breaks an edge is set to it by tenths. What its tip may be flattened by stays within.</summary>
    public const double AirGapOfCone = 0.25;

    /// <summary>Pictures of the stock that are kept for the next version of the text.</summary>
    const int MostPictures = 8;

    readonly StockDemand _demand;
    readonly double _cell;
    readonly PartStock[] _parts;
    readonly List<(int Part, StockPicture Stock, Undercut? Undercut)> _pictures = [];

    StockReplay(StockDemand demand, double cell, int parts)
    {
        _demand = demand;
        _cell = cell;
        _parts = new PartStock[parts];
    }

    /// <summary>The parts up to the last that asks anything of the stock: those behind it meet nothing that would be told.</summary>
    public ReadOnlySpan<PartStock> Parts => _parts;

    /// <summary>Cuts followed to make this from what it was made from, for tests that count work.</summary>
    public int CutsFollowed { get; private set; }

    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static StockReplay Of(ProgramRun run, StockReplay? before, CancellationToken cancel)
    {
        var followed = Followed(run.Results);
        var demand = StockDemand.Of(followed);
        if (run.Job.Setup.Stock is not { } stock || demand.Parts == 0)
            return new StockReplay(demand, 0, 0);
        var replay = new StockReplay(demand, CellSize(run.Job, stock, followed), demand.Parts);
        var same = replay.Reuse(run, before);
        if (same < replay._parts.Length)
            replay.Follow(run, StockField.Of(run.Job.Setup, replay._cell), same, cancel);
        return replay;
    }

    /// <summary>As fine as the smallest tool wants it, but with the bounds kept; in steps, so that it seldom changes with the text.</summary>
    static double CellSize(Job job, Box3 stock, ReadOnlySpan<PartResult> followed)
    {
        var size = stock.Max - stock.Min;
        var least = Math.Max(StockWork.CellSize(followed, job, stock, MostVisits), Math.Sqrt(size.X * size.Y / MostCells));
        var wanted = StockField.CellSizeFor(job.SmallestDiameter);
        return least <= wanted ? wanted : wanted * Math.Pow(2, Math.Ceiling(2 * Math.Log2(least / wanted)) / 2);
    }

    /// <summary>The parts at the beginning whose cuts are followed.</summary>
    static ReadOnlySpan<PartResult> Followed(ReadOnlySpan<PartResult> parts)
    {
        var (count, cuts) = (0, 0);
        while (count < parts.Length && (cuts += parts[count].Cuts.Length) <= MostCuts)
            count++;
        return parts[..count];
    }

    /// <summary>Takes over what still holds of a version before.</summary>
    /// <returns>How many parts at the beginning move as they did, and were followed.</returns>
    int Reuse(ProgramRun run, StockReplay? before)
    {
        if (before is null || before._cell != _cell || !before._demand.IsOfSameTools(_demand))
            return 0;
        var same = 0;
        for (; same < Math.Min(_parts.Length, before._parts.Length); same++)
        {
            if (!MoveAlike(before._parts[same].Source, run.Results[same]))
                break;
            var held = before._parts[same];
            _parts[same] = ReferenceEquals(held.Source, run.Results[same]) ? held : held with { Source = run.Results[same] };
        }
        _pictures.AddRange(before._pictures.Where(picture => picture.Part <= same));
        return same;
    }

    static bool MoveAlike(PartResult a, PartResult b)
    {
        if (ReferenceEquals(a, b))
            return true;
        if (a.Cuts.Length != b.Cuts.Length || a.LowRapids.Length != b.LowRapids.Length || !a.Arcs.AsSpan().SequenceEqual(b.Arcs))
            return false;
        var others = b.Cuts.GetEnumerator();
        foreach (ref readonly var cut in a.Cuts)
            if (!others.MoveNext() || !cut.GoesAs(others.Current))
                return false;
        for (var i = 0; i < a.LowRapids.Length; i++)
            if (a.LowRapids[i] with { Line = 0 } != b.LowRapids[i] with { Line = 0 })
                return false;
        return true;
    }

    void Follow(ProgramRun run, StockField field, int same, CancellationToken cancel)
    {
        var part = 0;
        Undercut? undercut = null;
        if (_pictures.Count > 0)
        {
            (part, var stock, undercut) = _pictures[^1];
            field.Restore(stock);
        }
        var stride = Math.Max(1, _parts.Length / MostPictures);
        for (; part < _parts.Length; part++)
        {
            cancel.ThrowIfCancellationRequested();
            if (!run.Job.Once && part > 0 && part % stride == 0 && _pictures.Count < MostPictures && (_pictures.Count == 0 || _pictures[^1].Part < part))
                _pictures.Add((part, field.Picture(), undercut));
            var found = Follow(run.Job, run.Results[part], field, part >= same, ref undercut);
            if (part >= same)
                _parts[part] = found;
        }
    }

    PartStock Follow(Job job, PartResult part, StockField field, bool asks, ref Undercut? undercut)
    {
        if (!field.IsKnown)
            return new PartStock(part, [], [], [], [], [], []);
        List<RapidMet>? met = null;
        bool[] inAir = [];
        var bodies = new BodyContact(job, field);
        var sideways = new SidewaysContact(job, field);
        var necks = new NeckContact(job, field);
        var lifts = new UndercutContact(job, field) { Present = undercut };
        var rapid = 0;
        var cuts = part.Cuts.GetEnumerator();
        var (tool, end, isTraveller, isPointed, strokes) = (int.MinValue, default(EndForm), false, false, false);
        for (var i = 0;; i++)
        {
            for (; rapid < part.LowRapids.Length && part.LowRapids[rapid].CutsBefore == i; rapid++)
            {
                lifts.AskRapid(part.LowRapids[rapid], rapid, asks);
                if (asks && Meets(job, part.LowRapids[rapid], field, out var tip, out var depth))
                    (met ??= []).Add(new RapidMet(rapid, tip, depth));
                else if (asks)
                    bodies.AskRapid(part.LowRapids[rapid], rapid);
            }
            if (!cuts.MoveNext())
                break;
            ref readonly var cut = ref cuts.Current;
            if (cut.Tool != tool)
                (tool, end, isTraveller, isPointed, strokes) = (cut.Tool, job.EndOf(cut.Tool), _demand.IsTraveller(cut.Tool), IsPointed(job, cut.Tool), StockQuestions.WorksByStrokes(job, cut.Tool));
            var path = part.PathOf(cut);
            if (asks)
            {
                sideways.Ask(cut, i);
                necks.Ask(cut, path, i);
                bodies.AskNeck(cut, path, i);
            }
            lifts.AskCut(cut);
            // What comes nowhere near anything takes nothing, and which that is shows sooner than what would be taken. How far a broach's edge stands off the axis is not known.
            if (asks && isTraveller && end.Radius > 0 && (((isPointed || strokes) && IsAboveStock(cut, path, field)) || (!strokes && !field.IsNear(cut, path, end, isPointed && !end.IsFlat ? AirGapOfCone : AirGap))))
                (inAir.Length > 0 ? inAir : inAir = new bool[part.Cuts.Length])[i] = true;
            else
                field.Cut(cut, path, end);
            if (asks)
                bodies.AskCut(cut, path, i);
            CutsFollowed++;
            // Behind a cut of unknown place nothing is told, wherever the part ends.
            if (!field.IsKnown)
                break;
        }
        undercut = lifts.Present;
        return new PartStock(part, met is null ? [] : [.. met], bodies.Met, sideways.Met, necks.Met, lifts.Met, inAir);
    }

    /// <summary>What engraves and breaks edges has nothing to do above the stock: others leave there what is to be finished of a stock given as it will be.</summary>
    static bool IsPointed(Job job, int tool) => job.Setup.FindTool(tool)?.Kind is ToolKind.ChamferMill or ToolKind.SpotDrill or ToolKind.CentreDrill or ToolKind.Countersink;

    /// <summary>Whether the tip keeps above the top of the blank all the way, however near.</summary>
    static bool IsAboveStock(in StockCut cut, in ArcPath arc, StockField field) =>
        (cut.Arc < 0 ? Math.Min(cut.From.Z, cut.To.Z) : arc.IsKnown ? arc.Low.Z : double.NaN) > field.Stock.Max.Z + StockField.Tolerance;

    /// <summary>A tap stands in its core hole by its chamfer, which is narrower than its thread: about a pitch less (minor diameter D − 1.0825·P, ISO 724), or a quarter where the pitch is not given.</summary>
    static EndForm EndOf(Job job, int number) =>
        job.Setup.FindTool(number) is { Kind: ToolKind.Tap, Diameter: > 0 and var diameter } tap ? EndForm.Flat((diameter - 1.0825 * (tap.Pitch ?? diameter / 4)) / 2) : job.EndOf(number);

    static bool Meets(Job job, in LowRapid rapid, StockField field, out Point3 tip, out double depth)
    {
        (tip, depth) = (Point3.Unknown, 0);
        var end = EndOf(job, rapid.Tool);
        // A tool that stands in the stock already has been reported where it went in.
        if (field.Meets(rapid.From, rapid.From, end, out _, out _))
            return false;
        // Nor a traverse at R to where R lies inside the stock: that is said of R.
        if (rapid.AtR && field.Meets(rapid.To, rapid.To, end, out _, out _))
            return false;
        if (rapid.IsFed || job.Readings.RapidPath == RapidPathReading.Straight)
            return field.Meets(rapid.From, rapid.To, end, out tip, out depth);
        Span<Point3> path = stackalloc Point3[4];
        var points = BentRapid.Points(rapid.From, rapid.To, job.Machine.Rapid, path);
        for (var i = 1; i < points; i++)
            if (field.Meets(path[i - 1], path[i], end, out tip, out depth))
                return true;
        return false;
    }
}
