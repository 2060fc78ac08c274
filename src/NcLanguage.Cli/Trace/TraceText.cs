using System.Text;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Cli.Common;
using NcLanguage.Control.Execution;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Reports.Findings;
using NcLanguage.Reports.Trace;
using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Cli.Trace;

/// <summary>A trace for a setter to read, in the unit that the program is written in: under each block its moves, with where to, feed, time and clearance.</summary>
sealed class TraceText(Screen screen, LoadedProgram program)
{
    /// <summary>Places that a move takes with its clearance beside it, about.</summary>
    const int WideRow = 112;

    readonly StringBuilder _row = new();
    bool _namesCoordinates;
    WorkCoordinates? _coordinates;
    LengthText _say;

    /// <summary>Whether the clearance stands below its move: a terminal of the usual width would break the row somewhere.</summary>
    bool IsNarrow => screen.Width < WideRow;

    public void Write(CancellationToken cancel)
    {
        screen.WriteLine($"{program.File.Path}, read for {program.Job.Machine.Name}", Styles.Heading);
        var run = ProgramRun.Create(program.File.Text, program.Job, [], [], cancel);
        _say = new LengthText(run.Units);
        screen.WriteParagraph($"Work coordinates of the tool tip in {_say.UnitWord}, feeds in {_say.FeedUnit}. ? is not known.", 0);
        screen.WriteLine();
        _namesCoordinates = run.NamesCoordinates;
        var (operations, totals) = OperationRun.Of(run, WriteStep, cancel);
        screen.WriteLine();
        var summary = new OperationText(screen, program.Job, operations, run.NamesCoordinates, _say);
        summary.WriteOperations();
        if (TraceJson.CutShort(totals.End) is { } cutShort)
            screen.WriteParagraph($"The trace stops here before the program does: {cutShort}. check tells where.", 0);
        screen.WriteParagraph(
            $"{Say.Seconds(totals.Seconds)} in all; {summary.Distances(totals)}."
            + (totals.UnknownMoves > 0 ? $" {Say.Count(totals.UnknownMoves, "move")} of unknown length or time not counted." : ""),
            0,
            Styles.Heading);
        foreach (var clause in NotChecked.Of(program.Job.Setup).Where(clause => clause.StartsWith("clearance", StringComparison.Ordinal)))
            screen.WriteParagraph($"Not shown: {clause}.", 0);
        summary.WriteReturns();
        summary.WriteApproaches();
        screen.WriteParagraph(Caution.Text, 0);
    }

    void WriteStep(in Block block, in TracedStep step)
    {
        screen.Write($"{step.Line + 1,6}  ");
        screen.WriteLine(Excerpt.Of(block.Line, 0, 0).Text.Trim() + (step.File is { } file ? $"  in {file}" : ""), Styles.Heading);
        WriteCoordinates(step.Step);
        for (var i = 0; i < step.Step.Moves.Count; i++)
            WriteMove(step, i);
    }

    /// <summary>Which coordinates the places from here on are meant in, wherever they are others than before.</summary>
    void WriteCoordinates(Step step)
    {
        ref readonly var state = ref step.After;
        if (!_namesCoordinates || state.Ended)
            return;
        // Before the program sets a work offset its name matters to moves alone.
        if (!state.HasSet(Slot.WorkOffset) && (step.Events & StepEvents.Moves) == 0)
            return;
        var now = _coordinates?.In(state) ?? WorkCoordinates.Of(state);
        if (!now.Equals(_coordinates))
            screen.WriteLine($"          work coordinates from here on: {now.Name(_say.IsInch)}");
        _coordinates = now;
    }

    void WriteMove(in TracedStep step, int index)
    {
        ref readonly var move = ref step.Step.Moves[index];
        // A way of no length is no move a setter would see.
        if (move.IsMotion && move.Length == 0)
            return;
        var (kind, place, feed) = IsNarrow ? (25, 25, 7) : (26, 30, 9);
        _row.Clear().Append("          ").Append(KindOf(move, step).PadRight(kind));
        _row.Append(' ').Append((move.IsMotion ? PlaceOf(move.To) : "").PadRight(place)).Append(' ').Append((move.IsFeed ? "F" + _say.RoundedFeed(move.Feed) : "").PadRight(feed));
        if (!(move.Seconds == 0))
            _row.Append($" {(double.IsNaN(move.Seconds) ? "?" : Say.Seconds(move.Seconds)),10}");
        screen.Write(_row.ToString().TrimEnd());
        if (step.ApproachOf(index) is { } approach)
        {
            if (IsNarrow)
                screen.WriteLine();
            screen.Write(IsNarrow ? new string(' ', 36) : "  ");
            if (double.IsNaN(approach.Distance))
                screen.Write("clearance not known");
            else if (step.NameOf(approach) is { } name)
            {
                if (ContactText.IsContact(approach.Distance))
                    screen.Write($"MEETS {name}, {(step.IsToolKnown ? ContactText.Depth(approach.Distance, _say) : "even with its axis alone")}", Styles.Wrong);
                else
                    screen.Write($"{_say.Length(approach.Distance)} to {name}");
            }
        }
        screen.WriteLine();
    }

    string PlaceOf(Point3 place) => $"X{_say.Number(place.X)} Y{_say.Number(place.Y)} Z{_say.Number(place.Z)}";

    static string KindOf(in Move move, in TracedStep step) => (move.Kind, move.Role) switch
    {
        (MoveKind.Rapid, MoveRole.Lift) => "rapid lift to",
        (MoveKind.Rapid, MoveRole.FirstTraverse) => "rapid to the first hole",
        (MoveKind.Rapid, MoveRole.Hop) => "rapid to the next hole",
        (MoveKind.Rapid, MoveRole.Approach) => "rapid to the R level",
        (MoveKind.Rapid, MoveRole.InHole) => "rapid in the hole to",
        (MoveKind.Rapid, MoveRole.Return) => "rapid back to",
        (MoveKind.Feed, MoveRole.Return) => "feed back to",
        (MoveKind.Feed, MoveRole.InHole) => "feed in the hole to",
        (MoveKind.Rapid, _) => "rapid to",
        (MoveKind.Feed, MoveRole.Probe) => "probe move towards",
        (MoveKind.Feed, _) => "feed to",
        (MoveKind.Arc, _) => move.Clockwise ? "arc clockwise to" : "arc counterclockwise to",
        (MoveKind.Dwell, _) => "dwell",
        (MoveKind.Spindle, MoveRole.InHole or MoveRole.Return) => "spindle stops or reverses",
        (MoveKind.Spindle, _) => SpindleOf(step.Step.After),
        (MoveKind.Coolant, _) => CoolantOf(step.Step.After.Coolant),
        (MoveKind.ToolChange, _) => step.Step.After.Tool < 0 ? "tool change" : $"tool change to T{step.Step.After.Tool}",
        _ => "stop",
    };

    static string SpindleOf(in ControlState state) => state.Spindle switch
    {
        SpindleState.Clockwise => $"spindle clockwise S{Say.Number(state.Speed)}",
        SpindleState.Counterclockwise => $"spindle counterclockwise S{Say.Number(state.Speed)}",
        SpindleState.Off => "spindle off",
        _ => "spindle",
    };

    static string CoolantOf(CoolantState coolant) => coolant switch
    {
        CoolantState.Off => "coolant off",
        CoolantState.Unknown => "coolant",
        _ => "coolant on",
    };
}
