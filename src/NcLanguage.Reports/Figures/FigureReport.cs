using System.Collections.Immutable;
using System.Text.Json;
using NcLanguage.Checks;

using NcLanguage.Control.State;
namespace NcLanguage.Reports.Figures;

/// <summary>One number that was asked for, with its unit, how it is reckoned and who says so.</summary>
/// <param name="Value">In <paramref name="Unit"/>.</param>
/// <param name="Unit">mm, mm/min, rev/min, °, %; empty for counts.</param>
/// <param name="Decimals">How many are shown; JSON has them all.</param>
public sealed record FigureRow(string Name, double Value, string Unit, string Formula, string Source, int Decimals = 3)
{
    /// <summary>2426 rev/min</summary>
    public string Shown => Say.Number(Value, Decimals) + (Unit.Length == 0 ? "" : (Unit == "°" ? "" : " ") + Unit);
}

/// <summary>An answer of the desk: its numbers, and where there are any the places of holes and the blocks that lead to them.</summary>
public sealed record FigureReport(string Name, ImmutableArray<FigureRow> Rows)
{
    /// <summary>Places of holes in the unit asked for.</summary>
    public ImmutableArray<(double X, double Y)> Holes { get; init; } = [];

    /// <summary>Blocks to put into a program.</summary>
    public ImmutableArray<string> Blocks { get; init; } = [];

    /// <summary>The blocks hold distances from hole to hole, the first from the pattern's centre or first hole; else coordinates.</summary>
    public bool BlocksAreDistances { get; init; }

    /// <summary>As JSON: <c>{"figure", "rows": [{"name", "value", "unit", "formula", "source"}], "holes": [{"number", "x", "y"}], "blocks": []}</c>.</summary>
    public void Write(Utf8JsonWriter json)
    {
        ArgumentNullException.ThrowIfNull(json);
        json.WriteStartObject();
        json.WriteString("figure", Name);
        json.WriteStartArray("rows");
        foreach (var row in Rows)
        {
            json.WriteStartObject();
            json.WriteString("name", row.Name);
            json.WriteKnown("value", row.Value);
            json.WriteString("unit", row.Unit);
            json.WriteString("formula", row.Formula);
            json.WriteString("source", row.Source);
            json.WriteEndObject();
        }
        json.WriteEndArray();
        if (!Holes.IsEmpty)
        {
            json.WriteStartArray("holes");
            for (var i = 0; i < Holes.Length; i++)
            {
                json.WriteStartObject();
                json.WriteNumber("number", i + 1);
                json.WriteKnown("x", Holes[i].X);
                json.WriteKnown("y", Holes[i].Y);
                json.WriteEndObject();
            }
            json.WriteEndArray();
        }
        if (!Blocks.IsEmpty)
        {
            json.WriteStartArray("blocks");
            foreach (var block in Blocks)
                json.WriteStringValue(block);
            json.WriteEndArray();
        }
        json.WriteEndObject();
    }
}

/// <summary>The unit that an answer is given in; what goes in is mm, mm/min and m/min.</summary>
public readonly record struct FigureUnit(bool IsInch)
{
    double Millimetres => IsInch ? UnitLength.MmPerInch : 1;

    /// <summary>Decimals that lengths are shown with: as a program writes them.</summary>
    public int Decimals => IsInch ? 4 : 3;

    /// <summary>The value in this unit.</summary>
    public double Of(double mm) => mm / Millimetres;

    public FigureRow Length(string name, double mm, string formula, string source) => new(name, Of(mm), IsInch ? "in" : "mm", formula, source, Decimals);

    /// <summary>A feed per tooth or turn, with the figures it needs.</summary>
    public FigureRow Fine(string name, double mm, string formula, string source) => new(name, Of(mm), IsInch ? "in" : "mm", formula, source, IsInch ? 5 : 4);

    public FigureRow Feed(string name, double mmPerMinute, string formula, string source) =>
        new(name, Of(mmPerMinute), IsInch ? "in/min" : "mm/min", formula, source, IsInch ? 2 : 1);

    public FigureRow CuttingSpeed(string name, double metresPerMinute, string formula, string source) => IsInch
        ? new(name, metresPerMinute / Checks.Cutting.CuttingSpeed.MetresPerFoot, "ft/min", formula, source, 1)
        : new(name, metresPerMinute, "m/min", formula, source, 1);

    public static FigureRow Turns(string name, double perMinute, string formula, string source) => new(name, perMinute, "rev/min", formula, source, perMinute < 100 ? 1 : 0);
}
