using NcLanguage.Checks.Analysis;

namespace NcLanguage.Checks;

/// <summary>How sure a fix can be of what was meant.</summary>
static class Certainty
{
    /// <summary>Of a fix that rests on how the control reads the program: where nobody has chosen a machine, or its file could not be read, another way of reading may be
    /// the one at the machine, and somebody has to look.</summary>
    public static FixSafety OfReading(ProgramAnalysis analysis) => analysis.Machine.IsChosen ? FixSafety.Safe : FixSafety.Choice;
}
