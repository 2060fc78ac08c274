using System.CommandLine;
using NcLanguage.Reports.Figures;

namespace NcLanguage.Cli.Figures;

/// <summary><c>figure speed</c> and <c>figure feed</c>.</summary>
static class SpeedCommands
{
    public static Command Speed()
    {
        var command = new Command("speed", "The spindle speed for a cutting speed or a material, or the cutting speed of a spindle speed.");
        var options = new FigureOptions(command);
        var diameter = options.Above0("--diameter", "LENGTH", "Diameter of the tool.");
        var cutting = options.Above0("--cutting-speed", "SPEED", "Cutting speed.");
        var turns = options.Above0("--turns", "N", "Spindle speed in rev/min: tells the cutting speed.");
        var table = new TableOptions(command);
        options.Answer(values =>
        {
            var size = values.NeedLength(diameter);
            if (values.CuttingSpeed(cutting) is { } speed)
                return SpeedFigures.Speed(speed, size, values.Out);
            if (values.Plain(turns) is { } n)
                return SpeedFigures.SpeedAt(n, size, values.Out);
            return table.IsAsked(values)
                ? SpeedFigures.Speed(table.Speed(values, size), size, values.Out)
                : throw values.Missing("--cutting-speed, --turns or --material");
        });
        return command;
    }

    public static Command Feed()
    {
        var command = new Command("feed", "The feed for a feed per tooth or turn or a material, or the feed per tooth or turn of a feed.");
        var options = new FigureOptions(command);
        var turns = options.Above0("--turns", "N", "Spindle speed in rev/min.");
        var perTooth = options.Above0("--per-tooth", "LENGTH", "Feed per tooth.");
        var perTurn = options.Above0("--per-turn", "LENGTH", "Feed per turn.");
        var feed = options.Above0("--feed", "RATE", "Feed per minute: tells the feed per tooth or turn.");
        var flutes = options.Count("--flutes", "Teeth of the tool.");
        var diameter = options.Above0("--diameter", "LENGTH", "Diameter of the tool, for the cutting data.");
        var table = new TableOptions(command);
        options.Answer(values =>
        {
            var n = values.Need(turns);
            var teeth = (int?)values.Plain(flutes);
            if (values.Length(perTurn) is { } each)
                return SpeedFigures.Feed(n, 1, each, isPerTooth: false, values.Out);
            if (values.Length(perTooth) is { } tooth)
                return SpeedFigures.Feed(n, teeth ?? throw values.Missing("--flutes"), tooth, isPerTooth: true, values.Out);
            if (values.Length(feed) is { } rate)
                return SpeedFigures.FeedOf(rate, n, teeth ?? 1, teeth is not null, values.Out);
            return table.IsAsked(values)
                ? SpeedFigures.Feed(n, table.Feed(values, values.NeedLength(diameter), teeth), values.Out)
                : throw values.Missing("--per-tooth, --per-turn, --feed or --material");
        });
        return command;
    }
}
