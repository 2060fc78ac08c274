using NcLanguage.Control.State;

namespace NcLanguage.Checks.Analysis;

/// <summary>The lines of the blocks that findings concern: which set last what they speak of. Asked in the order of the text, the run is gone through once for each part of the state,
/// however many findings there are and however far behind it they stand.</summary>
/// <param name="run">The run that the findings are of.</param>
public sealed class SetterLines(ProgramRun run)
{
    readonly Dictionary<Slot, (int Line, int Setter)> _last = [];

    /// <summary>The line of the block (from 0) that set last what a finding concerns; −1 where none did, or it concerns nothing.</summary>
    public int Of(Finding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        if (finding.Concerns == 0)
            return -1;
        if (run.Flow is not null)
            return run.LastSetterBefore(finding.Concerns, finding.Line, finding.Run);
        if (!_last.TryGetValue(finding.Concerns, out var known) || finding.Line < known.Line)
            known = (0, -1);
        var setter = run.LastInText(finding.Concerns, finding.Line - 1, known.Line);
        if (setter < 0)
            setter = known.Setter;
        _last[finding.Concerns] = (finding.Line, setter);
        return setter;
    }
}
