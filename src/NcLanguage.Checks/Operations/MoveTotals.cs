using NcLanguage.Control.Moves;

namespace NcLanguage.Checks.Operations;

/// <summary>What a number of moves come to. Lengths in mm, seconds; what is not known is left out and counted.</summary>
public sealed class MoveTotals
{
    /// <summary>Seconds of all moves: the sum of the four kinds.</summary>
    public double Seconds => RapidSeconds + FeedSeconds + DwellSeconds + ChangeSeconds;

    public double RapidSeconds { get; private set; }

    /// <summary>Seconds of feeds and arcs, whether they cut or not.</summary>
    public double FeedSeconds { get; private set; }

    public double DwellSeconds { get; private set; }

    /// <summary>Seconds of tool changes.</summary>
    public double ChangeSeconds { get; private set; }

    /// <summary>Length of the ways that do not cut, mm.</summary>
    public double RapidDistance { get; private set; }

    /// <summary>Length of the ways on which the tool cuts, mm.</summary>
    public double CutDistance { get; private set; }

    /// <summary>Moves whose length or time is not known.</summary>
    public int UnknownMoves { get; private set; }

    /// <param name="move">The move.</param>
    /// <param name="length">Length of its path, mm; 0 for what does not travel.</param>
    public void Add(in Move move, double length)
    {
        if (double.IsNaN(move.Seconds) || double.IsNaN(length))
            UnknownMoves++;
        if (!double.IsNaN(move.Seconds))
            AddSeconds(move);
        // A probe move ends somewhere on its way.
        if (double.IsNaN(length) || move.Role == MoveRole.Probe)
            return;
        if (move.IsCut)
            CutDistance += length;
        else
            RapidDistance += length;
    }

    public void Add(MoveTotals other)
    {
        ArgumentNullException.ThrowIfNull(other);
        RapidSeconds += other.RapidSeconds;
        FeedSeconds += other.FeedSeconds;
        DwellSeconds += other.DwellSeconds;
        ChangeSeconds += other.ChangeSeconds;
        RapidDistance += other.RapidDistance;
        CutDistance += other.CutDistance;
        UnknownMoves += other.UnknownMoves;
    }

    void AddSeconds(in Move move)
    {
        switch (move.Kind)
        {
            case MoveKind.Rapid:
                RapidSeconds += move.Seconds;
                break;
            case MoveKind.Feed or MoveKind.Arc:
                FeedSeconds += move.Seconds;
                break;
            case MoveKind.ToolChange:
                ChangeSeconds += move.Seconds;
                break;
            default:
                // Spindle, coolant and stops take no time that is known beforehand.
                DwellSeconds += move.Seconds;
                break;
        }
    }
}
