using System.Globalization;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Flow;

namespace NcLanguage.Editing;

/// <summary>How often a block runs, and what differs from run to run.</summary>
static class RunsText
{
    /// <summary>What stands before all else that is told of a block; empty for one that runs once.</summary>
    public static string Head(ProgramAnalysis analysis, int line, Step step)
    {
        if (NotReached(analysis, line) is { Length: > 0 } notReached)
            return notReached + " What it would do from a state that is not known:\n\n";
        if (analysis.Main.Flow is not { } flow || flow.RunsOf(line) < 2)
            return "";
        var spans = RunSpans.Of(analysis, flow, line);
        var differences = string.Join(", ", Differences(spans, Lengths.Of(step.After)));
        var isCut = flow.RunsOf(line) > spans.Runs;
        var told = differences.Length == 0 ? "" : (isCut ? $" In the first {Number(spans.Runs)}: " : ": ") + differences;
        var seconds = spans.Seconds > 0 && !isCut ? $" In all {(spans.IsUntimed ? "at least " : "")}{Say.Seconds(spans.Seconds)}." : "";
        return $"**Runs {Number(flow.RunsOf(line))} times**{Within(analysis, flow)}{(isCut ? "." : "")}{told}{(told.Length == 0 && isCut ? "" : ".")}{seconds} The first run:\n\n";
    }

    /// <summary>That the run does not come to a block, and why, where that is known; empty for one that runs.</summary>
    public static string NotReached(ProgramAnalysis analysis, int line)
    {
        if (analysis.Main.Flow is not { } flow || flow.RunsOf(line) > 0 || flow.First[line].Part < 0)
            return "";
        return flow.End switch
        {
            FlowEnd.Endless => "**Not reached**: the run stays in a loop that never ends.",
            FlowEnd.TooLong => $"**Not reached** in the {Number(flow.BlocksFollowed)} blocks that are followed here.",
            FlowEnd.Stopped => "**Not reached**: the run stops before, with an alarm.",
            _ => "**Not reached**: the run does not come to this block.",
        };
    }

    /// <summary>A sentence on the values of something over the runs of a block; empty where it runs once.</summary>
    /// <param name="valueOf">The value at one run; NaN where not known.</param>
    public static string Values(ProgramAnalysis analysis, int line, Func<Step, double> valueOf)
    {
        if (NotReached(analysis, line) is { Length: > 0 } notReached)
            return " " + notReached;
        if (analysis.Main.Flow is not { } flow || flow.RunsOf(line) < 2)
            return "";
        var span = new Span();
        flow.ForEachRun(analysis.Main, line, RunSpans.MostRuns, step => span.Add(valueOf(step)));
        var runs = flow.RunsOf(line);
        var over = runs > RunSpans.MostRuns ? $" In the first {Number(RunSpans.MostRuns)} of its {Number(runs)} runs" : $" Over its {Number(runs)} runs";
        return span switch
        {
            { Different: 0 } => $"{over} it is never known.",
            { Different: 1, HasUnknown: false } => $"{over} it is the same.",
            { Different: 1 } => $"{over} it is {Say.Number(span.Least, 6)} or not known.",
            _ => $"{over}: {Number(span.Different)} values from {Say.Number(span.Least, 6)} to {Say.Number(span.Greatest, 6)}{(span.HasUnknown ? ", at some of them not known" : "")}.",
        };
    }

    /// <summary>12,000</summary>
    public static string Number(int number) => number.ToString("N0", CultureInfo.InvariantCulture);

    static string Within(ProgramAnalysis analysis, FlowRun flow) =>
        flow.End == FlowEnd.TooLong ? $" in the {Number(flow.BlocksFollowed)} blocks that are followed here" : "";

    static IEnumerable<string> Differences(RunSpans spans, Lengths lengths)
    {
        if (spans.Holes > 0)
            yield return Say.Count(spans.Holes, "hole");
        string Axis(char letter, Span span) => $"{letter} from {lengths.Number(span.Least)} to {lengths.Number(span.Greatest)}";
        var (first, second, depth) = spans.HoleLetters;
        (char Letter, Span Span)[] places = spans.Holes > 0
            ? [(first, spans.HoleFirst), (second, spans.HoleSecond)]
            : spans.Moves ? [('X', spans.End(0)), ('Y', spans.End(1)), ('Z', spans.End(2))] : [];
        foreach (var (letter, span) in places)
        {
            if (span.Varies)
                yield return Axis(letter, span);
            if (span.HasUnknown)
                yield return $"{letter} not known at {(span.Different > 0 ? "some" : "any")} of them";
        }
        if (spans.Holes > 0 && spans.Bottom.Varies)
            yield return "bottom " + Axis(depth, spans.Bottom);
        if (spans.Moves && !places.Any(place => place.Span.Varies || place.Span.HasUnknown))
            yield return spans.Holes > 0 ? "at the same place" : "to the same place each time";
        if (spans.Feed.Varies)
            yield return $"feed from {lengths.Feed(spans.Feed.Least)} to {lengths.Feed(spans.Feed.Greatest)}";
        if (spans.Speed.Varies)
            yield return $"speed from S{Say.Number(spans.Speed.Least)} to S{Say.Number(spans.Speed.Greatest)}";
        foreach (var (name, values) in spans.Variables)
            if (values.Varies)
                yield return $"{Markdown.Word(name)} from {Say.Number(values.Least, 6)} to {Say.Number(values.Greatest, 6)}";
            else if (values.HasUnknown)
                yield return $"{Markdown.Word(name)} not known";
    }
}
