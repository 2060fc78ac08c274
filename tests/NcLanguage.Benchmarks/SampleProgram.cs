using System.Globalization;
using System.Text;

namespace NcLanguage.Benchmarks;

/// <summary>What a program of the benchmarks does most.</summary>
public enum SampleKind
{
    /// <summary>One cycle after the other, 200 holes each.</summary>
    Drilling,

    /// <summary>Straight cuts and arcs by centre and by radius.</summary>
    Contour,

    /// <summary>Both in turn, with a tool change between them every few hundred blocks.</summary>
    Mix,

    /// <summary>Drilling that calls a subprogram between two cycles: the run leaves the order of the text.</summary>
    Calls,
}

/// <summary>Sound programs of a wanted number of blocks of some 20 to 30 characters, and the setup they run with.</summary>
static class SampleProgram
{
    const string Head = "G21 G90 G17 G40 G49 G80 G54\n";

    public static string Make(int blocks, SampleKind kind = SampleKind.Mix)
    {
        var text = new Writer(blocks);
        text.Add(Head);
        for (var place = 0; text.HasRoom;)
        {
            if (kind != SampleKind.Contour)
                Drill(text, ref place, kind == SampleKind.Mix ? 400 : int.MaxValue, kind == SampleKind.Calls ? "M98 P1000\n" : Lift);
            if (kind is SampleKind.Contour or SampleKind.Mix && text.HasRoom)
                Cut(text, ref place, kind == SampleKind.Mix ? 600 : int.MaxValue);
        }
        text.Add(kind == SampleKind.Calls ? "M30\nO1000\n" + Lift + "M99\n" : "M30\n");
        return text.ToString();
    }

    /// <summary>Blocks as somebody would paste them, at places where the program has none.</summary>
    public static string Paste(int blocks, SampleKind kind)
    {
        var text = new StringBuilder();
        for (var i = 0; i < blocks; i++)
            text.Append(CultureInfo.InvariantCulture, $"{(kind == SampleKind.Contour ? "G1 " : "")}X{10.05 + i % 90:0.00} Y{10.05 + i / 90:0.00}\n");
        return text.ToString();
    }

    /// <summary>Out of a cycle and up over the clamps.</summary>
    const string Lift = "G80\nG0 Z50\n";

    static void Drill(Writer text, ref int place, int most, string between)
    {
        text.Add("T1 M6\nS1800 M3\nG0 X10 Y10\nG43 H1 Z50\nM8\n");
        for (var i = 0; i < most && text.HasRoom; i++, place++)
        {
            // No place comes again within 600,000 holes.
            var hole = string.Create(CultureInfo.InvariantCulture, $"X{10 + place * 7 % 1000 / 10.0:0.0} Y{10 + (place * 3 + place / 1000) % 600 / 10.0:0.0}");
            if (i % 200 > 0)
                text.Numbered(hole);
            else
                text.Add($"{(i == 0 ? "" : between)}G99 G81 {hole} Z-4.5 R2 F180\n");
        }
        text.Add("G80\nG0 Z100\nM9 M5\n");
    }

    static void Cut(Writer text, ref int place, int most)
    {
        text.Add("T2 M6\nS3000 M3\nG0 X10 Y10\nG43 H2 Z50\nM8\nG0 Z5\nG1 Z-1 F200\n");
        var x = 10.0;
        for (var i = 0; i < most && text.HasRoom; i++, place++)
        {
            var y = 10 + place / 4 * 3 % 500 / 10.0;
            switch (i % 4)
            {
                case 0:
                    x = 10 + place * 7 % 900 / 10.0;
                    text.Numbered(string.Create(CultureInfo.InvariantCulture, $"G1 X{x:0.000} Y{y:0.000} F400"));
                    break;
                case 1:
                    x += 10;
                    text.Numbered(string.Create(CultureInfo.InvariantCulture, $"G2 X{x:0.000} Y{y:0.000} I5. J0."));
                    break;
                case 2:
                    x -= 6;
                    text.Numbered(string.Create(CultureInfo.InvariantCulture, $"G3 X{x:0.000} Y{y:0.000} R4."));
                    break;
                default:
                    text.Numbered(string.Create(CultureInfo.InvariantCulture, $"G1 X{10 + place * 7 % 900 / 10.0:0.000} Y{y:0.000} Z-{1 + place % 5 / 10.0:0.0}"));
                    break;
            }
        }
        text.Add("G0 Z100\nM9 M5\n");
    }

    /// <summary>Writes NAME.nc and NAME.setup.json and returns the program's path.</summary>
    public static string Write(int blocks, string folder, string name, SampleKind kind = SampleKind.Mix)
    {
        Directory.CreateDirectory(folder);
        var path = Path.Combine(folder, name + ".nc");
        File.WriteAllText(path, Make(blocks, kind));
        File.WriteAllText(Path.ChangeExtension(path, ".setup.json"), Setup);
        return path;
    }

    public static string Setup { get; } = SetupWith("""
        "stock": { "min": [0, 0, -20], "max": [120, 80, 0] },
        """);

    public static string SetupWithoutStock { get; } = SetupWith("");

    static string SetupWith(string stock) => $$"""
        { "units": "mm", "machine": "iso-mill", {{stock}} "clearance": 2,
          "obstacles": [ { "name": "clamp A", "min": [-30, 20, -5], "max": [-4, 40, 25] }, { "name": "clamp B", "min": [124, 20, -5], "max": [150, 40, 25] },
                         { "name": "clamp C", "min": [40, -30, -5], "max": [60, -4, 25] }, { "name": "clamp D", "min": [40, 84, -5], "max": [60, 110, 25] } ],
          "tools": [ { "number": 1, "kind": "drill", "diameter": 6.8, "pointAngle": 118, "fluteLength": 60, "length": 110, "lengthOffset": 1 },
                     { "number": 2, "kind": "end-mill", "diameter": 6, "fluteLength": 20, "length": 90, "lengthOffset": 2 } ] }
        """;

    /// <summary>Writes blocks and counts them.</summary>
    sealed class Writer(int most)
    {
        readonly StringBuilder _text = new(most * 28);
        int _blocks;

        /// <summary>Room for another block before the ones that a program ends with.</summary>
        public bool HasRoom => _blocks < most - 8;

        public void Add(string blocks)
        {
            _text.Append(blocks);
            _blocks += blocks.Count('\n');
        }

        public void Numbered(string words)
        {
            _text.Append('N').Append(_blocks++).Append(' ').Append(words).Append('\n');
        }

        public override string ToString() => _text.ToString();
    }
}
