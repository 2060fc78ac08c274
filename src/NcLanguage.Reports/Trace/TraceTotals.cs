using NcLanguage.Checks.Operations;
using NcLanguage.Control.Flow;
using NcLanguage.Control.Moves;

namespace NcLanguage.Reports.Trace;

/// <summary>What a whole program comes to. Lengths in mm, seconds; moves not known are left out and counted.</summary>
public sealed class TraceTotals
{
    readonly MoveTotals _moves = new();

    public double Seconds => _moves.Seconds;

    public double RapidDistance => _moves.RapidDistance;

    public double CutDistance => _moves.CutDistance;

    /// <summary>Moves whose length or time is not known.</summary>
    public int UnknownMoves => _moves.UnknownMoves;

    /// <summary>How a run that left the order of the text has ended; None where it kept to it.</summary>
    public FlowEnd End { get; internal set; }

    /// <param name="length">Length of its path, mm.</param>
    public void Add(in Move move, double length) => _moves.Add(move, length);
}
