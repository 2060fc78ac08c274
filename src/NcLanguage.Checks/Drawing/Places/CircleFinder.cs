using NcLanguage.Checks.Analysis;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Checks.Drawing;

/// <summary>Joins the arcs of mills about one centre to full circles and helices. A hole is as deep as the lowest level that a whole turn stays at or below; a thread as deep as the helix, since a
/// screw follows the groove to its end (common practice).</summary>
sealed class CircleFinder(Action<(double X, double Y, PlaceWork Work)> found)
{
    /// <summary>A piece of the path: from an angle run so far to another, with the levels there.</summary>
    readonly record struct Piece(double From, double To, double FromZ, double ToZ)
    {
        public double At(double angle) => To > From ? FromZ + (ToZ - FromZ) * Math.Clamp((angle - From) / (To - From), 0, 1) : ToZ;
    }

    readonly List<Piece> _pieces = [];
    RoundCut _last;
    double _run;
    double _lowest;
    double _pitch;
    bool _isLeftHand;
    double _end;
    int _line;
    WorkCoordinates _coordinates = null!;

    public void Note(in RoundCut arc, int line, WorkCoordinates coordinates)
    {
        if (_pieces.Count > 0 && (arc.BeginsAnew || !arc.Continues(_last)))
            End();
        if (_pieces.Count == 0)
            (_run, _lowest, _pitch, _end) = (0, double.NaN, double.NaN, double.PositiveInfinity);
        _pieces.Add(new Piece(_run, _run + arc.Sweep, arc.From.Z, arc.To.Z));
        (_last, _coordinates) = (arc, coordinates);
        _end = Math.Min(_end, Math.Min(arc.From.Z, arc.To.Z));
        var start = _run;
        _run += arc.Sweep;
        // A turn that goes down is lowest at its end, one that goes up at its beginning.
        if (start < RoundCut.Turn)
            Look(Math.Min(RoundCut.Turn, _run), arc, line);
        else
            Look(start, arc, line);
        Look(_run, arc, line);
        _pieces.RemoveAll(piece => piece.To < _run - RoundCut.Turn - RoundCut.Rounding);
    }

    /// <summary>What has been gathered is told.</summary>
    public void End()
    {
        if (_pieces.Count > 0 && !double.IsNaN(_lowest))
            Tell();
        _pieces.Clear();
    }

    /// <summary>The level of the whole turn that ends at an angle.</summary>
    void Look(double end, in RoundCut arc, int line)
    {
        if (end < RoundCut.Turn - RoundCut.Rounding)
            return;
        var start = end - RoundCut.Turn;
        var (highest, atStart, atEnd) = (double.NegativeInfinity, double.NaN, double.NaN);
        foreach (var piece in _pieces)
        {
            if (piece.To < start - RoundCut.Rounding || piece.From > end + RoundCut.Rounding)
                continue;
            var (first, last) = (piece.At(start), piece.At(end));
            atStart = double.IsNaN(atStart) ? first : atStart;
            atEnd = last;
            highest = Math.Max(highest, Math.Max(first, last));
        }
        if (!double.IsNaN(_lowest) && highest >= _lowest)
            return;
        (_lowest, _line) = (highest, line);
        if (arc.Tool.Kind == ToolKind.ThreadMill && Math.Abs(atEnd - atStart) > RoundCut.Same)
            // Going up counterclockwise, as seen from above, is a right-hand helix, and so is the same path backwards.
            (_pitch, _isLeftHand) = (Math.Abs(atEnd - atStart), arc.Clockwise == atEnd > atStart);
    }

    void Tell()
    {
        var tool = _last.Tool;
        var isThread = tool.Kind == ToolKind.ThreadMill;
        if (isThread && double.IsNaN(_pitch))
            return;
        var tip = isThread ? _end : _lowest;
        var diameter = 2 * _last.Radius + tool.Diameter!.Value;
        found((_last.CenterX, _last.CenterY, new PlaceWork(
            isThread ? WorkKind.MillThread : WorkKind.Mill, tool, tool.Number, diameter, tip, tip + PlaceWork.EndLength(tool), _last.ToFrame, _line, 0, 0, double.NaN, _pitch)
        {
            End = _end,
            IsLeftHand = isThread ? _isLeftHand : null,
            Coordinates = _coordinates,
        }));
    }
}
