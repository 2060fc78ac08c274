using System.Globalization;

namespace NcLanguage.Editing.Refactorings;

/// <summary>A circle with holes at even angles, in the unit of the program and degrees from the first axis, counterclockwise.</summary>
/// <param name="Step">From hole to hole; below zero clockwise.</param>
/// <param name="Parts">Where the step is a turn divided evenly, by how many; 0 elsewhere.</param>
sealed record BoltCircle(double X, double Y, double Radius, double Start, double Step, int Parts)
{
    /// <summary>Decimals that are tried for each number, the fewest first.</summary>
    const int MostDecimals = 4;

    /// <summary>The roundest circle that all the places lie on; null where there is none.</summary>
    /// <param name="tolerance">How far a place may lie off.</param>
    public static BoltCircle? Through(IReadOnlyList<(double X, double Y)> places, double tolerance)
    {
        var count = places.Count;
        if (Centre(places[0], places[count / 3], places[2 * count / 3]) is not var (x, y))
            return null;
        var angles = new double[count];
        var sum = 0.0;
        for (var i = 0; i < count; i++)
        {
            angles[i] = Math.Atan2(places[i].Y - y, places[i].X - x) * 180 / Math.PI;
            if (i > 0)
                sum += Turned(angles[i - 1], angles[i]);
        }
        var step = sum / (count - 1);
        var parts = (int)Math.Round(360 / Math.Abs(step));
        var isEven = parts is > 1 and <= 360 && Math.Abs(360.0 / parts - Math.Abs(step)) < 0.01;
        var radius = places.Average(place => Math.Sqrt(Math.Pow(place.X - x, 2) + Math.Pow(place.Y - y, 2)));
        for (var decimals = 0; decimals <= MostDecimals; decimals++)
            for (var fine = 0; fine <= MostDecimals; fine++)
                for (var angle = 0; angle <= MostDecimals; angle++)
                {
                    var exact = isEven ? Math.Sign(step) * 360.0 / parts : Math.Round(step, angle);
                    var circle = new BoltCircle(
                        Math.Round(x, decimals), Math.Round(y, decimals), Math.Round(radius, fine), Math.Round((angles[0] + 360) % 360, angle), exact,
                        isEven && 360 % parts != 0 ? parts : 0);
                    if (circle.Holds(places, tolerance))
                        return circle;
                }
        return null;
    }

    /// <summary>The words of a hole by its number, that of the first being 0.</summary>
    /// <param name="number">The variable that holds it.</param>
    public string Words(string number)
    {
        var turn = Parts > 0 ? $"{number} * 360 / {Parts}" : $"{number} * {Number(Math.Abs(Step))}";
        var angle = Start == 0 ? (Step < 0 ? $"0 - {turn}" : turn) : $"{Number(Start)} {(Step < 0 ? '-' : '+')} {turn}";
        return $"X[{Axis(X, "COS", angle)}] Y[{Axis(Y, "SIN", angle)}]";
    }

    string Axis(double centre, string function, string angle)
    {
        var way = $"{Number(Radius)} * {function}[{angle}]";
        return centre == 0 ? way : centre > 0 ? $"{Number(centre)} + {way}" : $"{way} - {Number(-centre)}";
    }

    static string Number(double value) => value.ToString("0.####", CultureInfo.InvariantCulture);

    bool Holds(IReadOnlyList<(double X, double Y)> places, double tolerance)
    {
        for (var i = 0; i < places.Count; i++)
        {
            var angle = (Start + i * Step) * Math.PI / 180;
            if (Math.Abs(X + Radius * Math.Cos(angle) - places[i].X) > tolerance || Math.Abs(Y + Radius * Math.Sin(angle) - places[i].Y) > tolerance)
                return false;
        }
        return true;
    }

    /// <summary>From one angle to another by the shorter way.</summary>
    static double Turned(double from, double to)
    {
        var turned = (to - from) % 360;
        return turned > 180 ? turned - 360 : turned < -180 ? turned + 360 : turned;
    }

    /// <summary>The centre of the circle through three places.</summary>
    static (double X, double Y)? Centre((double X, double Y) a, (double X, double Y) b, (double X, double Y) c)
    {
        var twice = 2 * (a.X * (b.Y - c.Y) + b.X * (c.Y - a.Y) + c.X * (a.Y - b.Y));
        if (!(Math.Abs(twice) > 1e-9))
            return null;
        var (sa, sb, sc) = (a.X * a.X + a.Y * a.Y, b.X * b.X + b.Y * b.Y, c.X * c.X + c.Y * c.Y);
        return ((sa * (b.Y - c.Y) + sb * (c.Y - a.Y) + sc * (a.Y - b.Y)) / twice, (sa * (c.X - b.X) + sb * (a.X - c.X) + sc * (b.X - a.X)) / twice);
    }
}
