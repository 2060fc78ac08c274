using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>A piece of a helix of a thread mill.</summary>
/// <param name="Rise">How much higher it ends than it begins, mm.</param>
/// <param name="Sweep">Radians.</param>
/// <param name="Line">The block of its first arc, from 0.</param>
readonly record struct HelixPiece(Tool Tool, double Rise, double Sweep, int Line)
{
    /// <summary>How far a lead may be off, in pitches: levels are rounded, and a thread is milled a little long where the part shrinks.</summary>
    const double Tolerance = 0.03;

    /// <summary>How far a lead may always be off, mm: levels in inches are rounded to a thousandth.</summary>
    const double Rounding = 0.013;

    /// <summary>The most starts that a thread is taken to have.</summary>
    public const int MostStarts = 4;

    public double Pitch => Tool.Pitch ?? double.NaN;

    /// <summary>Rise for each turn, mm.</summary>
    public double Lead => Rise / Sweep * RoundCut.Turn;

    public bool IsWholeTurn => Sweep >= RoundCut.Turn - RoundCut.Rounding;

    /// <summary>Whether its lead is no thread's of the tool's pitch. A level one is no thread.</summary>
    public bool IsOffPitch
    {
        get
        {
            var lead = Math.Abs(Lead);
            for (var starts = 1; starts <= MostStarts; starts++)
                if (Math.Abs(lead - starts * Pitch) <= Math.Max(Rounding, Tolerance * starts * Pitch))
                    return false;
            return lead >= RoundCut.Same;
        }
    }

    /// <summary>How much it rises where it climbs by a lead, mm.</summary>
    public double RiseAt(double lead) => lead * Sweep / RoundCut.Turn;

    /// <summary>Whether it climbs by a lead; either end may be rounded.</summary>
    public bool ClimbsBy(double lead) => Math.Abs(Rise - RiseAt(lead)) <= Math.Max(2 * Rounding, Tolerance * Math.Abs(RiseAt(lead)));

    public HelixPiece With(in HelixPiece next) => this with { Rise = Rise + next.Rise, Sweep = Sweep + next.Sweep };
}

/// <summary>An arc that leaves its helix.</summary>
/// <param name="Wanted">How much it would rise within the helix, mm.</param>
readonly record struct AstrayPiece(HelixPiece Of, double Wanted);

/// <summary>Arcs of one thread mill about one centre, one after the other.</summary>
sealed class ThreadHelix
{
    /// <summary>Leads of arcs that differ by less are one helix', mm for each turn: the levels of short arcs are rounded.</summary>
    const double SameLead = 0.1;

    /// <summary>How much of all has to climb as it should, for the rest to be what is wrong.</summary>
    const double LeastShare = 0.5;

    readonly List<HelixPiece> _arcs = [];
    RoundCut _last;

    public int Count => _arcs.Count;

    public bool GoesOnWith(in RoundCut arc) => _arcs.Count > 0 && !arc.BeginsAnew && arc.Continues(_last);

    public void Add(in RoundCut arc, int line)
    {
        _arcs.Add(new HelixPiece(arc.Tool, arc.To.Z - arc.From.Z, arc.Sweep, line));
        _last = arc;
    }

    public void Clear() => _arcs.Clear();

    /// <summary>Whole turns, in one arc or several that climb alike.</summary>
    public IEnumerable<HelixPiece> WholeTurns()
    {
        for (var i = 0; i < _arcs.Count;)
        {
            var piece = _arcs[i++];
            while (i < _arcs.Count && Math.Abs(_arcs[i].Lead - piece.Lead) <= SameLead)
                piece = piece.With(_arcs[i++]);
            if (piece.IsWholeTurn)
                yield return piece;
        }
    }

    /// <summary>The first arc that leaves a helix of the right lead. What stands before or behind a whole turn may be a way in or out, unless it makes good what it leaves; null where there is none.</summary>
    public AstrayPiece? FirstAstray()
    {
        if (_arcs.Count < 2 || !Together(0, _arcs.Count).IsWholeTurn || LeadMeant() is not (not 0 and var lead))
            return null;
        var (first, end) = (_arcs.FindIndex(arc => arc.ClimbsBy(lead)), _arcs.FindLastIndex(arc => arc.ClimbsBy(lead)) + 1);
        var isThread = first >= 0 && Together(first, end).IsWholeTurn;
        if (!isThread || IsMadeGood(0, first, lead))
            first = 0;
        if (!isThread || IsMadeGood(end, _arcs.Count, lead))
            end = _arcs.Count;
        for (var i = first; i < end; i++)
            if (!_arcs[i].ClimbsBy(lead))
                return new AstrayPiece(_arcs[i], _arcs[i].RiseAt(lead));
        return null;
    }

    /// <summary>The lead, with its sign, that most of the arcs climb by or all of them together, where it is one of the tool's pitch; 0 where there is none.</summary>
    double LeadMeant()
    {
        var all = Together(0, _arcs.Count);
        return LeadWhere(lead => _arcs.Where(arc => arc.ClimbsBy(lead)).Sum(arc => arc.Sweep) >= LeastShare * all.Sweep) is not 0 and var most ? most : LeadWhere(lead => all.ClimbsBy(lead));
    }

    double LeadWhere(Predicate<double> isIt)
    {
        for (var starts = 1; starts <= HelixPiece.MostStarts; starts++)
            foreach (var lead in (ReadOnlySpan<double>)[starts * _arcs[0].Pitch, -starts * _arcs[0].Pitch])
                if (isIt(lead))
                    return lead;
        return 0;
    }

    /// <summary>Whether some arcs climb by a lead together: then a level between them is wrong.</summary>
    bool IsMadeGood(int first, int end, double lead) => end - first > 1 && Together(first, end).ClimbsBy(lead);

    HelixPiece Together(int first, int end)
    {
        var piece = _arcs[first];
        for (var i = first + 1; i < end; i++)
            piece = piece.With(_arcs[i]);
        return piece;
    }
}
