using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Clearance;

/// <summary>A place where a tool meets stock that still stands though it must not: a rapid goes into it, a slot mill is lifted under it, or the holder or a thicker shank comes against it.</summary>
/// <param name="Line">The block's line, from 0.</param>
/// <param name="Part">What meets it: the cutting part on a rapid, else shank or holder.</param>
/// <param name="From">Where the tip is when the move begins, in the setup's frame, mm.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Tip">Where the tip is when they meet, as far as that is known; else where the move is deepest.</param>
/// <param name="Depth">The most that anything stands above the end or the underside of what meets it, mm; never too much.</param>
public readonly record struct StockContact(int Line, ToolPart Part, Point3 From, Point3 To, Point3 Tip, double Depth)
{
    /// <summary>All that the checks of rapids and of holders find in the stock, in the order of the run, bounded as they are: of each holder and shank the first in a part of the run.</summary>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static IReadOnlyList<StockContact> Of(ProgramRun run, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(run);
        var contacts = new List<StockContact>();
        var parts = run.StockOf(cancel).Parts;
        for (var part = 0; part < parts.Length; part++)
        {
            var source = parts[part].Source;
            var ofPart = new List<(MoveOrder Order, StockContact Contact)>();
            foreach (ref readonly var met in parts[part].Met.AsSpan())
            {
                ref readonly var rapid = ref source.LowRapids[met.Rapid];
                ofPart.Add((MoveOrder.Of(rapid, met.Rapid), new StockContact(run.LineOf(part, rapid.Line), ToolPart.Cutting, rapid.From, rapid.To, met.Tip, met.Depth)));
            }
            foreach (ref readonly var met in parts[part].Lifts.AsSpan())
            {
                ref readonly var lift = ref source.LowRapids[met.Rapid];
                ofPart.Add((MoveOrder.Of(lift, met.Rapid), new StockContact(run.LineOf(part, lift.Line), ToolPart.Cutting, lift.From, lift.To, lift.From, met.Above)));
            }
            foreach (ref readonly var met in parts[part].Bodies.AsSpan())
            {
                var order = met.Cut >= 0 ? MoveOrder.OfCut(met.Cut) : MoveOrder.Of(source.LowRapids[met.Rapid], met.Rapid);
                var (line, from, to) = met.Cut >= 0 ? WayOf(source.Cuts[met.Cut]) : WayOf(source.LowRapids[met.Rapid]);
                ofPart.Add((order, new StockContact(run.LineOf(part, line), met.Part, from, to, from.Z < to.Z ? from : to, met.Depth)));
            }
            contacts.AddRange(ofPart.OrderBy(contact => contact.Order).Select(contact => contact.Contact));
        }
        return contacts;
    }

    /// <summary>The order of the moves of a part. Lines tell none: a loop comes to them again.</summary>
    /// <param name="Cuts">How many cuts come before it.</param>
    /// <param name="Rapid">Which of the part's low rapids it is; behind all of them for a cut, which follows those that come before it.</param>
    readonly record struct MoveOrder(int Cuts, int Rapid) : IComparable<MoveOrder>
    {
        public static MoveOrder OfCut(int cut) => new(cut, int.MaxValue);

        public static MoveOrder Of(in LowRapid rapid, int index) => new(rapid.CutsBefore, index);

        public int CompareTo(MoveOrder other) => (Cuts, Rapid).CompareTo((other.Cuts, other.Rapid));
    }

    static (int Line, Point3 From, Point3 To) WayOf(in StockCut cut) => (cut.Line, cut.From, cut.To);

    static (int Line, Point3 From, Point3 To) WayOf(in LowRapid rapid) => (rapid.Line, rapid.From, rapid.To);
}
