using System.CommandLine;
using NcLanguage.Checks.Cutting;
using NcLanguage.Cli.Common;
using NcLanguage.Reports.Figures;

namespace NcLanguage.Cli.Figures;

/// <summary><c>figure circle</c>, <c>arc</c> and <c>grid</c>: places of holes, and blocks to paste.</summary>
static class PatternCommands
{
    public static Command Circle()
    {
        var command = new Command("circle", "Holes spread evenly over a bolt circle.");
        var options = new FigureOptions(command);
        var (holes, diameter, centre, start, blocks) = Round(command, options);
        options.Answer(values =>
        {
            var count = (int)values.Need(holes);
            return PatternFigures.Round(
                "circle", values.Place(centre) ?? default, values.NeedLength(diameter), count, values.Plain(start) ?? 0, 360.0 / count, values.Out, Incremental(values, blocks), values.Given);
        });
        return command;
    }

    public static Command Arc()
    {
        var command = new Command("arc", "Holes on a part of a circle.");
        var options = new FigureOptions(command);
        var (holes, diameter, centre, start, blocks) = Round(command, options);
        var step = options.Number("--step", "DEGREES", "Angle from hole to hole; below 0 clockwise.");
        var end = options.Number("--end", "DEGREES", "Angle of the last hole, instead of --step.");
        options.Answer(values =>
        {
            var count = (int)values.Need(holes);
            var first = values.Plain(start) ?? 0;
            var angle = values.Plain(step)
                ?? (values.Plain(end) is { } last ? count > 1 ? (last - first) / (count - 1) : throw new CannotRunException("--end needs two holes or more") : throw values.Missing("--step or --end"));
            return PatternFigures.Round(
                "arc", values.Place(centre) ?? default, values.NeedLength(diameter), count, first, angle, values.Out, Incremental(values, blocks), values.Given);
        });
        return command;
    }

    public static Command Grid()
    {
        var command = new Command("grid", "Holes in rows and columns, every second row back.");
        var options = new FigureOptions(command);
        var columns = options.Count("--columns", "Holes in a row.");
        var rows = options.Count("--rows", "Rows.");
        var step = options.Pair("--step", "Distance from hole to hole along X and Y.");
        var from = options.Pair("--from", "Place of the first hole. Without it: 0,0.");
        var turn = options.Number("--turn", "DEGREES", "Angle of the rows to X, about the first hole. Without it: 0.");
        var blocks = Blocks(command);
        options.Answer(values =>
        {
            var (across, up) = ((int)values.Need(columns), (int)values.Need(rows));
            if ((long)across * up > HolePattern.Most)
                throw new CannotRunException($"more than {HolePattern.Most} holes are no pattern that is written out");
            var way = values.Place(step) ?? throw values.Missing("--step");
            return PatternFigures.Grid(values.Place(from) ?? default, across, up, way.X, way.Y, values.Plain(turn) ?? 0, values.Out, Incremental(values, blocks), values.Given);
        });
        return command;
    }

    static (Option<double?> Holes, Option<double?> Diameter, Option<(double X, double Y)?> Centre, Option<double?> Start, Option<string> Blocks) Round(Command command, FigureOptions options) => (
        options.Count("--holes", "How many."), options.Above0("--diameter", "LENGTH", "Diameter of the circle through the holes' axes."),
        options.Pair("--centre", "Centre of the circle. Without it: 0,0."), options.Number("--start", "DEGREES", "Angle of the first hole from X, counterclockwise. Without it: 0."),
        Blocks(command));

    static Option<string> Blocks(Command command)
    {
        var option = ChoiceOption.Create(
            "--blocks", "Also print a block for each hole: coordinates, or distances, of which the first counts from the circle's centre or the grid's first hole.", "none", "absolute", "incremental");
        command.Add(option);
        return option;
    }

    static bool? Incremental(FigureValues values, Option<string> blocks) =>
        values.Parse.GetValue(blocks) switch { "absolute" => false, "incremental" => true, _ => null };
}
