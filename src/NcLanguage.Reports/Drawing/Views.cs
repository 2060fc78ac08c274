namespace NcLanguage.Reports.Drawing;

/// <summary>The directions that the work is looked at from.</summary>
public enum View
{
    /// <summary>From above: X to the right, Y up.</summary>
    Plan,

    /// <summary>From the front: X to the right, Z up.</summary>
    Front,

    /// <summary>From a side, Z up: from the left (Y to the left) in first-angle projection, from the right (Y to the right) in third-angle.</summary>
    Side,
}

/// <summary>How the views are arranged about the front view (ISO 128-3 and ISO 5456-2, from memory).</summary>
public enum ProjectionMethod
{
    /// <summary>The plan below the front view, the view from the left to its right: the usual way where drawings are in millimetres.</summary>
    FirstAngle,

    /// <summary>The plan above the front view, the view from the right to its right.</summary>
    ThirdAngle,
}

/// <summary>Names of views as they stand on drawings.</summary>
public static class ViewNames
{
    public static string Of(View view, ProjectionMethod method) => view switch
    {
        View.Plan => "Plan",
        View.Front => "Front",
        _ => method == ProjectionMethod.FirstAngle ? "Side, from the left" : "Side, from the right",
    };

    public static string Of(ProjectionMethod method) => method == ProjectionMethod.FirstAngle ? "First-angle projection" : "Third-angle projection";
}
