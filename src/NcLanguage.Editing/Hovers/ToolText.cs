using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Editing;

/// <summary>What the setup says about a tool and its length offset.</summary>
static class ToolText
{
    /// <summary>For a T word.</summary>
    public static string Of(ProgramAnalysis analysis, Step step)
    {
        var number = step.After.SelectedTool;
        if (number < 0)
            return $"Which tool is {Lengths.NotKnown}.";
        if (!analysis.Setup.IsPresent)
            return "No setup file: nothing is known about the tool.";
        return analysis.Setup.FindTool(number) is { } tool ? $"In the setup: {Describe(tool)}." : "The setup does not list it.";
    }

    /// <summary>For an H word.</summary>
    public static string LengthOffset(ProgramAnalysis analysis, Step step)
    {
        if (step.After.H == 0)
            return "H0: no length.";
        if (!analysis.Setup.IsPresent)
            return "No setup file: its value is " + Lengths.NotKnown + ".";
        return analysis.Setup.FindLengthOffset(step.After.H)?.Length is { } length
            ? $"{Say.Mm(length)} in the setup, the length of T{analysis.Setup.FindLengthOffset(step.After.H)!.Number}."
            : "The setup does not give its value.";
    }

    /// <summary>spot drill, diameter 10 mm, point 90°, …</summary>
    public static string Describe(Tool tool)
    {
        var parts = new List<string> { Kind(tool) };
        if (tool.Diameter is { } diameter)
            parts.Add($"diameter {Say.Mm(diameter)}");
        if (tool.PointAngle is { } angle)
            parts.Add($"point {Say.Number(angle)}°");
        if (tool.Pitch is { } pitch)
            parts.Add($"pitch {Say.Mm(pitch)}");
        if (tool.Flutes is { } flutes)
            parts.Add(Say.Count(flutes, "tooth", "teeth"));
        if (tool.FluteLength is { } flute)
            parts.Add($"flutes {Say.Mm(flute)} long");
        if (tool.Length is { } length)
            parts.Add($"length {Say.Mm(length)}");
        if (tool.Stands && tool.Turns is not null)
            parts.Add("works with the spindle standing");
        if (tool.LengthOffset is { } offset)
            parts.Add($"H{offset}");
        return string.Join(", ", parts);
    }

    /// <summary>The kind in words: spot drill.</summary>
    public static string Kind(Tool tool) => tool.Kind is { } kind ? ToolKindName.Words(kind) : "tool";
}
