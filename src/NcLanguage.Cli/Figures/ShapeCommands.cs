using System.CommandLine;
using NcLanguage.Checks.Cutting;
using NcLanguage.Cli.Common;
using NcLanguage.Reports.Figures;

namespace NcLanguage.Cli.Figures;

/// <summary><c>figure spot</c>, <c>point</c>, <c>tap</c>, <c>peck</c> and <c>chord</c>.</summary>
static class ShapeCommands
{
    /// <summary>The point of a usual twist drill, degrees.</summary>
    public const double UsualPoint = 118;

    public static Command Spot()
    {
        var command = new Command("spot", "The depth for a spot's or countersink's diameter, or the diameter at a depth.");
        var options = new FigureOptions(command);
        var angle = options.Number("--angle", "DEGREES", "Included angle of the point. Without it: 90.", 1, 179);
        var diameter = options.Above0("--diameter", "LENGTH", "Wanted diameter: tells the depth.");
        var depth = options.Above0("--depth", "LENGTH", "Depth: tells the diameter.");
        var flat = options.Above0("--flat", "LENGTH", "Diameter of a flat at the tip; or of the hole that is sunk, for the way from touching its rim.");
        options.Answer(values =>
        {
            var (cone, tip) = (values.Plain(angle) ?? 90, values.Length(flat) ?? 0);
            if (values.Length(diameter) is { } wanted)
                return wanted > tip ? ShapeFigures.SpotDepth(wanted, cone, tip, values.Out) : throw new CannotRunException("--diameter must be greater than --flat");
            return values.Length(depth) is { } z ? ShapeFigures.SpotDiameter(z, cone, tip, values.Out) : throw values.Missing("--diameter or --depth");
        });
        return command;
    }

    public static Command Point()
    {
        var command = new Command("point", "The length of a drill's point, and how deep it goes for a through hole.");
        var options = new FigureOptions(command);
        var diameter = options.Above0("--diameter", "LENGTH", "Diameter of the drill.");
        var angle = options.Number("--angle", "DEGREES", "Included angle of the point. Without it: 118.", 1, 180);
        var thickness = options.Above0("--thickness", "LENGTH", "Thickness of the part: tells the depth of the tip.");
        var beyond = options.Number("--beyond", "LENGTH", "How far the full diameter is to go beyond the part. Without it: 0.", 0);
        options.Answer(values => ShapeFigures.Point(
            values.NeedLength(diameter), values.Plain(angle) ?? UsualPoint, values.Length(thickness), values.Length(beyond) ?? 0, values.Out));
        return command;
    }

    public static Command Tap()
    {
        var command = new Command("tap", "The tap drill of a thread, how much thread a drill leaves, and the tap's feed.");
        var name = new Argument<string>("THREAD") { Description = "Such as M8, M10x1.25, 1/4-20." };
        command.Add(name);
        var options = new FigureOptions(command);
        var drill = options.Above0("--drill", "LENGTH", "A drill to judge instead of the table's.");
        var speed = options.Above0("--speed", "N", "Spindle speed in rev/min: tells the feed.");
        var percent = options.Above0("--percent", "N", "Per cent of thread: tells the hole for it.");
        options.Answer(values =>
        {
            var written = values.Parse.GetValue(name)!;
            var thread = Threads.Find(written)
                ?? throw new CannotRunException($"no thread {written} is known; known are {Threads.Coarse[0].Name} to {Threads.Coarse[^1].Name}, coarse (other pitches as M10x1.25) and {Threads.InchSeries[0].Name} to {Threads.InchSeries[^1].Name}");
            if (values.Length(drill) >= thread.Major)
                throw new CannotRunException("--drill must be less than the thread's major diameter");
            if (values.Plain(percent) > 100)
                throw new CannotRunException("--percent must be 100 at most");
            return ShapeFigures.Tap(thread, values.Length(drill), values.Plain(speed), values.Out, values.Plain(percent));
        });
        return command;
    }

    public static Command Peck()
    {
        var command = new Command("peck", "The strokes of a peck cycle, or what the depth of a hole asks for.");
        var options = new FigureOptions(command);
        var rLevel = options.Number("--from", "LEVEL", "R level.");
        var bottom = options.Number("--to", "LEVEL", "Bottom of the hole.");
        var step = options.Above0("--step", "LENGTH", "Depth of a peck, Q.");
        var depth = options.Above0("--depth", "LENGTH", "Depth of the hole, with --diameter.");
        var diameter = options.Above0("--diameter", "LENGTH", "Diameter of the drill: tells what a deep hole asks for.");
        options.Answer(values =>
        {
            if (values.Length(depth) is { } deep)
                return ShapeFigures.DeepHole(deep, values.NeedLength(diameter));
            if (values.Plain(step) is null || values.Plain(rLevel) is null || values.Plain(bottom) is null)
                throw values.Missing("--from, --to and --step, or --depth and --diameter");
            var (top, end, q) = (values.NeedLength(rLevel), values.NeedLength(bottom), values.NeedLength(step));
            if (end >= top)
                throw new CannotRunException("--to must lie below --from");
            if (Pecks.Count(top, end, q) > Pecks.Most)
                throw new CannotRunException($"--step is so small that more than {Pecks.Most} strokes come of it");
            return ShapeFigures.Pecks(top, end, q, values.Out);
        });
        return command;
    }

    public static Command Chord()
    {
        var command = new Command("chord", "How many straight pieces follow a circle within an error.");
        var options = new FigureOptions(command);
        var radius = options.Above0("--radius", "LENGTH", "Radius of the circle.");
        var error = options.Above0("--error", "LENGTH", "How far a piece may lie inside the circle.");
        options.Answer(values => values.NeedLength(error) < values.NeedLength(radius)
            ? ShapeFigures.Chord(values.NeedLength(radius), values.NeedLength(error))
            : throw new CannotRunException("--error must be less than --radius"));
        return command;
    }
}
