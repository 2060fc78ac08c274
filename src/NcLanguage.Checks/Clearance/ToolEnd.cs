using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Clearance;

/// <summary>The lower end of a tool, flat or pointed.</summary>
static class ToolEnd
{
    /// <summary>Radius in mm that the tool certainly has <paramref name="height"/> mm above its tip: the whole one where the end is flat, that of the
    /// cone where the point angle is given, 0 where the tool, its diameter or its point is not known.</summary>
    public static double RadiusAt(Tool? tool, double height)
    {
        if (tool?.Diameter is not { } diameter || !(height > 0))
            return 0;
        if (tool.PointAngle is > 0 and < 180 and var angle)
            return Math.Min(diameter / 2, height * Math.Tan(angle * Math.PI / 360));
        return IsFlat(tool) ? diameter / 2 : 0;
    }

    /// <summary>True when the end is known to be flat, or nearly, over the whole diameter.</summary>
    public static bool IsFlat(Tool? tool) => tool is not null && (tool.PointAngle is 180 || (tool.PointAngle is null && tool.Kind
        is ToolKind.Counterbore or ToolKind.Reamer or ToolKind.BoringBar or ToolKind.EndMill or ToolKind.FaceMill or ToolKind.SlotMill or ToolKind.ThreadMill));
}
