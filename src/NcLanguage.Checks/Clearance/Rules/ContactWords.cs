using NcLanguage.Checks.Analysis;
using NcLanguage.Checks.Clearance;
using NcLanguage.Control.Moves;
using NcLanguage.Control.State;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Checks.Rules;

/// <summary>How findings about contacts say what moves where.</summary>
static class ContactWords
{
    /// <summary>"The rapid to X45 Y15 Z2"</summary>
    public static string Move(in Move move, in StepContext step)
    {
        var (first, second, third) = Arcs.Axes(step.Step.After.Plane);
        var level = step.Say.Level(move.To[third], CycleRuns.DepthAxis(step.Step.After.Plane));
        return move.Role switch
        {
            MoveRole.Lift => $"The lift to {level} before the traverse",
            MoveRole.FirstTraverse => $"The traverse to the first hole at {At(move.To, step)}",
            MoveRole.Hop => $"The traverse to the hole at {At(move.To, step)}",
            MoveRole.Approach => $"The rapid down to the R level at {At(move.To, step)}",
            MoveRole.InHole when move.From[first] != move.To[first] || move.From[second] != move.To[second] => $"The cycle's move beside the hole to {At(move.To, step)}",
            MoveRole.InHole when move.To[third] > move.From[third] => $"The cycle's way up to {level}",
            MoveRole.Return => $"The cycle's way out to {level}",
            MoveRole.InHole => $"The cycle's way down to {level}",
            _ when move.Kind == MoveKind.Arc => $"The arc to {At(move.To, step)}",
            MoveRole.Probe => $"The probe move towards {At(move.To, step)}",
            _ when move.IsFeed => $"The feed to {At(move.To, step)}",
            _ => $"The rapid to {At(move.To, step)}",
        };
    }

    /// <summary>" with the holder", " with the shank"; nothing for the cutting part.</summary>
    public static string With(ToolPart part) => part switch { ToolPart.Holder => " with the holder", ToolPart.Shank => " with the shank", _ => "" };

    /// <summary>"3.2 mm deep", or that it touches.</summary>
    public static string Depth(in Contact contact, in StepContext step) =>
        contact.Distance < -0.0005 ? $"{step.Say.Length(-contact.Distance)} deep" : "just touching";

    /// <summary>"X45 Y15 Z2".</summary>
    public static string At(Point3 place, in StepContext step) =>
        step.Say.Place(place.X, place.Y, place.Z);

    /// <summary>"X45 Y15", likewise.</summary>
    public static string Place(double x, double y, in StepContext step) => step.Say.Place(x, y);

    /// <summary>Where the obstacle's top is in work coordinates: "clamp A reaches up to Z30".</summary>
    public static string Top(in Contact contact, in StepContext step) =>
        $"{contact.Obstacle.Name} reaches up to {step.Say.Level(contact.Obstacle.Top - step.Step.ToFrame.Z)}";

    /// <summary>" It runs into clamp B and clamp C too.", where the same move does; else nothing.</summary>
    public static string Besides(in Contact contact, in StepContext step) => step.Contacts.AlsoMet(contact, step) switch
    {
        [] => "",
        [var one] => $" It runs into {one} too.",
        [.. var most, var last] => $" It runs into {string.Join(", ", most)} and {last} too.",
    };

    /// <summary>Says so where the tool is counted as a bare line.</summary>
    public static string Thickness(in StepContext step) =>
        step.Job.ShapeOf(step.Step.After.Tool).Radius > 0 ? "" : ", even with the tool's thickness, which is not known, left out";
}
