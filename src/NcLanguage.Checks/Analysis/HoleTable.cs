using System.Collections;
using System.Collections.Concurrent;
using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Analysis;

/// <summary>One hole of a program. Work coordinates, mm; NaN where not known.</summary>
/// <param name="Number">Running number from 1.</param>
/// <param name="Line">Line of its block, from 0 in the whole text.</param>
/// <param name="Hole">What was drilled; X and Y are the hole's place in the XY plane only.</param>
/// <param name="ToFrame">What to add to work coordinates to stand in the setup's frame, mm.</param>
/// <param name="Plane">The plane the cycle works in.</param>
/// <param name="Return">G98 or G99 as in force in its block.</param>
/// <param name="LeastReturn">The lowest level, not below this hole's R level, at which the traverse to the next hole keeps the setup's
/// clearance from everything the setup lists, by going over it. NaN where that is not known (nothing listed, a place, or the tool's
/// diameter) and for the last hole of a run.</param>
/// <param name="Coordinates">The coordinates that its place and its levels are meant in.</param>
/// <param name="File">The name of the file that the hole's block stands in, where that is another: the line is then that of the call.</param>
public readonly record struct HoleRow(
    int Number, int Line, Hole Hole, Point3 ToFrame, WorkPlane Plane, ReturnLevel Return, double LeastReturn, WorkCoordinates Coordinates, string? File)
{
    /// <summary>mm/min.</summary>
    public DrillingRate Feed => new(Hole.ProgrammedFeed, Hole.Feed);

    /// <summary>1/min.</summary>
    public required DrillingRate Speed { get; init; }
}

/// <summary>A feed, mm/min, or a speed, 1/min, of a hole; NaN where not known.</summary>
/// <param name="Programmed">As the program says it.</param>
/// <param name="Machine">What the machine makes of it within its limits, where it goes on: it may stop with an alarm instead.</param>
public readonly record struct DrillingRate(double Programmed, double Machine)
{
    /// <summary>Whether the machine does not do what the program says.</summary>
    public bool IsLimited => double.IsFinite(Programmed) && double.IsFinite(Machine) && Math.Abs(Programmed - Machine) > 1e-9 * Math.Abs(Programmed);
}

/// <summary>All holes that a run of a program drills, in the order drilled. A view: rows are made when asked for, so that one hole of a
/// long program costs no more than one of a short one.</summary>
public sealed class HoleTable : IReadOnlyList<HoleRow>
{
    readonly ProgramRun _run;
    readonly int[] _starts;
    bool? _namesCoordinates;

    internal HoleTable(ProgramRun run)
    {
        _run = run;
        _starts = new int[run.PartsKnown + 1];
        for (var i = 0; i < run.PartsKnown; i++)
            _starts[i + 1] = _starts[i] + run.FactsOf(i).Holes;
    }

    public static HoleTable Of(ProgramRun run)
    {
        ArgumentNullException.ThrowIfNull(run);
        return run.HoleTable;
    }

    public int Count => _run.IsWhole ? _starts[^1] : throw new NotYetRunException();

    /// <summary>Whether there is a hole with the running number <paramref name="index"/> + 1.</summary>
    public bool Has(int index) => index < _starts[^1] || index < Count;

    /// <summary>What has been planned for the runs of holes that the block on a line (0-based) is part of, where blocks run more than once; null where there is no plan.</summary>
    internal ConcurrentDictionary<(HopAim Aim, int Line), HopPlan?> Plans { get; } = new();

    /// <summary>The hole with the running number <paramref name="index"/> + 1.</summary>
    public HoleRow this[int index]
    {
        get
        {
            var chunk = ChunkOf(index);
            var part = _run.Part(chunk);
            var result = part.Holes[index - _starts[chunk]];
            var least = Has(index + 1) ? HopClearance.LeastReturn(_run.Job, result, ResultAt(index + 1)) : double.NaN;
            return new HoleRow(
                index + 1, _run.LineOf(chunk, result.Line), result.Hole, result.ToFrame, result.Plane, result.Return, least, part.CoordinatesAt(result.Line), part.File)
            {
                Speed = new DrillingRate(result.Hole.Speed, _run.Job.Machine.SpeedOf(result.Hole.Speed)),
            };
        }
    }

    /// <summary>Whether any hole is drilled by a block of another file.</summary>
    public bool HasOtherFiles
    {
        get
        {
            foreach (var part in _run.Results)
                if (part.IsElsewhere && part.Holes.Length > 0)
                    return true;
            return false;
        }
    }

    /// <summary>Whether a hole is drilled with another feed or speed than the program says because of the machine's limits.</summary>
    public bool MeetsLimits
    {
        get
        {
            foreach (var part in _run.Results)
                if (part.Holes.MeetsLimits(_run.Job.Machine))
                    return true;
            return false;
        }
    }

    /// <summary>Whether holes have to be told with their coordinates: not all of them stand under the same work offset, the program shifts it, or it is another than the setup is meant in.</summary>
    public bool NamesCoordinates => _namesCoordinates ??= AreUnderSeveral();

    bool AreUnderSeveral()
    {
        WorkCoordinates? first = null;
        for (var index = 0; index < _run.PartsKnown; index++)
        {
            var part = _run.Part(index);
            for (var i = 0; i < part.Holes.Length; i++)
            {
                var coordinates = part.CoordinatesAt(part.Holes.LineOf(i));
                first ??= coordinates;
                if (coordinates.IsShifted || coordinates.WorkOffset != first.WorkOffset || _run.Job.IsOutsideFrame(coordinates.WorkOffset))
                    return true;
                // What comes behind is the same.
                if (part.Coordinates.Length == 1)
                    break;
            }
        }
        if (!_run.IsWhole && (first is null || !_run.StaysIn(first.WorkOffset)))
            throw new NotYetRunException();
        return false;
    }

    /// <summary>Index of the first hole that the block on a line (0-based) drills, and how many it drills; the first time where it runs more than once.</summary>
    public (int First, int Count) At(int line)
    {
        var (chunk, inChunk) = _run.FirstRunOf(line);
        if (chunk < 0)
            return (0, 0);
        var holes = _run.Part(chunk).Holes;
        var first = 0;
        for (var high = holes.Length; first < high;)
        {
            var middle = (first + high) / 2;
            if (holes.LineOf(middle) < inChunk)
                first = middle + 1;
            else
                high = middle;
        }
        var end = first;
        while (end < holes.Length && holes.LineOf(end) == inChunk)
            end++;
        return (_starts[chunk] + first, end - first);
    }

    /// <summary>The uninterrupted run of holes that a hole belongs to: index of its first hole and of the one after its last.</summary>
    public (int First, int End) RunOf(int index)
    {
        var first = index;
        while (first > 0 && IsHop(first))
            first--;
        var end = index + 1;
        while (Has(end) && IsHop(end))
            end++;
        return (first, end);
    }

    public IEnumerator<HoleRow> GetEnumerator()
    {
        for (var i = 0; i < Count; i++)
            yield return this[i];
    }

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    /// <summary>Line (0-based in the whole text) of the block that drilled a hole.</summary>
    internal int LineOf(int index)
    {
        var (part, at) = BlockOf(index);
        return _run.LineOf(part, at);
    }

    /// <summary>The part of the run that drilled a hole, and which of its blocks did.</summary>
    internal (int Part, int At) BlockOf(int index)
    {
        var chunk = ChunkOf(index);
        return (chunk, _run.Part(chunk).Holes.LineOf(index - _starts[chunk]));
    }

    /// <summary>The hole with the running number <paramref name="index"/> + 1 as the run noted it, without its least return.</summary>
    public HoleResult ResultAt(int index)
    {
        var chunk = ChunkOf(index);
        return _run.Part(chunk).Holes[index - _starts[chunk]];
    }

    bool IsHop(int index)
    {
        var chunk = ChunkOf(index);
        return _run.Part(chunk).Holes.IsHop(index - _starts[chunk]);
    }

    int ChunkOf(int index)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(index);
        if (!Has(index))
            throw new ArgumentOutOfRangeException(nameof(index));
        var (low, high) = (0, _starts.Length - 1);
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            if (_starts[middle] <= index)
                low = middle;
            else
                high = middle;
        }
        return low;
    }
}
