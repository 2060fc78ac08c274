using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Drawing;

namespace NcLanguage.Reports.Holes;

/// <summary>The holes of a program, and the drawing's holes beside them where the setup lists any.</summary>
public sealed record HoleReport(string Path, ProgramRun Run, HoleTable Holes, DrawingComparison Drawing)
{
    public static HoleReport Of(string path, ProgramRun run)
    {
        ArgumentNullException.ThrowIfNull(run);
        var holes = HoleTable.Of(run);
        return new HoleReport(path, run, holes, DrawingComparison.Of(run));
    }

    /// <summary>Lengths in the unit that the program ends in.</summary>
    public LengthText Lengths => new(Run.Units);

    /// <summary>Whether the setup lists holes of a drawing.</summary>
    public bool HasDrawing => !Run.Job.Setup.Holes.IsEmpty;

    /// <summary>What a table says of its cells that read "9000→8000".</summary>
    public const string Limits = "9000→8000: the program says 9000, and the machine goes no farther than 8000 or stops with an alarm.";

    /// <summary>1200; 9000→8000 where the machine's limits make another of it; ? where not known.</summary>
    public static string Rate(DrillingRate rate, int decimals) => Rate(rate, value => Say.Number(value, decimals));

    /// <summary>A feed in the same way.</summary>
    public static string Feed(DrillingRate rate, LengthText lengths) => Rate(rate, lengths.RoundedFeed);

    static string Rate(DrillingRate rate, Func<double, string> say) => rate.IsLimited ? $"{say(rate.Programmed)}→{say(rate.Machine)}" : say(rate.Machine);

    /// <summary>drilled, missing, shallow, wrong-size, extra; null where not known.</summary>
    public static string? Word(HoleStatus? status) => status switch
    {
        HoleStatus.Drilled => "drilled",
        HoleStatus.Missing => "missing",
        HoleStatus.Shallow => "shallow",
        HoleStatus.WrongSize => "wrong-size",
        HoleStatus.Extra => "extra",
        _ => null,
    };

    /// <summary>What a hole still wants, and what else a status does not tell, in words; null where there is nothing to add.</summary>
    public static string? Note(DrawingMatch match)
    {
        ArgumentNullException.ThrowIfNull(match);
        return match.Unfinished switch
        {
            HoleUnfinished.SpotOnly => match.Status == HoleStatus.Extra ? "only spotted" : "spotted, never drilled",
            HoleUnfinished.NotDrilled => "tapped, never drilled",
            HoleUnfinished.NotTapped => match.IsHoleShallow ? "drilled, not deep enough, and never tapped" : "drilled, never tapped",
            HoleUnfinished.NotReamed => "drilled, never reamed",
            _ when match is { IsOtherSize: true, IsOtherThread: true } => "another hole and another thread",
            _ when match is { IsOtherThread: true, IsHoleShallow: true } => "another thread, and the hole is not deep enough",
            _ when match.StaysAbove => "the tool stays above the surface",
            _ when match.IsOtherThread => "another thread",
            _ when match is { IsOtherSize: true, IsThreadUndrawn: true } => "another hole, and its thread is not in the drawing",
            _ when match is { IsHoleShallow: true, IsThreadUndrawn: true } => "its thread is not in the drawing, and the hole is not deep enough",
            _ when match.IsThreadUndrawn => "its thread is not in the drawing",
            _ when match.GoesThrough && match.Status == HoleStatus.Drilled => "through, and the drawing's hole is not",
            _ when match.IsTooDeep => "deeper than drawn",
            _ when match.IsThreadUnread && match.Status == HoleStatus.Drilled => "size of its thread not checked",
            _ when match is { IsHoleShallow: true, IsThreadShort: true } => "hole and thread are too short",
            _ when match.IsThreadShort => "its thread is too short",
            _ when match is { MayBeBoss: true, Status: not HoleStatus.Missing } => "a circle is milled, its middle is not",
            _ => null,
        };
    }

    /// <summary>How deep a cut is, mm: where only a drill's point goes in, nothing of it is at full diameter.</summary>
    public static double Depth(double depth) => Math.Max(0, depth);

    /// <summary>tapped, thread milled; null where no thread is cut.</summary>
    public static string? WordOfThread(ThreadMaking making) => making switch
    {
        ThreadMaking.Tapped => "tapped",
        ThreadMaking.Milled => "thread milled",
        _ => null,
    };

    /// <summary>drilled, reamed, bored, milled; null where nothing is made.</summary>
    public static string? Word(HoleMaking making) => making switch
    {
        HoleMaking.Drilled => "drilled",
        HoleMaking.Reamed => "reamed",
        HoleMaking.Bored => "bored",
        HoleMaking.Milled => "milled",
        _ => null,
    };
}
