using System.Collections.Immutable;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Rules;
using NcLanguage.Control.Flow;
using NcLanguage.Machine.Files;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Drawing;

/// <summary>What the rules on the drawing ask: may they speak at all, of which holes, and where what they find stands.</summary>
/// <remarks>They speak only where the setup lists holes, where each place that the program drills at is known, and where the run comes to the program's end.
/// A setup that several programs share lists holes that another of them may make: there a hole that is not made, or not finished, counts only where the program
/// makes others of the same size. One cause is one finding: what an error at the block concerned explains is not told again (<see cref="HoleCauses"/>).</remarks>
sealed class DrawingFindings
{
    /// <summary>Holes that the rules hold against a drawing; a program with more is compared in the hole table alone.</summary>
    public const int MostHoles = 20_000;

    readonly HashSet<(double? Diameter, double? Depth, string? Thread)> _kin;
    readonly HashSet<int> _errors;

    DrawingFindings(ProgramRun run, ImmutableArray<DrawingMatch> matches, HashSet<int> errors)
    {
        Run = run;
        Matches = matches;
        _errors = errors;
        IsShared = run.Job.Setup.IsShared;
        _kin = [.. matches.Where(match => match.Status == HoleStatus.Drilled).Select(match => KinOf(match.Wanted!))];
        Misplaced = MisplacedHoles.Of(
            matches.Where(match => match.Wanted is not null && !MayBeDoneElsewhere(match)), matches.Where(match => match.Status == HoleStatus.Extra), run.Job,
            match => _kin.Contains(KinOf(match.Wanted!)));
    }

    public ProgramRun Run { get; }

    /// <summary>Empty where nothing may be said.</summary>
    public ImmutableArray<DrawingMatch> Matches { get; }

    /// <summary>Holes that are missing, too small or not tapped, each with one of its size that is made where the drawing has none.</summary>
    public IReadOnlyDictionary<DrawingMatch, DrawingMatch> Misplaced { get; }

    /// <summary>Whether other programs have the same setup.</summary>
    public bool IsShared { get; }

    /// <param name="found">What the other rules have found: an error that changes where holes are, or how deep, is not told a second time here.</param>
    public static DrawingFindings Of(ProgramRun run, IEnumerable<Finding> found, Func<WorkedPlaces> places)
    {
        if (!MaySpeak(run) || places() is not { AreAllKnown: true } all)
            return new DrawingFindings(run, [], []);
        var errors = new HashSet<int>();
        foreach (var finding in found)
        {
            if (finding.Rule is DepthChangedInCycle)
                return new DrawingFindings(run, [], []);
            if (finding.Severity == Severity.Error && HoleCauses.MayBe(finding.Rule))
                errors.Add(finding.Line);
        }
        return new DrawingFindings(run, DrawingComparison.Of(run, all).Matches, errors);
    }

    static bool MaySpeak(ProgramRun run)
    {
        if (run.Job.Setup.Holes.IsEmpty || run.Results[0].Entry.IsCalled || run.Flow is { End: not (FlowEnd.Ended or FlowEnd.OffTheEnd) })
            return false;
        return IsFewEnough(run);
    }

    /// <summary>Whether a program makes few enough holes to look at each place of them whenever it is edited.</summary>
    public static bool IsFewEnough(ProgramRun run)
    {
        var holes = 0;
        foreach (var part in run.Results)
        {
            holes += part.Holes.Length + part.Plunges.Length + part.Rounds.Length;
            if (holes > MostHoles)
                return false;
        }
        return true;
    }

    /// <summary>Whether an error at the block says already what is wrong with its hole.</summary>
    public bool IsExplained(DrawingMatch match) => match.Work is { } work && _errors.Contains(work.Line);

    /// <summary>Whether another program that shares the setup may do what this one leaves undone.</summary>
    public bool MayBeDoneElsewhere(DrawingMatch match) => IsShared && !_kin.Contains(KinOf(match.Wanted!));

    /// <summary>What a finding adds where the setup is shared.</summary>
    public string Sharing => IsShared ? $" (Unless another program that shares {SetupLocator.SharedSetupName} does it.)" : "";

    /// <summary>The matches that a rule is to tell of: not those whose hole is made elsewhere by mistake, nor those that an error explains.</summary>
    public IEnumerable<DrawingMatch> Where(Func<DrawingMatch, bool> isIt) =>
        Matches.Where(match => isIt(match) && !Misplaced.ContainsKey(match) && !IsExplained(match));

    /// <summary>The same for what is wrong with threads: each with the cut of the thread as the work that decides.</summary>
    public IEnumerable<DrawingMatch> WhereThread(Func<DrawingMatch, bool> isIt) =>
        Matches.Where(match => isIt(match) && !Misplaced.ContainsKey(match)).Select(match => match with { Work = match.ThreadWork }).Where(match => !IsExplained(match));

    /// <summary>Matches that one cause explains, in the order of the run: the same tool does the same to the same depth for holes of one size.</summary>
    public static IEnumerable<List<DrawingMatch>> Groups(IEnumerable<DrawingMatch> matches) =>
        matches.GroupBy(match => (KinOf(match), match.Work?.ToolNumber, match.Work?.Cycle, Steps(match.Work?.Tip), Steps(match.Diameter), match.IsOtherThread, Steps(match.Work?.ThreadPitch)))
            .Select(group => group.ToList());

    /// <summary>The place of a hole as the program has it, X20 Y12; in the coordinates of <paramref name="say"/> where the program does nothing there.</summary>
    static string Place(DrawingMatch match, LengthText say)
    {
        if (match.Work is not { } work)
            return say.Place(match.X, match.Y);
        return (say with { Coordinates = say.Coordinates is null ? null : work.Coordinates }).Place(match.X - work.ToFrame.X, match.Y - work.ToFrame.Y);
    }

    /// <summary>X20 Y12, X40 Y12, X60 Y12 and 5 more</summary>
    public static string PlacesOf(IReadOnlyList<DrawingMatch> matches, LengthText say)
    {
        const int Most = 4;
        // Places that share their coordinates have the name behind the last of them.
        var areMixed = matches.Any(match => !Equals(match.Work?.Coordinates, matches[0].Work?.Coordinates));
        var shown = Math.Min(matches.Count, Most);
        var named = string.Join(", ", matches.Take(Most).Select((match, i) => Place(match, areMixed || i == shown - 1 ? say : say.Unnamed)));
        return matches.Count > Most ? $"{named} and {matches.Count - Most} more" : named;
    }

    /// <summary>"The hole at X20 Y12 is", "The 3 holes at X20 Y12, X40 Y12, X60 Y12 are".</summary>
    public static string Subject(IReadOnlyList<DrawingMatch> matches, LengthText say, string article = "The") => matches.Count == 1
        ? $"{article} hole at {PlacesOf(matches, say)} is"
        : $"{article} {matches.Count} holes at {PlacesOf(matches, say)} are";

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
