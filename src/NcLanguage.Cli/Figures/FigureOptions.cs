using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using NcLanguage.Checks;
using NcLanguage.Checks.Cutting;
using NcLanguage.Cli.Common;
using NcLanguage.Control.State;
using NcLanguage.Reports.Figures;
namespace NcLanguage.Cli.Figures;

/// <summary>The options of one <c>figure</c> command, and their values in mm, mm/min and m/min.</summary>
sealed class FigureOptions(Command command)
{
    /// <summary>No length, speed or count at a mill is greater: a slip of the keyboard.</summary>
    const double Greatest = 1_000_000;

    readonly Option<string> _units = ChoiceOption.Create("--units", "The unit of the lengths that go in and come out; speeds are in m/min with mm, in ft/min with inch.", "mm", "inch");
    readonly Option<string> _format = ChoiceOption.Create("--format", "How to tell it; json is always in mm and m/min.", "text", "json");

    /// <summary>Adds an option that takes a number above 0.</summary>
    public Option<double?> Above0(string name, string what, string description) => Number(name, what, description, double.Epsilon);

    /// <summary>Adds an option that takes a number from <paramref name="least"/> on.</summary>
    public Option<double?> Number(string name, string what, string description, double least = -Greatest, double greatest = Greatest)
    {
        var option = new Option<double?>(name) { HelpName = what, Description = description, CustomParser = result => Parse(result, name, least, greatest) };
        command.Add(option);
        return option;
    }

    /// <summary>Adds an option that takes a whole number from 1 on.</summary>
    public Option<double?> Count(string name, string description)
    {
        var option = new Option<double?>(name)
        {
            HelpName = "N",
            Description = description,
            CustomParser = result =>
            {
                var number = Parse(result, name, 1, HolePattern.Most);
                if (number is { } count && count != Math.Floor(count))
                    result.AddError($"{name} needs a whole number, not {Say.Number(count, 6)}");
                return number;
            },
        };
        command.Add(option);
        return option;
    }

    /// <summary>Adds an option that takes two numbers, as X,Y.</summary>
    public Option<(double X, double Y)?> Pair(string name, string description)
    {
        var option = new Option<(double X, double Y)?>(name)
        {
            HelpName = "X,Y",
            Description = description,
            CustomParser = result =>
            {
                var parts = result.Tokens.Count == 1 ? result.Tokens[0].Value.Split(',') : [];
                if (parts.Length == 2 && TryRead(parts[0], out var x) && TryRead(parts[1], out var y) && Math.Abs(x) <= Greatest && Math.Abs(y) <= Greatest)
                    return (x, y);
                result.AddError($"{name} needs two numbers such as 20,12.5, not {string.Join(' ', result.Tokens.Select(token => token.Value))}");
                return null;
            },
        };
        command.Add(option);
        return option;
    }

    /// <summary>Adds <c>--units</c> and <c>--format</c> behind the command's own options, and what it does.</summary>
    public void Answer(Func<FigureValues, FigureReport> answer)
    {
        command.Add(_units);
        command.Add(_format);
        command.SetAction(parse =>
        {
            var isJson = parse.GetValue(_format) == "json";
            var isInch = parse.GetValue(_units) == "inch";
            var report = answer(new FigureValues(parse, command.Name, isInch, new FigureUnit(isInch && !isJson)));
            Show(report, isJson);
            return ExitCode.Clean;
        });
    }

    static void Show(FigureReport report, bool isJson)
    {
        // A number that cannot be reckoned with the numbers given must not look like an answer.
        if (report.Rows.FirstOrDefault(row => !double.IsFinite(row.Value)) is { } bad)
            throw new CannotRunException($"{bad.Name} cannot be reckoned from these numbers");
        if (isJson)
        {
            JsonOutput.Write(report.Write);
            return;
        }
        using var screen = Screen.Open();
        var names = report.Rows.Max(row => row.Name.Length);
        var values = report.Rows.Max(row => row.Shown.Length);
        foreach (var row in report.Rows)
            screen.WriteParagraph($"{row.Name.PadRight(names)}  {row.Shown.PadLeft(values)}  {row.Formula}; {row.Source}", 0, hang: names + values + 4);
        if (report.Blocks.IsEmpty)
            return;
        screen.WriteLine();
        if (report.BlocksAreDistances)
            screen.WriteLine($"Distances; the first counts from {(report.Name == "grid" ? "the first hole" : "the centre")}:");
        foreach (var block in report.Blocks)
            screen.WriteLine(block);
    }

    static double? Parse(ArgumentResult result, string name, double least, double greatest)
    {
        var written = string.Join(' ', result.Tokens.Select(token => token.Value));
        if (!TryRead(written, out var number))
            result.AddError($"{name} needs a number, not {written}");
        else if (number < least)
            result.AddError($"{name} must be {(least == double.Epsilon ? "above 0" : $"at least {Say.Number(least)}")}, not {written}");
        else if (number > greatest)
            result.AddError($"{name} must be at most {Say.Number(greatest)}, not {written}");
        else
            return number;
        return null;
    }

    static bool TryRead(string text, out double number) =>
        double.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out number)
        && double.IsFinite(number);
}

/// <summary>What was given on the command line.</summary>
/// <param name="Out">The unit of the answer; JSON is in mm.</param>
sealed record FigureValues(ParseResult Parse, string Name, bool IsInch, FigureUnit Out)
{
    double Millimetres => IsInch ? UnitLength.MmPerInch : 1;

    /// <summary>The unit that the numbers were given in.</summary>
    public FigureUnit Given => new(IsInch);

    public double? Plain(Option<double?> option) => Parse.GetValue(option);

    /// <summary>mm, or mm/min for feeds.</summary>
    public double? Length(Option<double?> option) => Parse.GetValue(option) * Millimetres;

    /// <summary>m/min.</summary>
    public double? CuttingSpeed(Option<double?> option) => Parse.GetValue(option) * (IsInch ? Checks.Cutting.CuttingSpeed.MetresPerFoot : 1);

    public PatternHole? Place(Option<(double X, double Y)?> option) =>
        Parse.GetValue(option) is { } pair ? new PatternHole(pair.X * Millimetres, pair.Y * Millimetres) : null;

    /// <summary>The value of an option that the answer cannot do without.</summary>
    public double NeedLength(Option<double?> option) => Length(option) ?? throw Missing(option.Name);

    /// <summary>The value of an option that the answer cannot do without, as it was given.</summary>
    public double Need(Option<double?> option) => Plain(option) ?? throw Missing(option.Name);

    public CannotRunException Missing(string names) => new($"figure {Name} needs {names}; see nclanguage figure {Name} --help");
}
