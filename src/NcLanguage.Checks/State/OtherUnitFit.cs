using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Checks.Drawing;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Rules;

/// <summary>Whether a program's numbers fit the setup as it stands, or in the other unit: the whole work taken 25.4 times as large or as small about the program's zero.</summary>
/// <param name="file">A run that works under one unit, and under the setup's work offset only, so that its zero is the setup's.</param>
/// <param name="factor">By how much the other unit makes a length longer: 25.4 or a 25.4th.</param>
readonly ref struct OtherUnitFit(FileContext file, double factor)
{
    /// <summary>Stocks that the work reaches over, from which on no other slip makes it so large; and how many do where the depths are as far off.</summary>
    const double MostStocks = 20, ManyStocks = 3;

    /// <summary>How many of the moves end beside the stock at least.</summary>
    const double LeastShare = 0.5;

    /// <summary>How much of the stock's length or width holes that overlap are to need in the other unit.</summary>
    const double LeastOfStock = 0.25;

    /// <summary>How far the work reaches beside the stock where it fits, in its length and width: half, for ways in and out. Below it: as far as a point goes through, mm.</summary>
    const double Beside = 0.5, Below = 10;

    /// <summary>Holes or places that are needed to tell anything.</summary>
    const int FewestHoles = 2, FewestPlaces = 3;

    /// <summary>Moves and places that are looked at: it is asked at each key, and a slip of the unit shows at the beginning.</summary>
    const int MostMoves = 5_000, MostPlaces = 200;

    /// <summary>How far holes may be off that were rounded in the other unit, mm.</summary>
    const double SameHole = 2 * WorkedPlaces.SamePlace;

    readonly FileContext _file = file;

    Setup Setup => _file.Run.Job.Setup;

    /// <summary>What shows that the numbers are meant in the other unit, as the middle of a sentence in the unit of a line, counted from 0; null where nothing does.</summary>
    public string? Sign(int line)
    {
        // Of most programs it is known without a look at their moves.
        var holes = OfDrawing();
        var near = factor > 1 && Setup.Stock is not null && _file.Run.PartFacts.All.Holes >= FewestPlaces ? NearestHoles() : null;
        if (factor > 1 && holes == 0 && near is null)
            return null;
        if (ReachOfWork() is not { } work || !GoesIntoStock(work))
            return null;
        // All holes at their places are sign enough: radius compensation leads a contour aside by the tool's true radius, which grows or shrinks with no unit.
        if (holes > 0)
            return $"{(holes < Setup.Holes.Length ? "away from the zero " : "")}no hole of the drawing is where it should be, and {(holes == 2 ? "both" : "all " + Say.Number(holes))} are";
        if (Setup.Stock is not { } stock || !FitsAcross(work.Reach.Min, work.Reach.Max))
            return null;
        var say = _file.SayAt(line, null);
        if (near is var (tool, diameter, distance))
            return factor * Math.Max(Length(work.Reach) / Length(stock), Width(work.Reach) / Width(stock)) >= LeastOfStock
                ? $"the holes of T{tool} are {say.Length(diameter)} wide and as near as {say.Length(distance)} to one another, and they fit the stock"
                : null;
        if (!IsFarTooLarge(work, stock))
            return null;
        var isLong = Length(work.Reach) / Length(stock) >= Width(work.Reach) / Width(stock);
        return $"the program works over {say.Length(isLong ? Length(work.Reach) : Width(work.Reach))} along {(isLong ? 'X' : 'Y')}, where the stock is {say.Length(isLong ? Length(stock) : Width(stock))} long, and it fits the stock";
    }

    static double Length(in Box3 box) => box.Max.X - box.Min.X;

    static double Width(in Box3 box) => box.Max.Y - box.Min.Y;

    /// <summary>What the feeds and the holes go over.</summary>
    /// <param name="Reach">In the setup's frame, mm.</param>
    /// <param name="Share">How many of them end farther beside the stock than ways in and out lead, as a part of all.</param>
    readonly record struct Work(Box3 Reach, double Share);

    /// <summary>Null where nothing is cut at places that are known.</summary>
    Work? ReachOfWork()
    {
        var (low, high) = (new Point3(double.PositiveInfinity, double.PositiveInfinity, double.PositiveInfinity), new Point3(double.NegativeInfinity, double.NegativeInfinity, double.NegativeInfinity));
        var (moves, outside) = (0, 0);
        foreach (var part in _file.Run.Results)
        {
            foreach (ref readonly var cut in part.Cuts)
            {
                if (moves == MostMoves)
                    return new Work(new Box3(low, high), (double)outside / moves);
                if (!cut.From.IsKnown || !cut.To.IsKnown)
                    continue;
                moves++;
                (low, high) = (Sweep.Lower(Sweep.Lower(low, cut.From), cut.To), Sweep.Higher(Sweep.Higher(high, cut.From), cut.To));
                if (Setup.Stock is { } stock && Footprint.Distance(stock, cut.To.X, cut.To.Y) > Beside * Math.Max(Length(stock), Width(stock)))
                    outside++;
            }
        }
        return moves == 0 ? null : new Work(new Box3(low, high), (double)outside / moves);
    }

    /// <summary>Whether the work goes into the stock, and not far below it, when read in the other unit.</summary>
    bool GoesIntoStock(in Work work) =>
        Setup.Stock is not { } stock || (work.Reach.Min.Z * factor >= stock.Min.Z - Below && work.Reach.Min.Z * factor < stock.Max.Z);

    /// <summary>Whether what lies between two corners is over the stock, or not farther beside it than ways in and out lead, when read in the other unit.</summary>
    bool FitsAcross(in Point3 low, in Point3 high)
    {
        if (Setup.Stock is not { } stock)
            return true;
        var (besideX, besideY) = (Beside * Length(stock), Beside * Width(stock));
        return low.X * factor >= stock.Min.X - besideX && high.X * factor <= stock.Max.X + besideX
            && low.Y * factor >= stock.Min.Y - besideY && high.Y * factor <= stock.Max.Y + besideY;
    }

    bool IsFarTooLarge(in Work work, in Box3 stock)
    {
        // A wide tool runs out beside a narrow stock by its own width.
        var runOut = 2 * (Setup.Tools.Max(tool => tool.Diameter) ?? 0);
        var stocks = Math.Max((Length(work.Reach) - runOut) / Length(stock), (Width(work.Reach) - runOut) / Width(stock));
        return work.Share >= LeastShare && (stocks >= MostStocks || (stocks >= ManyStocks && work.Reach.Min.Z < stock.Min.Z - Math.Max(Below, stock.Max.Z - stock.Min.Z)));
    }

    /// <summary>How many holes of the drawing the program makes when read in the other unit, where these are all and as it stands there are none; else 0.</summary>
    int OfDrawing()
    {
        if (Setup.Holes.Length < FewestHoles || !_file.HasFewHoles)
            return 0;
        var count = 0;
        foreach (var hole in Setup.Holes)
        {
            // The hole at the zero is where it is in either unit.
            if (double.Hypot(hole.X, hole.Y) <= SameHole * UnitLength.MmPerInch)
                continue;
            if (_file.Places.At(hole.X, hole.Y) is not null || _file.Places.At(hole.X / factor, hole.Y / factor) is not { } place
                || double.Hypot(place.X * factor - hole.X, place.Y * factor - hole.Y) > SameHole)
                return 0;
            count++;
        }
        return count >= FewestHoles ? count : 0;
    }

    /// <summary>The tool whose holes each lie nearer to another than half the tool's diameter, and how near; null where one does not.</summary>
    (int Tool, double Diameter, double Distance)? NearestHoles()
    {
        if (FirstHoles(out var tool) is not { Count: >= FewestPlaces } places || Setup.FindTool(tool)?.Diameter is not { } diameter)
            return null;
        var (near, least) = (diameter * diameter / 4, double.PositiveInfinity);
        for (var i = 0; i < places.Count; i++)
        {
            var nearest = double.PositiveInfinity;
            for (var j = 0; j < places.Count; j++)
                if (j != i)
                    nearest = Math.Min(nearest, SquareOfDistance(places[i], places[j]));
            if (nearest >= near)
                return null;
            least = Math.Min(least, nearest);
        }
        return (tool, diameter, Math.Sqrt(least));
    }

    // It is asked at each key, of each place beside each other one: a root would take longer than all else.
    static double SquareOfDistance((double X, double Y) a, (double X, double Y) b) => (a.X - b.X) * (a.X - b.X) + (a.Y - b.Y) * (a.Y - b.Y);

    /// <summary>The places of the first tool's first holes, each once; null where one is not known or does not fit the stock in the other unit.</summary>
    List<(double X, double Y)>? FirstHoles(out int tool)
    {
        var (places, apart, looks) = (new List<(double X, double Y)>(), SameHole / factor, 0);
        tool = 0;
        foreach (var part in _file.Run.Results)
        {
            foreach (var hole in part.Holes)
            {
                tool = tool == 0 ? hole.Hole.Tool : tool;
                if (hole.Hole.Tool != tool || ++looks > MostPlaces)
                    return places;
                var at = hole.PlaceAt(hole.Hole.Bottom);
                if (!at.IsKnown || !FitsAcross(at, at))
                    return null;
                var place = (at.X, at.Y);
                if (!places.Exists(other => SquareOfDistance(other, place) <= apart * apart))
                    places.Add(place);
            }
        }
        return places;
    }
}
