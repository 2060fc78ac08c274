using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Operations;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Flow;

namespace NcLanguage.Editing;

/// <summary>What a line of text above a block speaks of.</summary>
public enum LensKind
{
    /// <summary>All the program does.</summary>
    Program,

    /// <summary>What is done with the tool changed to here.</summary>
    Tool,

    /// <summary>How often a called program runs.</summary>
    Called,
}

/// <summary>A place for a lens; the line counts from 0.</summary>
/// <param name="Text">What is known without a run of its own.</param>
/// <param name="IsWhole">Whether that is all; else the rest is worked out when it is shown.</param>
public readonly record struct LensPlace(int Line, LensKind Kind, string Text, bool IsWhole);

/// <summary>Short texts above the beginning of the program, each tool, each called program: holes, time, least distance to a clamp, calls.</summary>
public static class Lenses
{
    /// <summary>Blocks between two looks at whether the answer is still wanted.</summary>
    const int BlocksBetweenLooks = 1024;

    /// <summary>Where lenses stand. Nothing runs for it.</summary>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static IReadOnlyList<LensPlace> Of(ProgramAnalysis analysis, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        var places = new List<LensPlace>();
        Add(Outline.Of(analysis, cancel: cancel), places);
        if (places.Exists(place => place.Kind == LensKind.Tool))
            places.Insert(0, new LensPlace(FirstBlock(analysis), LensKind.Program, "", false));
        return places;
    }

    static void Add(IEnumerable<OutlineItem> items, List<LensPlace> places)
    {
        foreach (var item in items)
        {
            if (item.Kind == OutlineKind.Tool)
                places.Add(new LensPlace(item.FirstLine, LensKind.Tool, item.Detail, false));
            else if (item.TellsCalls)
                places.Add(new LensPlace(item.FirstLine, LensKind.Called, item.Detail, true));
            Add(item.Children, places);
        }
    }

    static int FirstBlock(ProgramAnalysis analysis)
    {
        for (var line = 0; line < analysis.Text.LineCount; line++)
            if (analysis.Main.BlockAt(line).Tokens.Length > 0)
                return line;
        return 0;
    }

    /// <summary>The operations of a program, in the order of its run.</summary>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static OperationList Operations(ProgramAnalysis analysis, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        var job = analysis.Main.Job;
        var scan = new OperationScan(job);
        var runner = new FlowRunner(job.Executor, FlowText.Of(analysis.Text, null), job.Programs, job.MostBlocks);
        while (runner.MoveNext())
        {
            if (runner.Blocks % BlocksBetweenLooks == 0)
                cancel.ThrowIfCancellationRequested();
            if ((runner.Step.Events & (StepEvents.NotRun | StepEvents.Skipped)) == 0)
                scan.Add(runner.Text.BlockAt(runner.Line), runner.Step, runner.Line, runner.Text.Name);
        }
        return scan.Finish();
    }

    /// <summary>The whole text of a lens.</summary>
    /// <param name="analysis">The program.</param>
    /// <param name="operations">Its operations.</param>
    /// <param name="place">Of the same program.</param>
    public static string TextOf(ProgramAnalysis analysis, OperationList operations, LensPlace place)
    {
        ArgumentNullException.ThrowIfNull(operations);
        if (place.IsWhole)
            return place.Text;
        // What is called is done with the tool that calls it.
        var mine = place.Kind == LensKind.Program ? operations.Operations.AsEnumerable() : operations.Operations.Where(operation => operation.ChangedAt == place.Line);
        var (holes, seconds, unknown) = (0, 0.0, 0);
        NearestPass? nearest = null;
        foreach (var operation in mine)
        {
            holes += operation.Holes;
            seconds += operation.Totals.Seconds;
            unknown += operation.Totals.UnknownMoves;
            if (operation.Nearest is { } pass && (nearest is null || pass.Distance < nearest.Distance))
                nearest = pass;
        }
        var text = place.Kind != LensKind.Program ? place.Text
            : $"{Say.Count(operations.Tools.Count(tool => tool.Tool > 0), "tool")}, " + (holes > 0 ? Say.Count(holes, "hole") + ", " : "") + (unknown > 0 ? "at least " : "") + Times.Of(seconds);
        return nearest is null ? text : text + Nearest(analysis, nearest, place);
    }

    static string Nearest(ProgramAnalysis analysis, NearestPass pass, LensPlace lens)
    {
        var lengths = Lengths.Of(analysis.Main.StepAt(pass.File is null ? pass.Line : lens.Line).After);
        var name = analysis.Main.Job.Obstacles[pass.Obstacle].Name;
        var place = pass.File is { } file ? $"in {file}, line {pass.Line + 1}" : $"in line {pass.Line + 1}";
        return pass.IsContact ? $", contact with {name} {place}" : $", nearest {lengths.Length(Math.Round(pass.Distance, 2))} to {name} {place}";
    }
}
