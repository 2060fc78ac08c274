using NcLanguage.Control.State;

namespace NcLanguage.Editing;

/// <summary>Says what the control does that is not followed here.</summary>
static class NotFollowedText
{
    /// <summary>One sentence; empty where all is followed.</summary>
    public static string Of(in ControlState state)
    {
        var names = new List<string>();
        foreach (var (flag, name) in Names)
            if ((state.NotFollowed & flag) != 0)
                names.Add(name);
        return names.Count == 0 ? "" : $"not followed: {string.Join(", ", names)}. Places in space are not known here.";
    }

    static readonly (NotFollowed Flag, string Name)[] Names =
    [
        (NotFollowed.Compensation, "radius compensation"),
    ];
}
