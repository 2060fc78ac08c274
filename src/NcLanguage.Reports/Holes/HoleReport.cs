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
        return new HoleReport(path, run, holes, DrawingComparison.Of(holes, run.Job));
    }

    /// <summary>Whether the setup lists holes of a drawing.</summary>
    public bool HasDrawing => !Run.Job.Setup.Holes.IsEmpty;

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
}
