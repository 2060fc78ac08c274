using System.Globalization;
using System.Text;

namespace NcLanguage.Checks.Tests.Clearance.Sampling;

/// <summary>Random blocks that move: rapids, feeds, arcs in the three planes, helices, full circles, and every cycle from G73 to G89 with hops.</summary>
/// <param name="isFlat">Keeps to the XY plane and to one tool.</param>
sealed class RandomMotion(Random random, bool isFlat = false)
{
    static readonly int[] Cycles = [73, 74, 76, 81, 82, 83, 84, 85, 86, 87, 88, 89];

    readonly StringBuilder _text = new();
    double _x, _y, _z;

    public string Text => _text.ToString();

    /// <summary>All modes, a tool, a place.</summary>
    public RandomMotion Begin()
    {
        Line("G21 G90 G17 G40 G49 G80 G94 G54");
        Line("T1 M6");
        Line("S1000 M3");
        Rapid();
        return this;
    }

    public RandomMotion Add(int blocks)
    {
        while (blocks-- > 0)
        {
            switch (random.Next(isFlat ? 7 : 8))
            {
                case 0: Rapid(); break;
                case 1: Across("G0"); break;
                case 2: Across("G1"); break;
                case 3: Across("G1"); break;
                case 4: Arc(17); break;
                case 5: Arc(isFlat ? 17 : random.Next(17, 20)); break;
                case 6: Cycle(random.Next(3) == 0 ? 76 + 11 * random.Next(2) : Cycles[random.Next(Cycles.Length)]); break;
                default:
                    Line($"T{random.Next(1, 3)} M6");
                    Rapid();
                    break;
            }
        }
        return this;
    }

    public void Line(string block) => _text.Append(block).Append('\n');

    public static string Number(double value) => value.ToString("0.0####", CultureInfo.InvariantCulture);

    double Level() => Fixture.Between(random, -15, 45);

    double Place() => Fixture.Between(random, -60, 60);

    /// <summary>To a place known on all axes.</summary>
    public void Rapid()
    {
        (_x, _y, _z) = (Place(), Place(), Level());
        Line($"G0 X{Number(_x)} Y{Number(_y)} Z{Number(_z)}");
    }

    void Across(string code)
    {
        var block = code + (code == "G1" ? " F500" : "");
        if (random.Next(3) > 0)
            block += " X" + Number(_x = Place());
        if (random.Next(3) > 0)
            block += " Y" + Number(_y = Place());
        if (random.Next(3) == 0)
            block += " Z" + Number(_z = Level());
        Line(block);
    }

    /// <summary>An arc, a helix or a full circle.</summary>
    void Arc(int plane)
    {
        double[] at = [_x, _y, _z];
        var (a, b, c) = plane switch { 18 => (2, 0, 1), 19 => (1, 2, 0), _ => (0, 1, 2) };
        double radius = Fixture.Between(random, 1, 35), start = random.NextDouble() * 6.28, turn = random.NextDouble() * 6 - 3;
        double i = -radius * Math.Cos(start), j = -radius * Math.Sin(start);
        var isWhole = random.Next(4) == 0;
        double[] to = [.. at];
        if (!isWhole)
        {
            to[a] = at[a] + i + radius * Math.Cos(start + turn);
            to[b] = at[b] + j + radius * Math.Sin(start + turn);
        }
        if (random.Next(2) == 0)
            to[c] += Fixture.Between(random, -15, 15);
        Line($"G{plane} G{random.Next(2, 4)} {"XYZ"[a]}{Number(to[a])} {"XYZ"[b]}{Number(to[b])} {"XYZ"[c]}{Number(to[c])} {"IJK"[a]}{Number(i)} {"IJK"[b]}{Number(j)} F300");
        (_x, _y, _z) = (to[0], to[1], to[2]);
        Line("G17");
    }

    /// <summary>A cycle with a row of holes, mostly along Z, now and then along Y or X.</summary>
    void Cycle(int cycle)
    {
        var plane = isFlat ? 17 : Math.Max(random.Next(10, 20), 17);
        var (first, second, depth) = plane switch { 18 => ('Z', 'X', 'Y'), 19 => ('Y', 'Z', 'X'), _ => ('X', 'Y', 'Z') };
        var (shift, other, top) = ((char)(first - 15), (char)(second - 15), (char)(depth - 15));
        Line($"G{plane} G0 {depth}{Number(Fixture.Between(random, 2, 50))}");
        double bottom = Fixture.Between(random, -20, 5), level = Math.Round(bottom + Fixture.Between(random, 1, 20), 3);
        var block = $"G{random.Next(98, 100)} G{cycle} {first}{Number(Place())} {second}{Number(Place())} {depth}{Number(bottom)} R{Number(level)} F100";
        block += cycle switch
        {
            73 or 83 => " Q4.0",
            76 => random.Next(2) == 0 ? " P0.5 Q3.0" : $" P0.5 {shift}2.0 {other}-2.0",
            87 => $" {shift}{Number(Fixture.Between(random, -20, 20))} {other}1.0 {top}{Number(bottom + 2)}",
            82 or 86 or 88 or 89 => " P0.5",
            _ => "",
        };
        Line(block);
        for (var holes = random.Next(0, 4); holes > 0; holes--)
        {
            var word = random.Next(3) switch { 0 => "G98 ", 1 => "G99 ", _ => "" };
            Line($"{word}{first}{Number(Place())}" + (random.Next(2) == 0 ? $" {second}{Number(Place())}" : ""));
        }
        if (random.Next(3) == 0)
            Line($"G91 {first}{Number(Fixture.Between(random, -25, 25))} {second}{Number(Fixture.Between(random, -25, 25))} L{random.Next(2, 4)}");
        Line("G90 G80 G17");
        Rapid();
    }
}
