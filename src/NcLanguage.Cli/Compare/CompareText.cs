using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Comparison;
using NcLanguage.Cli.Common;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;
using NcLanguage.Reports.Comparison;
using NcLanguage.Reports.Findings;

namespace NcLanguage.Cli.Compare;

/// <summary>A comparison for people: what differs first, then all that differs.</summary>
sealed class CompareText(Screen screen, ComparisonReport report)
{
    /// <summary>Differences shown one by one.</summary>
    const int MostShown = 50;

    readonly LengthText _say = report.Lengths;

    public void Write()
    {
        if (report.IsSame && report.Motion.Compared == 0)
            screen.WriteParagraph($"Neither {report.First.Path} nor {report.Second.Path} moves anything: no move was compared.", 0);
        else if (report.IsSame)
            screen.WriteParagraph($"{report.First.Path} and {report.Second.Path} make the machine do the same{(report.IsWayKnown ? "" : " as far as their way is known")}: {Say.Count(report.Motion.Compared, "move")} compared{Further}.", 0);
        else
            WriteDifferences();
        foreach (var clause in report.NotCompared())
            screen.WriteParagraph($"Not compared: {clause}.", 0);
        screen.WriteParagraph(Caution.Text, 0);
    }

    string Further => report.Motion.First.ProgramsByThemselves is > 0 and var count ? $", those of {Say.Count(count, "further program")} as if begun by {(count == 1 ? "itself" : "themselves")}" : "";

    void WriteDifferences()
    {
        var changes = report.Motion.Changes;
        screen.WriteLine($"- {report.First.Path}", Styles.Heading);
        screen.WriteLine($"+ {report.Second.Path}", Styles.Heading);
        screen.WriteParagraph($"Work coordinates of the tool tip in {_say.UnitWord}, feeds in {_say.FeedUnit}. ? is not known.", 0);
        screen.WriteLine();
        if (changes.Count > 0)
            WriteFirst(changes);
        for (var i = 0; i < changes.Count && i < MostShown; i++)
            WriteChange(changes, i);
        if (changes.Count > MostShown)
            screen.WriteLine($"  … and {Say.Count(changes.Count - MostShown, "further difference")}; --format json has them all.");
        foreach (var hole in report.Holes)
            WriteHole(hole);
        if (report.Motion.First.End != report.Motion.Second.End)
            screen.WriteLine("The two runs do not end alike.");
        screen.WriteLine();
        screen.WriteParagraph(
            $"{Say.Count(changes.Count(change => change.Kind == ChangeKind.Removed), "move")} only in the first, "
            + $"{Say.Count(changes.Count(change => change.Kind == ChangeKind.Added), "move")} only in the second, "
            + $"{Say.Count(changes.Count(change => change.Kind == ChangeKind.Altered), "move")} done otherwise; {Say.Count(report.Holes.Count, "hole")} changed.", 0, Styles.Heading);
    }

    /// <summary>The block of the first difference, and beside it that of the other program, where it does something else there.</summary>
    void WriteFirst(IReadOnlyList<MotionChange> changes)
    {
        var stretch = changes[0].Kind == ChangeKind.Altered ? changes.Take(1) : changes.TakeWhile(change => change.Kind != ChangeKind.Altered);
        var (first, second) = (stretch.Select(change => change.First).FirstOrDefault(motion => motion is not null), stretch.Select(change => change.Second).FirstOrDefault(motion => motion is not null));
        screen.WriteLine("They differ first here:");
        if (first is { } one)
            screen.WriteLine($"  - {one.Line + 1,6}  {TextOf(report.First, one.Line)}");
        if (second is { } other)
            screen.WriteLine($"  + {other.Line + 1,6}  {TextOf(report.Second, other.Line)}");
        screen.WriteLine();
    }

    static string TextOf(ComparedProgram program, int line) => Excerpt.Of(program.Text.Line(line), 0, 0).Text.Trim();

    void WriteChange(IReadOnlyList<MotionChange> changes, int index)
    {
        var change = changes[index];
        if (change.Kind == ChangeKind.Altered)
        {
            screen.WriteLine($"  ~ {change.First!.Value.Line + 1,6}  {Way(change.First.Value)}: {Otherwise(change.First.Value, change.Second!.Value)}");
            return;
        }
        var motion = change.First ?? change.Second!.Value;
        screen.WriteLine($"  {(change.Kind == ChangeKind.Removed ? '-' : '+')} {motion.Line + 1,6}  {Way(motion)}{Apart(motion, LookAlike(changes, index, Way(motion)))}");
    }

    /// <summary>The motion of the other program, of the same stretch of differences, that is told in the same words; null where there is none.</summary>
    Motion? LookAlike(IReadOnlyList<MotionChange> changes, int index, string way)
    {
        var (start, end) = (index, index + 1);
        while (start > 0 && changes[start - 1].Kind != ChangeKind.Altered)
            start--;
        while (end < changes.Count && end - start < 2 * MostShown && changes[end].Kind != ChangeKind.Altered)
            end++;
        for (var i = start; i < end; i++)
            if (changes[i].Kind != changes[index].Kind && (changes[i].First ?? changes[i].Second!.Value) is var other && Way(other) == way)
                return other;
        return null;
    }

    /// <summary>What sets a motion apart from one that leads to the same place at the same feed.</summary>
    string Apart(in Motion motion, Motion? lookAlike)
    {
        if (lookAlike is not { } other)
            return "";
        var said = motion.Tool != other.Tool && motion.Kind != MoveKind.ToolChange ? motion.Tool < 0 ? " with a tool not known" : $" with T{motion.Tool}" : "";
        if (motion.Kind <= MoveKind.Arc && !motion.Coordinates.PlacesAs(other.Coordinates, MotionComparison.UsualTolerance))
            said += $" under {Under(motion.Coordinates)}{(Under(motion.Coordinates) == Under(other.Coordinates) ? " with another datum" : "")}";
        return motion.From.Equals(other.From) ? said : $"{said} {(motion.Kind is MoveKind.Dwell or MoveKind.ToolChange or MoveKind.Stop ? "at" : "from")} {Place(motion.From)}";
    }

    string Under(WorkCoordinates coordinates) => coordinates.IsKnown ? coordinates.Name(_say.IsInch) : "a " + WorkCoordinates.NotKnown;

    string Way(in Motion motion) => motion.Kind switch
    {
        MoveKind.Dwell => $"dwell {Dwell(motion.Dwell)}",
        MoveKind.ToolChange => $"tool change to {(motion.Tool < 0 ? "?" : $"T{motion.Tool}")}",
        MoveKind.Stop => "stop",
        MoveKind.Arc => $"arc {(motion.Clockwise ? "clockwise" : "counterclockwise")} to {Place(motion.To)} about {Place(motion.Center)}",
        MoveKind.Feed => $"feed to {Place(motion.To)} F{_say.FeedNumber(motion.Feed)}",
        _ => $"rapid to {Place(motion.To)}",
    };

    string Otherwise(in Motion a, in Motion b)
    {
        var said = new List<string>();
        if (!a.Feed.Equals(b.Feed))
            said.Add($"F{_say.FeedNumber(a.Feed)} becomes F{_say.FeedNumber(b.Feed)}");
        if (!a.Speed.Equals(b.Speed))
            said.Add($"S{Number(a.Speed)} becomes S{Number(b.Speed)}");
        if (!a.Dwell.Equals(b.Dwell))
            said.Add($"{Dwell(a.Dwell)} become {Dwell(b.Dwell)}");
        if (a.Spindle != b.Spindle && a.Speed.Equals(b.Speed))
            said.Add("the spindle turns otherwise");
        if (a.Coolant != b.Coolant)
            said.Add("the coolant is switched otherwise");
        var (was, now) = (a.Modes, b.Modes);
        if (was.Side != now.Side || was.SideBy != now.SideBy)
            said.Add($"{Beside(was)} becomes {Beside(now)}");
        if (was.Length != now.Length || was.LengthBy != now.LengthBy)
            said.Add($"{Length(was)} becomes {Length(now)}");
        if (!was.CuttingSpeed.Equals(now.CuttingSpeed))
            said.Add($"{CuttingSpeed(was)} becomes {CuttingSpeed(now)}");
        if (was.Corners != now.Corners && was.Corners != PathControl.Unknown && now.Corners != PathControl.Unknown)
            said.Add("corners are taken otherwise");
        if (was.OverridesOff != now.OverridesOff)
            said.Add(now.OverridesOff ? "the override switches do nothing" : "the override switches act");
        if (was.Stop != now.Stop)
            said.Add($"{Stop(was)} becomes {Stop(now)}");
        return string.Join(", ", said);
    }

    static string Beside(in MotionModes modes) => modes.Side switch
    {
        CompensationSide.Left => $"a centre left of the path by D{modes.SideBy}",
        CompensationSide.Right => $"a centre right of the path by D{modes.SideBy}",
        CompensationSide.Off => "a centre on the path",
        _ => "a centre beside the path",
    };

    static string Length(in MotionModes modes) => modes.Length switch
    {
        LengthOffsetMode.Plus => $"the tool length in H{modes.LengthBy}",
        LengthOffsetMode.Minus => $"the tool length in H{modes.LengthBy}, taken away",
        LengthOffsetMode.Off => "no tool length",
        _ => "a tool length that is not known",
    };

    static string CuttingSpeed(in MotionModes modes) => modes.CuttingSpeed == 0 ? "a fixed speed" : $"a cutting speed of {Number(modes.CuttingSpeed)} m/min";

    static string Stop(in MotionModes modes) => modes.Stop < 0 ? "the program's end" : $"M{modes.Stop / 10}";

    void WriteHole(in HoleChange change)
    {
        var row = change.First ?? change.Second!.Value;
        var mark = change.Kind switch { ChangeKind.Altered => '~', ChangeKind.Removed => '-', _ => '+' };
        var place = $"hole {row.Number} (line {row.Line + 1}), G{row.Hole.Cycle} at {_say.Place(row.Hole.X, row.Hole.Y)} to Z{_say.Number(row.Hole.Bottom)}{(report.NamesCoordinates ? $" ({row.Coordinates.Name(_say.IsInch)})" : "")}";
        screen.WriteParagraph($"{mark} {place}{(change.What.Length > 0 ? $": other {change.What}" : "")}", 2, hang: 2);
    }

    string Place(Point3 place) => $"X{_say.Number(place.X)} Y{_say.Number(place.Y)} Z{_say.Number(place.Z)}";

    static string Dwell(double seconds) => double.IsNaN(seconds) ? "?" : Say.Seconds(seconds);

    static string Number(double value) => double.IsNaN(value) ? "?" : Say.Number(value, 3);
}
