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

    AnalysisRuns WithOthers(AnalysisRuns? old, AnalysisOptions options, Rule[] stepRules, CancellationToken cancel)
    {
        var hasSkip = Main.TextFacts.All.HasSkip;
        var machine = Main.Job.Machine;
        var asked = Main.PartFacts.All.Holes > 0 && Main.Job.TellsOtherReadings;
        return this with
        {
            OtherSkip = hasSkip ? Run(old?.OtherSkip, () => NewJob(machine, Main.Job.Setup, !options.Skip, options), stepRules, cancel) : null,
            OtherPositions = asked ? Matching(old?.OtherPositions, () => OtherReading(ReadingSwitch.Positions(machine), options), [], cancel) : null,
            OtherReturns = asked ? Matching(old?.OtherReturns, () => OtherReading(ReadingSwitch.Returns(machine), options), [], cancel) : null,
        };
    }

    /// <summary>The run under another reading; null where it goes another way through the program, so that no block answers to one of this run.</summary>
    ProgramRun? Matching(ProgramRun? old, Func<Job> job, Rule[] stepRules, CancellationToken cancel)
    {
        var other = Run(old, job, stepRules, cancel);
        return other.Results.Length == Main.Results.Length ? other : null;
    }

    ProgramRun Run(ProgramRun? old, Func<Job> job, Rule[] stepRules, CancellationToken cancel) =>
        old?.WithText(Main.Text, stepRules, [], cancel) ?? ProgramRun.Create(Main.Text, job(), stepRules, [], cancel);

    Job OtherReading(MachineProfile machine, AnalysisOptions options) => NewJob(machine, Main.Job.Setup, options.Skip, options);

    static Job NewJob(MachineProfile machine, Setup setup, bool skip, AnalysisOptions options) => new(machine, setup, skip, options.Programs, options.MostBlocks, options.WithTwoHands, options.Once)
    {
        TellsOtherReadings = options.Portable || !machine.IsChosen,
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
