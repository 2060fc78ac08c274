using NcLanguage.Control.State;

namespace NcLanguage.Control.Flow;

/// <summary>How the run arrives at a place it has been at.</summary>
enum Arrival : byte
{
    /// <summary>The control is not as it was.</summary>
    New,

    /// <summary>The control is as it was, and nothing can make it go another way.</summary>
    Endless,

    /// <summary>The control is as it was, but it is not known which way it goes in between.</summary>
    Doubtful,
}

/// <summary>Watches the ways back of a run for those that will be taken for ever.</summary>
sealed class LoopWatch
{
    readonly Dictionary<(CallFrame Frame, int Line), Way> _ways = [];

    /// <summary>Counts up whenever something steers the run that is no part of the state: a counted loop, a repeated call, a place read.</summary>
    int _turns;

    /// <summary>Counts the ways back that were taken.</summary>
    int _arrivals;

    /// <summary>Counts the places where it was not known which way the run goes.</summary>
    int _doubts;

    /// <summary>The line (0-based, in the program itself) from which most ways back were taken, and how many; −1 where none was.</summary>
    public (int Line, long Count) Busiest { get; private set; } = (-1, 0);

    public void NoteTurn() => _turns++;

    public void NoteDoubt() => _doubts++;

    /// <summary>Whether it was anywhere not known which way the run goes.</summary>
    public bool HasDoubts => _doubts > 0;

    /// <summary>Notes a way back to a line; tells whether the control is then as it was at an earlier arrival there, so that it will come again and again.</summary>
    /// <param name="from">The block that goes back, as a line of the program itself.</param>
    /// <param name="readsPlace">Whether anything that steers the run hangs on where the tool stands.</param>
    public Arrival ComesAgain(CallFrame frame, int line, int from, in ControlState state, bool readsPlace)
    {
        if (!_ways.TryGetValue((frame, line), out var way))
            _ways.Add((frame, line), way = new Way());
        way.Count++;
        way.Last = ++_arrivals;
        if (way.Count > Busiest.Count)
            Busiest = (from, way.Count);
        if (way.HasKept && way.Turns == _turns && (readsPlace ? way.State == state : Same(way.State.Variables, state.Variables)))
            return IsWithinAnother(frame, line, way) ? Arrival.New : way.Doubts == _doubts ? Arrival.Endless : Arrival.Doubtful;
        // Kept at arrivals 1, 2, 4, 8 …: a ring of any length is met once the distance to the next has grown beyond it.
        if ((way.Count & (way.Count - 1)) == 0)
            (way.HasKept, way.Kept, way.State, way.Turns, way.Doubts) = (true, _arrivals, state, _turns, _doubts);
        return Arrival.New;
    }

    /// <summary>Whether the run has come back to an earlier line of the program since the state was kept: then it is that loop which comes again, and it is met there.</summary>
    bool IsWithinAnother(CallFrame frame, int line, Way way)
    {
        foreach (var (place, other) in _ways)
            if (place.Frame == frame && place.Line < line && other.Last > way.Kept)
                return true;
        return false;
    }

    static bool Same(Variables? a, Variables? b) => (a ?? Variables.None).Equals(b ?? Variables.None);

    sealed class Way
    {
        public long Count;

        /// <summary>When the run came here last, counted in ways back, and when the state was kept.</summary>
        public int Last;

        public int Kept;
        public bool HasKept;
        public ControlState State;
        public int Turns;
        public int Doubts;
    }
}
