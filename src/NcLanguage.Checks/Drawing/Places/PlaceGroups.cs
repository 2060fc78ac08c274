using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Drawing;

/// <summary>A cut at a place that a rule has something to say of, and the earlier or later cut there that it is held against.</summary>
readonly record struct PlaceFault(WorkedPlace Place, PlaceWork Work, PlaceWork Other);

/// <summary>Faults of the same kind at several places: the same two tools to the same depths. They are told once, at the first block.</summary>
static class PlaceGroups
{
    /// <summary>Groups in the order of their first places.</summary>
    public static IEnumerable<List<PlaceFault>> Of(IEnumerable<PlaceFault> faults) =>
        faults.GroupBy(fault => (fault.Work.ToolNumber, Steps(fault.Work.Tip), fault.Other.ToolNumber, Steps(fault.Other.Diameter))).Select(group => group.ToList());

    /// <summary>"at X20 Y12", "at X20 Y12 and 5 more places"; as the program has it.</summary>
    public static string Places(List<PlaceFault> group, LengthText say)
    {
        var shift = group[0].Work.ToFrame;
        var first = "at " + say.Place(group[0].Place.X - shift.X, group[0].Place.Y - shift.Y);
        return group.Count == 1 ? first : $"{first} and {Say.Count(group.Count - 1, "more place")}";
    }

    /// <summary>The places of a run where something is done to holes; none where there are too many to look at each.</summary>
    public static IReadOnlyList<WorkedPlace> PlacesOf(in FileContext file) => file.HasFewHoles ? file.Places.All : [];

    /// <summary>The same; none where no tool of these kinds goes down anywhere, so that nothing is gathered in vain.</summary>
    public static IReadOnlyList<WorkedPlace> PlacesOf(in FileContext file, params ReadOnlySpan<ToolKind?> kinds) =>
        file.HasFewHoles && GoesDown(file.Run, kinds) ? file.Places.All : [];

    static bool GoesDown(ProgramRun run, ReadOnlySpan<ToolKind?> kinds)
    {
        foreach (var part in run.Results)
        {
            if (part.Holes.IsDrilledBy(run.Job.Setup, kinds))
                return true;
            foreach (ref readonly var plunge in part.Plunges.AsSpan())
                if (kinds.Contains(plunge.Tool.Kind))
                    return true;
        }
        return false;
    }

    static long Steps(double mm) => double.IsFinite(mm) ? (long)Math.Round(mm / 0.001) : long.MinValue;
}
