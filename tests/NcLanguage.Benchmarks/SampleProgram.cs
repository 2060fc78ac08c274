using System.Text;

namespace NcLanguage.Benchmarks;

/// <summary>A sound program of a wanted number of blocks: facing passes, and every so often a row of drilled holes.</summary>
static class SampleProgram
{
    public static string Make(int blocks)
    {
        var text = new StringBuilder(blocks * 24);
        text.Append("G21 G90 G17 G40 G49 G80 G54\nT1 M6\nS1800 M3\nG0 X0 Y0\nG43 H1 Z50\nM8\n");
        for (var i = 6; i < blocks - 4; i++)
        {
            text.Append('N').Append(i).Append(' ');
            switch (i % 40)
            {
                case 0: text.Append("G0 Z50\n"); break;
                case 1: text.Append("G99 G81 X10 Y").Append(10 + i % 60).Append(" Z-4.5 R2 F180\n"); break;
                case < 10: text.Append('X').Append(10 + i % 40 * 8).Append('\n'); break;
                case 10: text.Append("G80\n"); break;
                case 11: text.Append("G0 X10 Y").Append(10 + i % 60).Append('\n'); break;
                case 12: text.Append("G1 Z-1 F300\n"); break;
                case 39: text.Append("G0 Z5\n"); break;
                default: text.Append("G1 X").Append(10 + i * 7 % 1000 / 10.0).Append(" Y").Append(10 + i * 3 % 600 / 10.0).Append('\n'); break;
            }
        }
        return text.Append("G80\nG0 Z100\nM9 M5\nM30\n").ToString();
    }

    /// <summary>Writes NAME.nc and NAME.setup.json and returns the program's path.</summary>
    public static string Write(int blocks, string folder, string name)
    {
        Directory.CreateDirectory(folder);
        var path = Path.Combine(folder, name + ".nc");
        File.WriteAllText(path, Make(blocks));
        File.WriteAllText(Path.ChangeExtension(path, ".setup.json"), Setup);
        return path;
    }

    public const string Setup = """
        { "units": "mm", "machine": "iso-mill", "stock": { "min": [0, 0, -20], "max": [120, 80, 0] }, "clearance": 2,
          "obstacles": [ { "name": "clamp A", "min": [-30, 20, -5], "max": [-4, 40, 25] }, { "name": "clamp B", "min": [124, 20, -5], "max": [150, 40, 25] },
                         { "name": "stud", "center": [-10, 90], "diameter": 12, "bottom": 0, "top": 30 } ],
          "tools": [ { "number": 1, "kind": "drill", "diameter": 6.8, "pointAngle": 118, "fluteLength": 60, "length": 110, "lengthOffset": 1 } ] }
        """;
}
