using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Clearance;

/// <summary>What one feed or arc of a run takes away.</summary>
/// <param name="Part">The part of the run (<see cref="ProgramRun.Results"/>) that its block stands in.</param>
/// <param name="At">Its block, counted from 0 within the part; <see cref="ProgramRun.LineOf"/> gives the line.</param>
/// <param name="Move">Which of the block's moves it is.</param>
/// <param name="Tool">The tool in the spindle.</param>
/// <param name="Removed">Volume taken away, mm³.</param>
/// <param name="Deepest">How deep the tool went along its axis into what stood, mm; 0 where it met nothing.</param>
/// <param name="Seconds">Time it takes; NaN where not known.</param>
public readonly record struct CutMade(int Part, int At, int Move, int Tool, double Removed, double Deepest, double Seconds)
{
    /// <summary>Whether it took nothing away: it went through air, or where all was cut before.</summary>
    public bool IsInAir => Removed == 0;

    /// <summary>Material removed in a minute, mm³/min; NaN where the time is not known.</summary>
    public double Rate => Seconds > 0 ? Removed * 60 / Seconds : double.NaN;
}

/// <summary>What a whole run leaves of the setup's stock, and what each cut took: for measuring and drawing.</summary>
/// <remarks>
/// As exact as the cells are small: a wall is off by up to half a cell. Threads are held as a cylinder of their pitch diameter where the tool's pitch is given, so that the volume is about right;
/// what back boring takes from below is not held, and what stands above the flutes of a slot mill is not either, though it does not count as taken away; rapids, shank and holder take nothing. A tool whose end the setup does not describe counts as flat
/// (<see cref="EndsNotGiven"/>).
/// </remarks>
public sealed class StockLeft
{
    /// <summary>Cells that all cuts of a run together touch at most: about a second's work.</summary>
    const double MostVisits = 100_000_000;

    const int XY = 17;

    /// <summary>Cells are no finer than this, mm.</summary>
    const double FinestCell = 0.02;

    readonly CutMade[] _cuts;

    StockLeft(StockField field, CutMade[] cuts, int unknownFrom, Shortfalls shortfalls)
    {
        Field = field;
        _cuts = cuts;
        UnknownFrom = unknownFrom;
        EndsNotGiven = [.. shortfalls.EndsNotGiven];
        OpenedAbove = [.. shortfalls.OpenedAbove];
        FromBelow = [.. shortfalls.FromBelow];
        foreach (ref readonly var cut in cuts.AsSpan())
            Removed += cut.Removed;
    }

    /// <summary>What stands. Where <see cref="IsKnown"/> is false: before the first cut that is not known.</summary>
    public StockField Field { get; }

    /// <summary>Every cut of the run in its order, up to the first that is not known.</summary>
    public ReadOnlySpan<CutMade> Cuts => _cuts;

    /// <summary>Volume taken away by all <see cref="Cuts"/>, mm³.</summary>
    public double Removed { get; }

    /// <summary>False where some cut is not known: its place, or its tool's diameter.</summary>
    public bool IsKnown => UnknownFrom < 0;

    /// <summary>The line (from 0) of the first cut that is not known; −1 where all are.</summary>
    public int UnknownFrom { get; }

    /// <summary>Numbers of the tools that cut and whose end (point angle, corner radius) the setup leaves open: they count as flat.</summary>
    public IReadOnlyList<int> EndsNotGiven { get; }

    /// <summary>Numbers of the slot mills that left something standing above their flutes, or may have, their shanks not being given: the field is open there.</summary>
    public IReadOnlyList<int> OpenedAbove { get; }

    /// <summary>Numbers of the tools that cut from below: the field has all of that still.</summary>
    public IReadOnlyList<int> FromBelow { get; }

    /// <summary>Follows the cuts of a run through the stock; null where the setup gives no stock.</summary>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static StockLeft? Of(ProgramRun run, CancellationToken cancel = default) => Of(run, StockField.MostCells, cancel);

    /// <summary>The same with a field of no more than about so many cells, for what is drawn small; as many as that where the work allows it.</summary>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static StockLeft? Of(ProgramRun run, int mostCells, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(run);
        if (run.Job.Setup.Stock is not { } stock)
            return null;
        var size = stock.Max - stock.Min;
        var cell = Math.Max(FinestCell, Math.Max(Math.Sqrt(size.X * size.Y / mostCells), StockWork.CellSize(run.Results, run.Job, stock, MostVisits)));
        var field = StockField.Of(run.Job.Setup, cell, CellRule.Middle);
        var cuts = new List<CutMade>();
        var shortfalls = new Shortfalls([], [], []);
        for (var part = 0; part < run.Results.Length; part++)
        {
            cancel.ThrowIfCancellationRequested();
            var result = run.Results[part];
            foreach (ref readonly var cut in result.Cuts)
            {
                var underTip = Standing(field, cut);
                if (cut.IsFromBelow)
                    shortfalls.FromBelow.Add(cut.Tool);
                var taken = cut.IsFromBelow ? default : Take(field, cut, result, run.Job, shortfalls);
                if (!field.IsKnown)
                    return new StockLeft(field, [.. cuts], run.LineOf(part, cut.Line), shortfalls);
                if (taken.Removed > 0 && MayLeaveAbove(run.Job, cut, taken))
                    shortfalls.OpenedAbove.Add(cut.Tool);
                if (taken.Removed > 0 && !EndForm.IsGiven(run.Job.Setup.FindTool(cut.Tool)))
                    shortfalls.EndsNotGiven.Add(cut.Tool);
                cuts.Add(new CutMade(part, cut.Line, cut.Move, cut.Tool, taken.Removed, taken.Removed > 0 ? Math.Max(taken.Deepest, underTip) : 0, cut.Seconds));
            }
        }
        return new StockLeft(field, [.. cuts], -1, shortfalls);
    }

    /// <summary>Takes away what a cut takes. Of what a slot mill goes under on its level way, no more counts than its flutes are high; the field is open above it all the same.</summary>
    static CutTally Take(StockField field, in StockCut cut, PartResult part, Job job, Shortfalls shortfalls)
    {
        var end = EndOf(job, cut.Tool);
        if (UndercutContact.NeckOver(job, cut) is > 0 and var flutes)
        {
            var up = new Point3(0, 0, flutes);
            var opened = cut.Arc < 0 ? field.Cut(cut.From + up, cut.To + up, end)
                : part.Arcs[cut.Arc] is { Plane: XY } arc ? field.CutArc(cut.From + up, cut.To + up, arc.Center + up, arc.Clockwise, arc.Plane, arc.FullTurns, end)
                : default;
            if (opened.Removed > 0)
                shortfalls.OpenedAbove.Add(cut.Tool);
        }
        return field.Cut(cut, part.PathOf(cut), end);
    }

    /// <summary>Whether a level cut goes deeper than a slot mill's flutes are high, where nobody knows how thick it is above them.</summary>
    static bool MayLeaveAbove(Job job, in StockCut cut, in CutTally taken) =>
        Math.Abs(cut.From.Z - cut.To.Z) <= UndercutContact.Level
        && job.Setup.FindTool(cut.Tool) is { Kind: ToolKind.SlotMill, ShankDiameter: null, FluteLength: { } flutes } && taken.Deepest > flutes + StockField.Tolerance;

    /// <summary>Tools of whose cuts the field does not hold all, by their numbers.</summary>
    sealed record Shortfalls(SortedSet<int> EndsNotGiven, SortedSet<int> OpenedAbove, SortedSet<int> FromBelow);

    /// <summary>How much stands where a cut straight down puts its tip, mm: the tip of a drill seldom goes down in the middle of a cell, and would be taken for less deep than it is.</summary>
    static double Standing(StockField field, in StockCut cut) =>
        Upright.Is(cut.From, cut.To) ? field.TopAt(cut.To.X, cut.To.Y) - Math.Max(cut.To.Z, field.Floor) : 0;

    /// <summary>A tap or thread mill takes half of what lies between core and outer diameter: as much as a cylinder of its pitch diameter, d − 0.6495 P (ISO 724), about.</summary>
    static EndForm EndOf(Job job, int number)
    {
        var end = job.EndOf(number);
        return job.Setup.FindTool(number) is { Kind: ToolKind.Tap or ToolKind.ThreadMill, Pitch: { } pitch } && pitch < end.Radius
            ? EndForm.Flat(end.Radius - 0.6495 / 2 * pitch)
            : end;
    }
}
