using System.Collections.Frozen;
using NcLanguage.Checks;
using NcLanguage.Checks.Analysis;
using NcLanguage.Server.Documents;

namespace NcLanguage.Server.Features;

/// <summary>What a program lacks only because it is not written to its end: while it is typed that is told as a note, and as it is once it is saved.</summary>
/// <param name="IsTyped">Whether it was changed since it was opened or saved.</param>
/// <param name="IsUnfinished">Whether it has no end yet, or had no block yet when it was opened or saved.</param>
/// <param name="Line">The line behind which the control still meets what is being written, from 0; −1 where that may be anywhere, or the program is finished.</param>
readonly record struct StillToCome(bool IsTyped, bool IsUnfinished, int Line)
{
    const string ProgramEnd = "program-end-missing";

    /// <summary>Asks for blocks that may stand anywhere: a later operation, a program that is called, the block that a jump leads to.</summary>
    static readonly FrozenSet<string> AsksForBlocks = FrozenSet.Create(
        StringComparer.Ordinal,
        "hole-missing", "hole-not-finished", "hole-shallow", "hole-wrong-size", "jump-missing", "subprogram-missing", "subprogram-return-missing");

    /// <summary>Meets what is on where it stands: what turns it off belongs before it, and there the program is being written.</summary>
    static readonly FrozenSet<string> LeftOn = FrozenSet.Create(
        StringComparer.Ordinal,
        "compensation-left-on", "coolant-left-on", "cycle-ended-by-move", "cycle-not-cancelled", "frame-left-on", "incremental-left-on", "spindle-left-on", "tool-change-low");

    public static StillToCome Of(DocumentSnapshot snapshot, ProgramAnalysis analysis, IEnumerable<Finding> findings)
    {
        if (snapshot.Typing is not { } typing)
            return default;
        // A program that somebody writes from its beginning has no end until the last line, or one that was written first and the blocks before it one by one.
        var isUnfinished = typing.IsNew || findings.Any(finding => finding.Name == ProgramEnd);
        // A called program is written behind its caller, and met before what follows the call.
        return new StillToCome(true, isUnfinished, isUnfinished && analysis.Main.Flow is null ? typing.Line : -1);
    }

    /// <param name="wasThere">Whether it stood there when the program was opened or saved: what is left on there then was not left on by what is written now.</param>
    public bool Asks(Finding finding, bool wasThere) =>
        IsTyped && (finding.Name == ProgramEnd || (IsUnfinished && (AsksForBlocks.Contains(finding.Name) || (!wasThere && finding.Line > Line && LeftOn.Contains(finding.Name)))));
}
