using System.Collections.Immutable;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Flow;
using NcLanguage.Machine.Files;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Drawing;

/// <summary>What the rules on the drawing ask: may they speak at all, of which holes, and where what they find stands.</summary>
/// <remarks>They speak only where the setup lists holes, where each place that the program drills at is known, and where the run comes to the program's end.
/// A setup that several programs share lists holes that another of them may make: there a hole that is not made, or not finished, counts only where the program
/// makes others of the same size.</remarks>
sealed class DrawingFindings
{
    /// <summary>Holes that the rules hold against a drawing; a program with more is compared in the hole table alone.</summary>
    public const int MostHoles = 20_000;

    DrawingFindings(ProgramRun run, ImmutableArray<DrawingMatch> matches)
    {
        Run = run;
        Matches = matches;
        IsShared = Path.GetFileName(run.Job.Setup.Path) == SetupLocator.SharedSetupName;
        _kin = [.. matches.Where(match => match.Status == HoleStatus.Drilled).Select(match => KinOf(match.Wanted!))];
        Misplaced = MisplacedHoles.Of(
            matches.Where(match => match.Status == HoleStatus.Missing && !MayBeDoneElsewhere(match)), matches.Where(match => match.Status == HoleStatus.Extra));
    }

    readonly HashSet<(double? Diameter, double? Depth, string? Thread)> _kin;

    public ProgramRun Run { get; }

    /// <summary>Empty where nothing may be said.</summary>
    public ImmutableArray<DrawingMatch> Matches { get; }

    /// <summary>Holes that are missing, each with one of its size that is drilled where the drawing has none.</summary>
    public IReadOnlyDictionary<DrawingMatch, DrawingMatch> Misplaced { get; }

    /// <summary>Whether other programs have the same setup.</summary>
    public bool IsShared { get; }

    public static DrawingFindings Of(ProgramRun run, Func<WorkedPlaces> places) =>
        new(run, MaySpeak(run) && DrawingComparison.Of(run, places()) is { AreAllPlacesKnown: true } comparison ? comparison.Matches : []);

    static bool MaySpeak(ProgramRun run)
    {
        if (run.Job.Setup.Holes.IsEmpty || run.Results[0].Entry.IsCalled || run.Flow is { End: not (FlowEnd.Ended or FlowEnd.OffTheEnd) })
            return false;
        var holes = 0;
        foreach (var part in run.Results)
            holes += part.Holes.Length;
        return holes <= MostHoles;
    }

    /// <summary>Whether another program that shares the setup may do what this one leaves undone.</summary>
    public bool MayBeDoneElsewhere(DrawingMatch match) => IsShared && !_kin.Contains(KinOf(match.Wanted!));

    /// <summary>What a finding adds where the setup is shared.</summary>
    public string Sharing => IsShared ? $" (Unless another program that shares {SetupLocator.SharedSetupName} does it.)" : "";

    /// <summary>Matches that one cause explains, in the order of the run: the same tool does the same to the same depth for holes of one size.</summary>
    public static IEnumerable<List<DrawingMatch>> Groups(IEnumerable<DrawingMatch> matches) =>
        matches.GroupBy(match => (KinOf(match), match.Work?.ToolNumber, match.Work?.Cycle, Steps(match.Work?.Tip), Steps(match.Diameter), match.IsOtherThread))
            .Select(group => group.ToList());

    /// <summary>The place of a hole as the program has it, X20 Y12.</summary>
    public static string Place(DrawingMatch match, LengthText say)
    {
        var shift = match.Work?.ToFrame ?? default;
        return say.Place(match.X - shift.X, match.Y - shift.Y);
    }

    /// <summary>X20 Y12, X40 Y12, X60 Y12 and 5 more</summary>
    public static string PlacesOf(IReadOnlyList<DrawingMatch> matches, LengthText say)
    {
        const int Most = 4;
        var named = string.Join(", ", matches.Take(Most).Select(match => Place(match, say)));
        return matches.Count > Most ? $"{named} and {matches.Count - Most} more" : named;
    }

    /// <summary>"The hole at X20 Y12 is", "The 3 holes at X20 Y12, X40 Y12, X60 Y12 are".</summary>
    public static string Subject(IReadOnlyList<DrawingMatch> matches, LengthText say) => matches.Count == 1
        ? $"The hole at {PlacesOf(matches, say)} is"
        : $"The {matches.Count} holes at {PlacesOf(matches, say)} are";

    /// <summary>6.8 mm; M8; 6.8 mm, 15 mm deep</summary>
    public static string Size(DrawingHole wanted, LengthText say, bool withDepth = false)
    {
        var size = wanted.Thread ?? (wanted.Diameter is { } diameter ? say.Length(diameter) : "any size");
        return withDepth && wanted.Depth is { } depth ? $"{size}, {say.Length(depth)} deep" : size;
    }

    static (double? Diameter, double? Depth, string? Thread) KinOf(DrawingHole wanted) => (wanted.Diameter, wanted.Depth, wanted.Thread);

    static (double? Diameter, double? Depth, string? Thread)? KinOf(DrawingMatch match) => match.Wanted is { } wanted ? KinOf(wanted) : null;

    static long Steps(double? mm) => mm is { } value && double.IsFinite(value) ? (long)Math.Round(value / 0.001) : long.MinValue;
}
