namespace NcLanguage.Control.Codes;

/// <summary>The family a word belongs to for its reader: what is coloured alike.</summary>
public enum WordKind
{
    /// <summary>G0.</summary>
    Rapid,

    /// <summary>Moves at feed.</summary>
    Cut,
    Dwell,

    /// <summary>A cycle's code.</summary>
    Cycle,

    /// <summary>G80.</summary>
    CycleEnd,

    /// <summary>How the numbers that follow are read: plane, units, distances, feed, speed, corners.</summary>
    Mode,
    ReturnLevel,

    /// <summary>Tool radius and length.</summary>
    Compensation,

    /// <summary>Where the datum lies, and how the frame is turned or scaled.</summary>
    Offset,
    Home,

    /// <summary>A call, or the end of what was called.</summary>
    Call,
    Stop,
    Spindle,
    Coolant,
    ToolChange,

    /// <summary>Any other G code.</summary>
    Preparatory,

    /// <summary>Any other M code.</summary>
    Miscellaneous,

    /// <summary>The letter of an axis.</summary>
    Axis,

    /// <summary>I, J, K.</summary>
    Arc,

    /// <summary>F and S.</summary>
    FeedSpeed,

    /// <summary>T, and the numbers of its offsets.</summary>
    Tool,

    /// <summary>Any other letter.</summary>
    Parameter,
}

/// <summary>The family of each row of the tables, so that every editor colours a word alike.</summary>
public static class WordKinds
{
    /// <summary>The family of a code.</summary>
    public static WordKind Of(CodeEntry code)
    {
        ArgumentNullException.ThrowIfNull(code);
        return code.Group switch
        {
            ModalGroup.Motion => code.Tenths == 0 ? WordKind.Rapid : WordKind.Cut,
            ModalGroup.Cycle => code.Tenths == 800 ? WordKind.CycleEnd : WordKind.Cycle,
            ModalGroup.Plane or ModalGroup.Distance or ModalGroup.FeedMode or ModalGroup.Units or ModalGroup.SpeedMode or ModalGroup.PathControl => WordKind.Mode,
            ModalGroup.ReturnLevel => WordKind.ReturnLevel,
            ModalGroup.RadiusCompensation or ModalGroup.LengthOffset => WordKind.Compensation,
            ModalGroup.WorkOffset or ModalGroup.Scaling or ModalGroup.Rotation or ModalGroup.Mirror or ModalGroup.Polar => WordKind.Offset,
            ModalGroup.MacroCall or ModalGroup.Subprogram => WordKind.Call,
            ModalGroup.Stop => WordKind.Stop,
            ModalGroup.ToolChange => WordKind.ToolChange,
            ModalGroup.Spindle => WordKind.Spindle,
            ModalGroup.Coolant => WordKind.Coolant,
            ModalGroup.NonModal => OfBlock(code.Tenths),
            _ => code.Letter == 'G' ? WordKind.Preparatory : WordKind.Miscellaneous,
        };
    }

    /// <summary>The family of a letter other than G, M, N and O.</summary>
    public static WordKind Of(AddressEntry address)
    {
        ArgumentNullException.ThrowIfNull(address);
        return address.Letter switch
        {
            'X' or 'Y' or 'Z' or 'A' or 'B' or 'C' or 'U' or 'V' or 'W' => WordKind.Axis,
            'I' or 'J' or 'K' => WordKind.Arc,
            'F' or 'S' => WordKind.FeedSpeed,
            'T' or 'D' or 'H' => WordKind.Tool,
            _ => WordKind.Parameter,
        };
    }

    /// <summary>Whether it switches the machine rather than leading the tool: F, S, T and M, and the numbers of a tool's offsets.</summary>
    public static bool IsSwitch(WordKind kind) => kind is WordKind.Stop or WordKind.Spindle or WordKind.Coolant or WordKind.ToolChange or WordKind.Miscellaneous
        or WordKind.FeedSpeed or WordKind.Tool;

    static WordKind OfBlock(int tenths) => tenths switch
    {
        40 => WordKind.Dwell,
        90 => WordKind.Mode,
        280 or 300 => WordKind.Home,
        310 => WordKind.Cut,
        100 or 520 or 530 or (>= 920 and <= 923) => WordKind.Offset,
        _ => WordKind.Preparatory,
    };
}
