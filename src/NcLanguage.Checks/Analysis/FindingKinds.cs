using NcLanguage.Checks.Rules;
using NcLanguage.Control.State;

namespace NcLanguage.Checks.Analysis;

/// <summary>What some findings ask of those who put them together. Where a program has none of a kind, nobody goes over all findings behind a key to look for it.</summary>
[Flags]
enum FindingKinds : ushort
{
    None,

    /// <summary>There is a finding at all.</summary>
    Any = 1,

    /// <summary>What may be the way into a pilot hole: <see cref="PilotFindings"/>.</summary>
    Pilot = 1 << 1,

    /// <summary>Holes that are made at another place: <see cref="MisplacedFindings"/>.</summary>
    Misplaced = 1 << 2,

    /// <summary>What is told of one hole after another: <see cref="HoleFindings"/>.</summary>
    Hole = 1 << 3,

    /// <summary>What comes of a plane or a radius compensation: <see cref="SettingFindings"/>.</summary>
    Setting = 1 << 4,

    /// <summary>A level that is too deep for a tool: <see cref="DepthFindings"/>.</summary>
    Depth = 1 << 5,

    /// <summary>A program that is not there: <see cref="MissingPrograms"/>.</summary>
    MissingProgram = 1 << 6,

    /// <summary>A counter that runs away: <see cref="EndlessLoops"/>.</summary>
    EndlessLoop = 1 << 7,

    /// <summary>One slip that moves all of a program: <see cref="ExplainedFindings"/>.</summary>
    Explaining = 1 << 8,
}

static class FindingKindsOf
{
    public static FindingKinds One(Finding finding)
    {
        var kinds = FindingKinds.Any;
        if (HoleFindings.IsMarked(finding))
            kinds |= FindingKinds.Hole;
        if ((finding.Concerns & (Slot.Plane | Slot.Compensation)) != 0)
            kinds |= FindingKinds.Setting;
        if (finding.Rule.PutsFixesInDoubt)
            kinds |= FindingKinds.Explaining;
        return kinds | finding.Rule switch
        {
            CuttingSpeedRule or FeedPerTooth => FindingKinds.Pilot,
            HoleMissing => FindingKinds.Misplaced,
            DeeperThanFlutes => FindingKinds.Depth,
            SubprogramMissing => FindingKinds.MissingProgram,
            RunTooLong => FindingKinds.EndlessLoop,
            _ => FindingKinds.None,
        };
    }

    public static FindingKinds All(ReadOnlySpan<Finding> findings)
    {
        var kinds = FindingKinds.None;
        foreach (var finding in findings)
            kinds |= One(finding);
        return kinds;
    }
}
