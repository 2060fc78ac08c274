using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Setups;

namespace NcLanguage.Reports.MotionView;

/// <summary>The holes that are drilled at one place, one after the other, as the plan shows them: one mark with all their numbers.</summary>
/// <param name="Numbers">As <c>holes</c> numbers them.</param>
/// <param name="Diameter">What the largest tool leaves that is not just for spotting, mm; NaN where not known.</param>
/// <param name="Top">The highest R level, in the setup's frame, mm.</param>
/// <param name="Bottom">The lowest bottom.</param>
sealed record HolePlace(double X, double Y, List<int> Numbers, double Diameter, double Top, double Bottom)
{
    /// <summary>"3", "3, 15", "3, 15, 27 …".</summary>
    public string Label => Numbers.Count <= 3 ? string.Join(", ", Numbers) : $"{Numbers[0]}, {Numbers[1]}, {Numbers[2]} …";

    /// <summary>The places of the holes that are kept, in the order in which they are first drilled. Only holes along Z.</summary>
    public static List<HolePlace> Of(MotionRecording recording, MotionScene scene)
    {
        var places = new List<HolePlace>();
        var byPlace = new Dictionary<(long, long), int>();
        foreach (var row in recording.KeptHoles)
        {
            if (row.Plane != WorkPlane.XY)
                continue;
            var shift = scene.IsInWorkCoordinates && !row.ToFrame.IsKnown ? default : row.ToFrame;
            var place = new Point3(row.Hole.X, row.Hole.Y, row.Hole.RLevel) + shift;
            if (double.IsNaN(place.X + place.Y))
                continue;
            // Places nearer than a hundredth of a millimetre are one on any drawing.
            var key = ((long)Math.Round(place.X * 100), (long)Math.Round(place.Y * 100));
            var diameter = DiameterOf(recording.Job.Setup.FindTool(row.Hole.Tool));
            if (!byPlace.TryGetValue(key, out var index))
            {
                byPlace[key] = places.Count;
                places.Add(new HolePlace(place.X, place.Y, [row.Number], diameter, place.Z, row.Hole.Bottom + shift.Z));
                continue;
            }
            places[index].Numbers.Add(row.Number);
            places[index] = places[index] with
            {
                Diameter = Greater(places[index].Diameter, diameter),
                Top = Greater(places[index].Top, place.Z),
                Bottom = -Greater(-places[index].Bottom, -(row.Hole.Bottom + shift.Z)),
            };
        }
        return places;
    }

    // What a spotting tool leaves is less than its diameter.
    static double DiameterOf(Tool? tool) =>
        tool?.Kind is ToolKind.SpotDrill or ToolKind.CentreDrill or ToolKind.Countersink ? double.NaN : tool?.Diameter ?? double.NaN;

    static double Greater(double one, double other) => double.IsNaN(one) ? other : double.IsNaN(other) ? one : Math.Max(one, other);
}
