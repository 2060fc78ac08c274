using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>Which H belongs to which tool.</summary>
static class LengthOffsets
{
    /// <summary>The H of a tool: as the setup lists it, else the tool's own number (common practice).</summary>
    public static int Of(int tool, Setup setup) => setup.FindTool(tool)?.LengthOffset ?? tool;
}
