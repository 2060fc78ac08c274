using System.Globalization;
using System.Text;
using System.Text.Json;
using NcLanguage.Machine.Json;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Machine.Loading;

/// <summary>Writes the drawing's holes as the member "holes" of a setup file.</summary>
public static class SetupHoles
{
    /// <summary>The value of the member: one hole a line.</summary>
    public static string Text(IEnumerable<DrawingHole> holes, bool isInch, string newLine)
    {
        ArgumentNullException.ThrowIfNull(holes);
        var scale = isInch ? 1 / LengthUnit.Inch.Millimetres : 1;
        var text = new StringBuilder("[");
        foreach (var hole in holes)
        {
            text.Append(newLine).Append("    { \"x\": ").Append(Number(hole.X * scale)).Append(", \"y\": ").Append(Number(hole.Y * scale));
            if (hole.Diameter is { } diameter)
                text.Append(", \"diameter\": ").Append(Number(diameter * scale));
            if (hole.Depth is { } depth)
                text.Append(", \"depth\": ").Append(Number(depth * scale));
            if (hole.Thread is { } thread)
                text.Append(", \"thread\": \"").Append(JsonEncodedText.Encode(thread).ToString()).Append('"');
            text.Append(" },");
        }
        return text.Append(newLine).Append("  ]").ToString();
    }

    /// <summary>Whether lengths of a setup file are inches; false too where it does not say or cannot be read.</summary>
    public static bool IsInch(byte[] file) => JsonTree.Parse(file, out _) is { Kind: JsonKind.Object } root && root.Single("units")?.Text == "inch";

    /// <summary>The file with these holes in the stead of its own, in its unit; all else, comments too, stays as it is.</summary>
    /// <returns>Null, and why, where the file is no setup that can be written to.</returns>
    public static byte[]? Merge(byte[] file, IEnumerable<DrawingHole> holes, out string? error)
    {
        ArgumentNullException.ThrowIfNull(file);
        var root = JsonTree.Parse(file, out var fault);
        error = fault is not null ? $"in line {new LineMap(file).At(fault.Range.Start).Line}, {char.ToLowerInvariant(fault.Message[0])}{fault.Message[1..]}"
            : root!.Kind != JsonKind.Object ? "it holds no object in braces"
            : root.Members.Count(member => member.Name == "holes") > 1 ? "it has the member \"holes\" more than once"
            : root.Single("units") is { } units && units is not { Kind: JsonKind.Text, Text: "mm" or "inch" } ? "its \"units\" are neither mm nor inch"
            : null;
        if (error is not null)
            return null;
        var newLine = file.AsSpan().IndexOf("\r\n"u8) >= 0 ? "\r\n" : "\n";
        var text = Text(holes, root!.Single("units")?.Text == "inch", newLine);
        var range = root.Single("holes")?.Range ?? new ByteRange(root.Range.Start + 1, root.Range.Start + 1);
        if (range.Start == range.End)
            text = $"{newLine}  \"holes\": {text},";
        return [.. file[..range.Start], .. Encoding.UTF8.GetBytes(text), .. file[range.End..]];
    }

    static string Number(double value) => Math.Round(value, 6).ToString("0.######", CultureInfo.InvariantCulture);
}
