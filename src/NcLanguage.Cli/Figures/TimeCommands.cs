using System.CommandLine;
using NcLanguage.Reports.Figures;

namespace NcLanguage.Cli.Figures;

/// <summary><c>figure dwell</c> and <c>figure time</c>.</summary>
static class TimeCommands
{
    public static Command Dwell()
    {
        var command = new Command("dwell", "The dwell for a number of turns, in seconds and milliseconds, or the turns in a dwell.");
        var options = new FigureOptions(command);
        var speed = options.Above0("--speed", "N", "Spindle speed in rev/min.");
        var turns = options.Above0("--turns", "N", "Turns of the spindle.");
        var seconds = options.Above0("--seconds", "TIME", "A dwell in seconds: tells the turns.");
        options.Answer(values =>
        {
            var n = values.Need(speed);
            if (values.Plain(turns) is { } count)
                return SpeedFigures.Dwell(count, n);
            return values.Plain(seconds) is { } time ? SpeedFigures.TurnsOf(time, n) : throw values.Missing("--turns or --seconds");
        });
        return command;
    }

    public static Command Time()
    {
        var command = new Command("time", "The time to drill a hole at one stroke.");
        var options = new FigureOptions(command);
        var depth = options.Above0("--depth", "LENGTH", "Depth at full diameter.");
        var diameter = options.Above0("--diameter", "LENGTH", "Diameter of the drill.");
        var angle = options.Number("--angle", "DEGREES", "Included angle of the point. Without it: 118.", 1, 180);
        var feed = options.Above0("--feed", "RATE", "Feed per minute.");
        var speed = options.Above0("--speed", "N", "Spindle speed in rev/min, with --per-turn.");
        var perTurn = options.Above0("--per-turn", "LENGTH", "Feed per turn.");
        options.Answer(values =>
        {
            var rate = values.Length(feed) ?? values.Plain(speed) * values.Length(perTurn) ?? throw values.Missing("--feed, or --speed and --per-turn");
            return SpeedFigures.Time(values.NeedLength(depth), values.NeedLength(diameter), values.Plain(angle) ?? ShapeCommands.UsualPoint, rate, values.Out);
        });
        return command;
    }
}
