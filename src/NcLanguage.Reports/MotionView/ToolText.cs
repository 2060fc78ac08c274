using NcLanguage.Checks;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Reports.MotionView;

/// <summary>A tool in one line: "T1 spot drill, 10 mm, 90°"; what the setup does not give is left out.</summary>
static class ToolText
{
    public static string Of(Tool tool, LengthText lengths)
    {
        var text = $"T{tool.Number}";
        if (tool.Kind is { } kind)
            text += " " + ToolKindName.Words(kind);
        if (tool.Diameter is { } diameter)
            text += $", {lengths.Length(diameter)}";
        if (tool.PointAngle is { } angle)
            text += $", {Say.Number(angle)}°";
        return text;
    }
}
