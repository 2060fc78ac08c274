using NcLanguage.Control.Moves;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Reports.MotionView;

/// <summary>Where the moves of a recording are drawn, and how much of the world the picture shows. In the setup's frame, mm.</summary>
sealed class MotionScene
{
    readonly MotionRecording _recording;
    readonly Point3[] _shifts;

    MotionScene(MotionRecording recording, Point3[] shifts) => (_recording, _shifts) = (recording, shifts);

    /// <summary>What the picture shows at first: all that stands on the table, cuts and holes, and the rapids near to them.</summary>
    public Box3 World { get; private set; }

    /// <summary>True where the setup says nothing that stands on the table, so that work coordinates serve as the frame.</summary>
    public bool IsInWorkCoordinates { get; private set; }

    /// <summary>Motions that cannot be drawn in any view, because one of their ends is not known.</summary>
    public int MovesWithoutPlace { get; private set; }

    /// <summary>Motions that are drawn in the plan only, because their level is not known.</summary>
    public int MovesWithoutLevel { get; private set; }

    /// <summary>What is added to the work coordinates of a step, mm; NaN where it cannot be drawn.</summary>
    public Point3 ShiftOf(int step) => _shifts[_recording.Steps[step].Shift];

    /// <summary>The same by index of <see cref="MotionRecording.Shifts"/>.</summary>
    public IReadOnlyList<Point3> Shifts => _shifts;

    public static MotionScene Of(MotionRecording recording)
    {
        var setup = recording.Job.Setup;
        var isBare = setup is { Stock: null, Obstacles.IsEmpty: true, Supports.IsEmpty: true, Holes.IsEmpty: true };
        var scene = new MotionScene(recording, [.. recording.Shifts.Select(shift => isBare ? Known(shift) : shift)]) { IsInWorkCoordinates = isBare };
        scene.Measure(setup);
        return scene;
    }

    static Point3 Known(Point3 shift) => new(Known(shift.X), Known(shift.Y), Known(shift.Z));

    static double Known(double value) => double.IsNaN(value) ? 0 : value;

    void Measure(Setup setup)
    {
        var near = new Extent();
        foreach (var solid in setup.Obstacles.Concat(setup.Supports))
            near.Add(solid.Bounds);
        if (setup.Stock is { } stock)
            near.Add(stock);
        var points = new List<Point3>();
        foreach (var recorded in _recording.Moves)
        {
            if (!recorded.Move.IsMotion)
                continue;
            var shift = ShiftOf(recorded.Step);
            Count(recorded.Move.From + shift, recorded.Move.To + shift);
            if (!recorded.Move.IsFeed)
                continue;
            MoveWay.Points(recorded.Move, shift, _recording.Job, points);
            foreach (var point in points)
                near.Add(point);
        }
        var all = new Extent(near);
        // A way home, far from the work, would make everything else small.
        var reach = near.IsEmpty ? double.PositiveInfinity : Math.Max(near.Largest / 5, 10);
        foreach (var recorded in _recording.Moves)
            if (recorded.Move.Kind == MoveKind.Rapid)
                all.AddWithin(recorded.Move.To + ShiftOf(recorded.Step), near, reach);
        World = all.ToBox();
    }

    // A view draws what has both ends in both of its axes.
    void Count(Point3 from, Point3 to)
    {
        var (x, y, z) = (double.IsNaN(from.X + to.X), double.IsNaN(from.Y + to.Y), double.IsNaN(from.Z + to.Z));
        if ((x ? 1 : 0) + (y ? 1 : 0) + (z ? 1 : 0) > 1)
            MovesWithoutPlace++;
        else if (z)
            MovesWithoutLevel++;
    }

    /// <summary>Least and greatest coordinate along each axis; those not known are left out.</summary>
    sealed class Extent
    {
        readonly double[] _least = [double.PositiveInfinity, double.PositiveInfinity, double.PositiveInfinity];
        readonly double[] _greatest = [double.NegativeInfinity, double.NegativeInfinity, double.NegativeInfinity];

        public Extent()
        {
        }

        public Extent(Extent other)
        {
            other._least.CopyTo(_least, 0);
            other._greatest.CopyTo(_greatest, 0);
        }

        public bool IsEmpty => _least[0] > _greatest[0] && _least[1] > _greatest[1] && _least[2] > _greatest[2];

        public double Largest => Enumerable.Range(0, 3).Max(axis => Math.Max(0, _greatest[axis] - _least[axis]));

        public void Add(Box3 box)
        {
            Add(box.Min);
            Add(box.Max);
        }

        public void Add(Point3 place)
        {
            for (var axis = 0; axis < 3; axis++)
            {
                if (!double.IsFinite(place[axis]))
                    continue;
                _least[axis] = Math.Min(_least[axis], place[axis]);
                _greatest[axis] = Math.Max(_greatest[axis], place[axis]);
            }
        }

        /// <summary>Adds a place if none of its coordinates is farther than that from another extent.</summary>
        public void AddWithin(Point3 place, Extent other, double reach)
        {
            for (var axis = 0; axis < 3; axis++)
                if (other._least[axis] <= other._greatest[axis] && (place[axis] < other._least[axis] - reach || place[axis] > other._greatest[axis] + reach))
                    return;
            Add(place);
        }

        public Box3 ToBox()
        {
            var (low, high) = (default(Point3), default(Point3));
            for (var axis = 0; axis < 3; axis++)
            {
                if (_least[axis] > _greatest[axis])
                    continue;
                low = low.With(axis, _least[axis]);
                high = high.With(axis, _greatest[axis]);
            }
            return new Box3(low, high);
        }
    }
}
