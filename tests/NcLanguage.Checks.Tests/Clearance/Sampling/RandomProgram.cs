namespace NcLanguage.Checks.Tests.Clearance.Sampling;

/// <summary>A random program that does not move as it reads: frames turned, scaled and shifted, radius compensation, calls, arguments and loops.</summary>
sealed class RandomProgram
{
    readonly Random _random;
    readonly RandomMotion _main;
    readonly RandomMotion _called;

    public RandomProgram(Random random, double toolRadius)
    {
        _random = random;
        _main = new RandomMotion(random, isFlat: true).Begin();
        _called = new RandomMotion(random, isFlat: true);
        for (var i = 0; i < 4; i++)
        {
            switch (random.Next(7))
            {
                case 0: Framed($"G68 X{Place()} Y{Place()} R{Some(-180, 180)}", "G69"); break;
                case 1: Scaled(); break;
                case 2: Framed($"G52 X{Place()} Y{Place()} Z{Some(-5, 5)}", "G52 X0. Y0. Z0."); break;
                case 3: Framed($"G92 X{Place()} Y{Place()}", "G92.1"); break;
                case 4: Compensated(toolRadius); break;
                case 5: Called(i); break;
                default: Looped(); break;
            }
        }
        _main.Line("M30");
    }

    public string Text => _main.Text + _called.Text;

    string Some(double low, double high) => RandomMotion.Number(Fixture.Between(_random, low, high));

    string Place() => Some(-40, 40);

    void Framed(string on, string off)
    {
        _main.Line(on);
        _main.Rapid();
        _main.Add(2);
        _main.Line(off);
        _main.Rapid();
    }

    /// <summary>Arcs stay arcs when X and Y are scaled alike; mirrored they turn the other way.</summary>
    void Scaled()
    {
        var factor = Fixture.Between(_random, 0.3, 1.6);
        var mirror = _random.Next(2) == 0 ? -factor : factor;
        Framed($"G51 X{Place()} Y{Place()} I{RandomMotion.Number(mirror == 0 ? 1 : mirror)} J{RandomMotion.Number(factor == 0 ? 1 : factor)} K1.", "G50");
    }

    /// <summary>Round the outside of a plate with rounded corners, clockwise, the tool on the left.</summary>
    void Compensated(double radius)
    {
        double x = Fixture.Between(_random, -40, 0), y = Fixture.Between(_random, -40, 0), width = Fixture.Between(_random, 22, 60), depth = Fixture.Between(_random, 22, 50);
        const double Corner = 8;
        string X(double value) => " X" + RandomMotion.Number(Math.Round(x + value, 3));
        string Y(double value) => " Y" + RandomMotion.Number(Math.Round(y + value, 3));
        _main.Line($"G0{X(-2.5 * radius - 5)}{Y(-2 * radius - 5)}");
        _main.Line($"Z{Some(-10, 10)}");
        _main.Line($"G41 D1 G1{X(0)}{Y(-radius)} F500");
        _main.Line(Y(depth - Corner));
        _main.Line($"G2{X(Corner)}{Y(depth)} I8. J0.");
        _main.Line($"G1{X(width - Corner)}");
        _main.Line($"G2{X(width)}{Y(depth - Corner)} I0. J-8.");
        _main.Line($"G1{Y(Corner)}");
        _main.Line($"G2{X(width - Corner)}{Y(0)} I-8. J0.");
        _main.Line($"G1{X(Corner)}");
        _main.Line($"G2{X(0)}{Y(Corner)} I0. J8.");
        _main.Line($"G40 G1{X(-2.5 * radius - 5)}");
        _main.Rapid();
    }

    /// <summary>A called program that goes on from where the tool stands, several times, or to the place it is handed.</summary>
    void Called(int number)
    {
        var withArguments = _random.Next(2) == 0;
        _main.Line(withArguments ? $"G65 P200{number} A{Place()} B{Place()} C{Some(-10, 30)}" : $"M98 P200{number} L{_random.Next(2, 4)}");
        _main.Line("G90 G80");
        _main.Rapid();
        _called.Line($"O200{number}");
        if (withArguments)
        {
            _called.Line("G0 X#1 Y#2");
            _called.Line("Z#3");
            _called.Line("G1 X[#1 + 20] F300");
            _called.Line("G3 X[#1 + 20] Y[#2 + 30] I0. J15.");
        }
        else
        {
            _called.Line($"G91 G0 X{Some(-20, 20)} Y{Some(-20, 20)} Z{Some(-3, 3)}");
            _called.Line($"G1 X{Some(-20, 20)} Z{Some(-3, 3)} F300");
            _called.Line($"G99 G81 X{Some(-9, 9)} Y{Some(-9, 9)} R-2. Z-9. F100 L2");
            _called.Line("G90 G80");
        }
        _called.Line("M99");
    }

    /// <summary>A row of holes or a ring of feeds by a loop.</summary>
    void Looped()
    {
        _main.Line("#101 = 0");
        _main.Line($"#102 = {Place()}");
        if (_random.Next(2) == 0)
        {
            _main.Line($"G99 G81 X#102 Y{Place()} R{Some(2, 20)} Z-6. F100");
            _main.Line("WHILE [#101 LT 5] DO1");
            _main.Line("#101 = #101 + 1");
            _main.Line("X[#102 + 13 * #101]");
            _main.Line("END1");
        }
        else
        {
            _main.Line($"#103 = {Some(3, 30)}");
            _main.Line("WHILE [#101 LT 6] DO1");
            _main.Line("G1 X[#102 + #103 * COS[60 * #101]] Y[#103 * SIN[60 * #101]] F400");
            _main.Line("#101 = #101 + 1");
            _main.Line("END1");
        }
        _main.Line("G80");
        _main.Rapid();
    }
}
