using System.Globalization;
using System.Text;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Benchmarks;

/// <summary>Programs of 5,000 moves that mill and drill a plate of 500 × 500 mm.</summary>
static class StockPrograms
{
    const int Moves = 5000;

    /// <summary>Each with its name and its setup.</summary>
    public static (string Name, Setup Setup, string Program)[] All =>
    [
        ("pockets, end mill 10", Plate(10, ToolKind.EndMill), Rows(12)),
        ("rows over a dome, ball mill 10", Plate(10, ToolKind.BallMill), Dome()),
        ("rows over a dome, bull mill 10 with a corner of 2", Plate(10, ToolKind.BullMill, 2), Dome()),
        ("rings and helices, end mill 10", Plate(10, ToolKind.EndMill), Rings()),
        ("5,000 holes, drill 5", Plate(5, ToolKind.Drill), Holes()),
    ];

    /// <summary>The plate's setup as a file, with two clamps at its sides.</summary>
    public static string SetupFile(Setup setup, bool stock)
    {
        var tool = setup.Tools[0];
        var form = tool switch
        {
            { CornerRadius: { } radius } => $"\"cornerRadius\": {radius}, ",
            { PointAngle: { } angle } => $"\"pointAngle\": {angle}, ",
            _ => "",
        };
        return $$"""
            { "units": "mm", "machine": "iso-mill", {{(stock ? "\"stock\": { \"min\": [0, 0, -40], \"max\": [500, 500, 0] }," : "")}} "clearance": 2,
              "obstacles": [ { "name": "left clamp", "min": [-60, 200, -20], "max": [-10, 260, 25] }, { "name": "right clamp", "min": [510, 200, -20], "max": [560, 260, 25] } ],
              "tools": [ { "number": 1, "kind": "{{ToolKindName.Format(tool.Kind!.Value)}}", "diameter": {{tool.Diameter}}, {{form}}"fluteLength": 45, "length": 100 } ] }
            """;
    }

    static Setup Plate(double diameter, ToolKind kind, double? corner = null) => new()
    {
        IsPresent = true,
        Stock = new Box3(new Point3(0, 0, -40), new Point3(500, 500, 0)),
        Tools = [new Tool { Number = 1, Kind = kind, Diameter = diameter, CornerRadius = corner, PointAngle = kind == ToolKind.Drill ? 118 : null }],
    };

    static string Program(Action<StringBuilder> moves)
    {
        var text = new StringBuilder("G21 G90 G17 G54\nT1 M6\nS5000 M3\nG0 X-20 Y-20 Z5\nG1 F2000\n");
        moves(text);
        return text.Append("G0 Z50\nM30\n").ToString();
    }

    /// <summary>Level rows of 100 mm, to and fro.</summary>
    static string Rows(int layers) => Program(text =>
    {
        for (var i = 0; i < Moves; i++)
        {
            var (pocket, row) = (i / 40 % 25, i % 40);
            text.Append(CultureInfo.InvariantCulture, $"X{pocket % 5 * 100 + row / 2 % 2 * 90 + 5} Y{pocket / 5 * 100 + (row + 1) / 2 * 4.5 + 5:0.###} Z{-1 - i * layers / Moves}.\n");
        }
    });

    /// <summary>Rows along X in pieces of 10 mm that rise and fall.</summary>
    static string Dome() => Program(text =>
    {
        for (var i = 0; i < Moves; i++)
        {
            double x = i / 50 % 2 == 0 ? i % 50 * 10 : 490 - i % 50 * 10, y = i / 50 * 5;
            text.Append(CultureInfo.InvariantCulture, $"X{x:0.###} Y{y:0.###} Z{-30 + 25 * Math.Sin(x / 500 * Math.PI) * Math.Sin(y / 500 * Math.PI):0.###}\n");
        }
    });

    /// <summary>Rings of 30 mm, and helices down to them.</summary>
    static string Rings() => Program(text =>
    {
        for (var i = 0; i < Moves / 4; i++)
            text.Append(CultureInfo.InvariantCulture, $"G0 X{i % 10 * 48 + 40} Y{i / 10 % 10 * 48 + 25} Z1\nG1 Z-{i / 100}.\nG3 I-15 Z-{i / 100 + 1}.\nI-15\n");
    });

    static string Holes() => Program(text =>
    {
        text.Append("G99 G81 X5 Y5 Z-30 R2 F200\n");
        for (var i = 1; i < Moves; i++)
            text.Append(CultureInfo.InvariantCulture, $"X{i % 71 * 7 + 5} Y{i / 71 * 7 + 5}\n");
        text.Append("G80\n");
    });
}
