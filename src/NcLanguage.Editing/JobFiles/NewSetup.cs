using System.Text;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.State;
using NcLanguage.Editing.Refactorings;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Editing;

/// <summary>The beginning of a setup file: what the program tells of its unit, work offset and tools, and room for what it cannot know.</summary>
public static class NewSetup
{
    /// <summary>Text of a setup file without mistakes. Sizes that nobody gave stand in comments.</summary>
    /// <param name="analysis">The program.</param>
    /// <param name="name">Its file's name.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static string Of(ProgramAnalysis analysis, string name, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        ArgumentNullException.ThrowIfNull(name);
        var (isInch, offset, tools) = Facts(analysis, cancel);
        var (unit, depth, width, height) = isInch ? ("inch", "0.5", "4", "1") : ("mm", "12", "100", "25");
        var text = new StringBuilder();
        text.Append("{\n");
        text.Append($"  // The setup of {name.ReplaceLineEndings(" ")}. Lengths in {unit}, from the zero point of {WorkOffsetName.Format(offset)}.\n");
        text.Append($"  \"units\": \"{unit}\",\n");
        text.Append($"  \"frame\": \"{WorkOffsetName.Format(offset)}\",\n");
        text.Append("  // Two opposite corners, X Y Z. Write your own sizes and take the two slashes before the line away.\n");
        text.Append($"  // \"stock\": {{ \"min\": [0, 0, -{depth}], \"max\": [{width}, {width}, 0] }},\n");
        text.Append($"  // \"obstacles\": [ {{ \"name\": \"clamp\", \"min\": [0, 0, 0], \"max\": [{height}, {height}, {height}] }} ],\n");
        text.Append("  \"tools\": [\n");
        foreach (var (number, lengthOffset) in tools)
            text.Append($"    {{ \"number\": {number}{(lengthOffset > 0 ? $", \"lengthOffset\": {lengthOffset}" : "")} }},\n");
        return text.Append("  ]\n}\n").ToString();
    }

    static (bool IsInch, int Offset, SortedDictionary<int, int> Tools) Facts(ProgramAnalysis analysis, CancellationToken cancel)
    {
        var walk = new ProgramWalk(analysis.Text, analysis.Main.Job, cancel);
        var tools = new SortedDictionary<int, int>();
        var (isInch, offset) = (false, -1);
        while (walk.MoveNext())
        {
            ref readonly var after = ref walk.Step.After;
            isInch |= after.Units == LengthUnit.Inch;
            if (walk.Step.Moves.Count > 0 && offset < 0)
                offset = after.WorkOffset;
            if (after.Tool <= 0)
                continue;
            tools.TryAdd(after.Tool, 0);
            if (after.H > 0 && walk.Step.Words.Has('H') && tools[after.Tool] == 0)
                tools[after.Tool] = after.H;
        }
        return (isInch, offset > 0 ? offset : 54, tools);
    }
}
