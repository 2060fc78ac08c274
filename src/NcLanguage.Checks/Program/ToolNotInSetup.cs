using System.Globalization;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Control.State;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>A tool that the setup's list lacks.</summary>
public sealed class ToolNotInSetup : Rule
{
    /// <summary>How many of the listed tools a message names.</summary>
    const int MostNamed = 3;

    public override RuleInfo Info { get; } = new()
    {
        Id = "NC6011",
        Name = "tool-not-in-setup",
        Severity = Severity.Error,
        Title = "The setup lists no such tool",
        Finds = "A T word with a number that the setup's tool list lacks. T0, no tool, is none; a setup without tools says nothing.",
        AtTheMachine = "The changer brings an empty holder or a tool nobody measured, or the control stops with an alarm.",
        Setup = """
            { "tools": [ { "number": 3, "kind": "drill", "diameter": 8, "length": 140 }, { "number": 5, "kind": "tap", "diameter": 10, "length": 120 } ] }
            """,
        Example = """
            G21 G90 G17 G54
            T4 M6
            ~^
            G0 X20 Y30
            M30
            """,
        Instead = """
            G21 G90 G17 G54
            T5 M6
            G0 X20 Y30
            M30
            """,
        NotFound = "A tool that is listed but stands in another place of the magazine, or is another tool than the list says.",
        Source = "Common practice.",
    };

    public override StepEvents Interest => StepEvents.News;

    public override void CheckStep(in StepContext step)
    {
        var setup = step.Job.Setup;
        if ((step.Step.Sets & Slot.SelectedTool) == 0 || setup.Tools.IsEmpty)
            return;
        var number = step.Step.After.SelectedTool;
        if (number <= 0 || setup.FindTool(number) is not null)
            return;
        step.Report(this, step.Step.Words.TokenOf('T'), $"The setup lists no tool {number}: {Nearest(setup, number)}.");
    }

    static string Nearest(Setup setup, int number)
    {
        var nearest = setup.Tools.OrderBy(tool => Math.Abs(tool.Number - number)).Take(MostNamed)
            .Select(tool => tool.Number).Order().Select(one => one.ToString(CultureInfo.InvariantCulture)).ToArray();
        return nearest.Length == 1
            ? $"{(setup.Tools.Length == 1 ? "its only tool" : "the nearest")} is {nearest[0]}"
            : $"{(setup.Tools.Length == nearest.Length ? "its tools" : "the nearest")} are {string.Join(", ", nearest[..^1])} and {nearest[^1]}";
    }
}
