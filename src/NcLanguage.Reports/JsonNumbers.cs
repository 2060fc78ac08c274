using System.Text.Json;
using NcLanguage.Checks;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Reports;

/// <summary>Numbers in reports: rounded to a millionth, null where not known.</summary>
static class JsonNumbers
{
    const int Decimals = 6;

    public static void WriteKnown(this Utf8JsonWriter json, string name, double value)
    {
        json.WritePropertyName(name);
        json.WriteKnown(value);
    }

    public static void WriteKnown(this Utf8JsonWriter json, double value)
    {
        if (double.IsFinite(value))
            json.WriteNumberValue(Rounded(value));
        else
            json.WriteNullValue();
    }

    public static void WriteKnown(this Utf8JsonWriter json, string name, double? value) => json.WriteKnown(name, value ?? double.NaN);

    public static void WritePoint(this Utf8JsonWriter json, string name, Point3 point)
    {
        json.WritePropertyName(name);
        json.WritePoint(point);
    }

    public static void WritePoint(this Utf8JsonWriter json, Point3 point)
    {
        json.WriteStartArray();
        for (var axis = 0; axis < 3; axis++)
            json.WriteKnown(point[axis]);
        json.WriteEndArray();
    }

    /// <summary>The member "tool": its number, null where it is not known.</summary>
    public static void WriteTool(this Utf8JsonWriter json, int tool)
    {
        if (tool < 0)
            json.WriteNull("tool");
        else
            json.WriteNumber("tool", tool);
    }

    /// <summary>The members that tell which coordinates a place is meant in: "workOffset", and "shift" where the program has shifted it, by how much in all.</summary>
    public static void WriteCoordinates(this Utf8JsonWriter json, WorkCoordinates coordinates)
    {
        if (coordinates.IsKnown)
            json.WriteString("workOffset", WorkOffsetName.Format(coordinates.WorkOffset));
        else
            json.WriteNull("workOffset");
        if (coordinates.IsShifted)
            json.WritePoint("shift", coordinates.ShiftInAll);
    }

    /// <summary>The members that tell a move's way: from, to, and of an arc its centre and turn.</summary>
    public static void WriteWay(this Utf8JsonWriter json, bool isArc, Point3 from, Point3 to, Point3 center, bool clockwise)
    {
        json.WritePoint("from", from);
        json.WritePoint("to", to);
        if (!isArc)
            return;
        json.WritePoint("center", center);
        json.WriteString("turn", clockwise ? "clockwise" : "counterclockwise");
    }

    /// <summary>Rounded to a millionth, without a negative zero.</summary>
    public static double Rounded(double value) => Math.Round(value, Decimals) + 0.0;
}
