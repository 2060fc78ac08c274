using System.Collections.Immutable;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.Execution;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Editing;

/// <summary>Tells the state of the control at a place of the program.</summary>
public static class StateAt
{
    /// <summary>The state behind the block on a line (0-based); null for a line outside the text.</summary>
    public static StateAnswer? Line(ProgramAnalysis analysis, int line)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        if (line < 0 || line >= analysis.Text.LineCount)
            return null;
        var step = analysis.Main.StepAt(line);
        var modes = ModalFacts.Of(analysis, line, step.After).Select(fact => new ModeAnswer(
            fact.Name,
            fact.Code.Length > 0 ? fact.Code : null,
            Known(fact.Value),
            fact.IsKnown ? fact.Text : null,
            fact.SetLine >= 0 ? fact.SetLine : null));
        var runs = (step.Events & (StepEvents.NotRun | StepEvents.Skipped)) == 0 && RunsText.NotReached(analysis, line).Length == 0;
        int? times = analysis.Main.BlockAt(line).Tokens.Length == 0 ? null : !runs ? 0 : analysis.Main.Flow?.RunsOf(line) ?? 1;
        return new StateAnswer(line, runs, times,
            Place(step.After.Position), Place(step.After.MachinePosition), [.. modes]);
    }

    static PlaceAnswer Place(Point3 at) => new(Known(at.X), Known(at.Y), Known(at.Z));

    /// <summary>The value, or null where it is not known or no number that JSON can hold.</summary>
    internal static double? Known(double value) => double.IsFinite(value) ? value : null;
}
