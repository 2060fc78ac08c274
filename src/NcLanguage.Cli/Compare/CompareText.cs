using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Comparison;
using NcLanguage.Cli.Common;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
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
        if (report.IsSame)
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
            WriteFirst(changes[0]);
        foreach (var change in changes.Take(MostShown))
            WriteChange(change);
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

    void WriteFirst(in MotionChange change)
    {
        screen.WriteLine("They differ first here:");
        if (change.First is { } first)
            screen.WriteLine($"  - {first.Line + 1,6}  {TextOf(report.First, first.Line)}");
        if (change.Second is { } second)
            screen.WriteLine($"  + {second.Line + 1,6}  {TextOf(report.Second, second.Line)}");
        screen.WriteLine();
    }

    static string TextOf(ComparedProgram program, int line) => Excerpt.Of(program.Text.Line(line), 0, 0).Text.Trim();

    void WriteChange(in MotionChange change)
    {
        if (change.Kind == ChangeKind.Altered)
        {
            screen.WriteLine($"  ~ {change.First!.Value.Line + 1,6}  {Way(change.First.Value)}: {Otherwise(change.First.Value, change.Second!.Value)}");
            return;
        }
        var motion = change.First ?? change.Second!.Value;
        screen.WriteLine($"  {(change.Kind == ChangeKind.Removed ? '-' : '+')} {motion.Line + 1,6}  {Way(motion)}");
    }

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
