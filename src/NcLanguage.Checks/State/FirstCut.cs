using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>The first cut of a tool, for what is said of a feed or a speed that was given for the tool before.</summary>
static class FirstCut
{
    /// <summary>Whether nothing is said: a probe cuts nothing, and a tapping cycle whose pitch the setup gives is left to tap-feed.</summary>
    public static bool IsLeftOut(in StepContext step)
    {
        ref readonly var after = ref step.Step.After;
        var tool = step.Job.Setup.FindTool(after.Tool);
        return tool?.Kind == ToolKind.Probe || (after.Cycle is 84 or 74 && tool?.Pitch is not null);
    }

    /// <summary>T5, where the tool is known.</summary>
    public static string ToolOf(in StepContext step) => step.Step.After.Tool is > 0 and var tool ? $"T{tool}" : "this tool";
}
