using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Rules;

/// <summary>A hole that ends above the stock.</summary>
public sealed class HoleAboveStock : Rule
{
    /// <summary>A bottom below the stock's top by no more than this counts as at the top, mm.</summary>
    const double Tolerance = 0.001;

    public override RuleInfo Info { get; } = new()
    {
        Id = "NC3062",
        Name = "hole-above-stock",
        Severity = Severity.Warning,
        Title = "A hole ends above the stock",
        Finds = "A hole over the setup's stock whose bottom is at or above the stock's top, where no other hole of the program goes into the stock. Once for each run of holes and depth.",
        AtTheMachine = "The tool drills air: the hole is missing in the part, and the tool that comes next, a tap or a reamer, meets full material.",
        Example = CycleExample.Program("""
            G98 G81 X12 Y20 Z1 R2 F120
            ~^^^^^^^^^^^^^^^^^^^^^^^^^
            X40
            """),
        Instead = CycleExample.Program("""
            G98 G81 X12 Y20 Z-1 R2 F120
            X40
            """),
        Setup = CycleExample.Drill,
        NotFound = "Holes beside the stock, along another axis than Z, or bored upwards (G87).",
        Source = "Common practice.",
    };

    public override bool ReadsFile => true;

    public override void CheckFile(in FileContext file)
    {
        if (file.Run.Job.Setup.Stock is not { } stock)
            return;
        HashSet<(long, long)>? drilled = null;
        var reported = double.NaN;
        for (var part = 0; part < file.Run.Results.Length; part++)
        {
            var result = file.Run.Results[part];
            if (!(result.Holes.HighestBottom >= stock.Max.Z - Tolerance))
            {
                // The run of holes goes on behind a part of it that has none such.
                reported = result.Holes.BeginsRun ? double.NaN : reported;
                continue;
            }
            for (var i = 0; i < result.Holes.Length; i++)
            {
                var hole = result.Holes[i];
                if (!hole.Hole.IsHop)
                    reported = double.NaN;
                var place = hole.PlaceAt(hole.Hole.Bottom);
                if (!IsAbove(hole, place, stock) || place.Z == reported)
                    continue;
                drilled ??= PlacesDrilled(file.Run, stock);
                var step = result.Holes.PlaceOf(i);
                if (drilled.Contains((step.X, step.Y)))
                    continue;
                reported = place.Z;
                var line = file.Run.LineOf(part, hole.Line);
                // Levels that a forgotten G91 makes: incremental-left-on.
                // And those of an R that is a distance: initial-level-below-r.
                if (IncrementalLeftOn.HasMoved(file.Run.StateBefore(line)) || CycleRuns.IsRDistance(file.Run.StepAt(line)))
                    continue;
                file.ReportBlock(this, line, Message(file.SayAt(line, result.CoordinatesAt(hole.Line)), hole, place.Z - stock.Max.Z));
            }
        }
    }

    static bool IsAbove(in HoleResult hole, Point3 place, Box3 stock) =>
        hole.Plane == WorkPlane.XY && hole.Hole.Cycle != 87 && hole.Hole.RLevel > hole.Hole.Bottom && place.Z >= stock.Max.Z - Tolerance
        && Footprint.Distance(stock, place.X, place.Y) <= 0;

    static HashSet<(long, long)> PlacesDrilled(ProgramRun run, Box3 stock)
    {
        var places = new HashSet<(long, long)>();
        foreach (var result in run.Results)
            for (var i = 0; i < result.Holes.Length; i++)
                if (result.Holes.PlaceOf(i) is { IsPlaced: true } place && place.Bottom * HolePlace.Step < stock.Max.Z - Tolerance)
                    places.Add((place.X, place.Y));
        return places;
    }

    static string Message(LengthText say, in HoleResult hole, double above) => above > Tolerance
        ? $"The hole ends at {say.Level(hole.Hole.Bottom)}, {say.Length(above)} above the stock: a minus sign forgotten?"
        : $"The hole ends at {say.Level(hole.Hole.Bottom)}, at the top of the stock, and drills nothing: a depth forgotten?";
}
