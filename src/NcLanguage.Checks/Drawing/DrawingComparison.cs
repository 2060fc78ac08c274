using System.Collections.Immutable;
using NcLanguage.Checks.Analysis;
using NcLanguage.Control.State;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Drawing;

/// <summary>Holds the holes that a program drills in cycles against those that the drawing asks for. Holes that are milled, or bored by
/// plain feeds, are not seen.</summary>
public sealed class DrawingComparison
{
    /// <summary>Places nearer than this in X and Y are one, mm: a hundredth is below what any drilled hole is placed to.</summary>
    public const double SamePlace = 0.01;

    readonly Job _job;
    readonly Dictionary<(long, long), List<Place>> _cells = [];
    readonly List<Place> _places = [];

    DrawingComparison(Job job) => _job = job;

    /// <summary>False where the program drills at places that are not known: nothing can be called missing then.</summary>
    public bool AreAllPlacesKnown { get; private set; } = true;

    /// <summary>The drawing's holes in the setup's order, then the extra ones in the order drilled.</summary>
    public ImmutableArray<DrawingMatch> Matches { get; private set; } = [];

    /// <summary>Empty where the setup lists no holes: then there is nothing to compare with.</summary>
    public static DrawingComparison Of(HoleTable holes, Job job)
    {
        ArgumentNullException.ThrowIfNull(holes);
        ArgumentNullException.ThrowIfNull(job);
        var comparison = new DrawingComparison(job);
        if (job.Setup.Holes.IsEmpty)
            return comparison;
        for (var i = 0; i < holes.Count; i++)
            comparison.Note(holes.ResultAt(i), i + 1);
        comparison.Matches = [.. comparison.Compare()];
        return comparison;
    }

    IEnumerable<DrawingMatch> Compare()
    {
        var judge = new HoleJudge(_job.Setup);
        foreach (var wanted in _job.Setup.Holes)
        {
            var place = FindPlace(wanted.X, wanted.Y);
            if (place is null)
            {
                yield return new DrawingMatch { Wanted = wanted, X = wanted.X, Y = wanted.Y, Status = AreAllPlacesKnown ? HoleStatus.Missing : null };
                continue;
            }
            place.IsWanted = true;
            yield return judge.Judge(wanted, place.Holes);
        }
        foreach (var place in _places)
            if (!place.IsWanted)
                yield return judge.Extra(place.X, place.Y, place.Holes);
    }

    sealed class Place(double x, double y)
    {
        public double X => x;

        public double Y => y;

        public List<DrilledHole> Holes { get; } = [];

        public bool IsWanted { get; set; }
    }

    void Note(in HoleResult result, int number)
    {
        var (x, y) = (result.Hole.X + result.ToFrame.X, result.Hole.Y + result.ToFrame.Y);
        if (result.Plane != WorkPlane.XY || double.IsNaN(x + y))
        {
            AreAllPlacesKnown = false;
            return;
        }
        var place = FindPlace(x, y);
        if (place is null)
        {
            place = new Place(x, y);
            _places.Add(place);
            var cell = CellOf(x, y);
            if (!_cells.TryGetValue(cell, out var inCell))
                _cells[cell] = inCell = [];
            inCell.Add(place);
        }
        place.Holes.Add(new DrilledHole(number, result.Hole, result.Hole.Bottom + result.ToFrame.Z));
    }

    static (long, long) CellOf(double x, double y) => ((long)Math.Floor(x / SamePlace), (long)Math.Floor(y / SamePlace));

    Place? FindPlace(double x, double y)
    {
        const double Rounding = 1e-9;
        var (column, row) = CellOf(x, y);
        for (var i = -1; i <= 1; i++)
            for (var j = -1; j <= 1; j++)
                foreach (var place in _cells.GetValueOrDefault((column + i, row + j)) ?? [])
                    if (Math.Abs(place.X - x) <= SamePlace + Rounding && Math.Abs(place.Y - y) <= SamePlace + Rounding)
                        return place;
        return null;
    }
}
