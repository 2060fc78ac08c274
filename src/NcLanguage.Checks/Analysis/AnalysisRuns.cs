using NcLanguage.Control.State;
using NcLanguage.Machine.Profiles;
using NcLanguage.Machine.Setups;
using NcLanguage.Syntax.Text;

namespace NcLanguage.Checks.Analysis;

/// <summary>A program run under the reading in force and, where it may matter, under others.</summary>
/// <param name="Main">Under the reading in force.</param>
/// <param name="OtherSkip">With the block skip switch the other way; null where no block can be skipped.</param>
/// <param name="OtherPositions">With X and Y inside cycles read the other way; null where that is not asked or there are no holes.</param>
/// <param name="OtherReturns">With G98 and G99 acting the other way; null likewise.</param>
public sealed record AnalysisRuns(ProgramRun Main, ProgramRun? OtherSkip, ProgramRun? OtherPositions, ProgramRun? OtherReturns)
{
    public ProgramRun? OtherSkip { get => Known(field, Main.TextFacts.All.HasSkip); init; } = OtherSkip;

    public ProgramRun? OtherPositions { get => Known(field, Main.Job.TellsOtherReadings); init; } = OtherPositions;

    public ProgramRun? OtherReturns { get => Known(field, Main.Job.TellsOtherReadings); init; } = OtherReturns;

    public int BlocksRun =>
        Main.BlocksRun + (OtherSkip?.BlocksRun ?? 0) + (OtherPositions?.BlocksRun ?? 0) + (OtherReturns?.BlocksRun ?? 0);

    internal static AnalysisRuns Create(
        SourceText text, Setup setup, MachineProfile machine, AnalysisOptions options, Rule[] stepRules, Rule[] textRules, CancellationToken cancel)
    {
        var main = ProgramRun.Create(text, NewJob(machine, setup, options.Skip, options), stepRules, textRules, cancel);
        return new AnalysisRuns(main, null, null, null).WithOthers(null, options, stepRules, cancel);
    }

    internal AnalysisRuns WithText(
        SourceText text, AnalysisOptions options, Rule[] stepRules, Rule[] textRules, Action<AnalysisRuns>? onTheWay, CancellationToken cancel)
    {
        var main = Main.WithText(text, stepRules, textRules, cancel, onTheWay is null ? null : run => onTheWay(new AnalysisRuns(run, null, null, null)));
        return new AnalysisRuns(main, null, null, null).WithOthers(this, options, stepRules, cancel);
    }

    // As long as the main run is under way the others have not begun.
    ProgramRun? Known(ProgramRun? run, bool isAsked) => Main.IsWhole || !isAsked ? run : throw new NotYetRunException();

    AnalysisRuns WithOthers(AnalysisRuns? old, AnalysisOptions options, Rule[] stepRules, CancellationToken cancel)
    {
        var hasSkip = Main.TextFacts.All.HasSkip;
        var machine = Main.Job.Machine;
        var asked = Main.PartFacts.All.Holes > 0 && Main.Job.TellsOtherReadings;
        return this with
        {
            OtherSkip = hasSkip
                ? Run(old?.OtherSkip, () => NewJob(machine, Main.Job.Setup, !options.Skip, options), chunk => Main.TextFacts[chunk].HasSkip, stepRules, cancel)
                : null,
            OtherPositions = asked ? Matching(old?.OtherPositions, () => OtherReading(ReadingSwitch.Positions(machine), options), cancel) : null,
            OtherReturns = asked ? Matching(old?.OtherReturns, () => OtherReading(ReadingSwitch.Returns(machine), options), cancel) : null,
        };
    }

    /// <summary>The run under another reading of cycles; null where it goes another way through the program, so that no block answers to one of this run.</summary>
    ProgramRun? Matching(ProgramRun? old, Func<Job> job, CancellationToken cancel)
    {
        var other = Run(old, job, HasCycle, [], cancel);
        return other.Results.Length == Main.Results.Length ? other : null;
    }

    /// <summary>Whether a cycle is in force anywhere in a part.</summary>
    bool HasCycle(int part) => (Main.PartFacts[part].Sets & Slot.Cycle) != 0 || Main.Results[part].Entry.InCycle;

    ProgramRun Run(ProgramRun? old, Func<Job> job, Func<int, bool> isReadOtherwise, Rule[] stepRules, CancellationToken cancel)
    {
        var beside = new RunBeside(Main, isReadOtherwise);
        return old?.WithText(Main.Text, beside, stepRules, cancel) ?? ProgramRun.Create(Main.Text, job(), beside, stepRules, cancel);
    }

    Job OtherReading(MachineProfile machine, AnalysisOptions options) => NewJob(machine, Main.Job.Setup, options.Skip, options, asksOnlyHoles: true);

    static Job NewJob(MachineProfile machine, Setup setup, bool skip, AnalysisOptions options, bool asksOnlyHoles = false) =>
        new(machine, setup, skip, options.Programs, options.MostBlocks, options.WithTwoHands, options.Once)
        {
            TellsOtherReadings = options.Portable || !machine.IsChosen,
            AsksOnlyHoles = asksOnlyHoles,
        };
}

/// <summary>The same machine with one reading turned to its other choice.</summary>
public static class ReadingSwitch
{
    public static MachineProfile Positions(MachineProfile machine) => machine with
    {
        Readings = machine.Readings with
        {
            HolePositions = machine.Readings.HolePositions == HolePositionReading.DistanceMode
                ? HolePositionReading.Incremental
                : HolePositionReading.DistanceMode,
        },
    };

    public static MachineProfile Returns(MachineProfile machine) => machine with
    {
        Readings = machine.Readings with
        {
            ReturnLevel = machine.Readings.ReturnLevel == ReturnLevelReading.AfterHole
                ? ReturnLevelReading.BeforeMove
                : ReturnLevelReading.AfterHole,
        },
    };
}
