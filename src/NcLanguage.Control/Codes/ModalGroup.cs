namespace NcLanguage.Control.Codes;

/// <summary>Families of codes of which at most one may stand in a block, and of which one stays in force until another
/// replaces it (NISTIR 6556 table 4; cycles are a group of their own as in ISO 6983).</summary>
public enum ModalGroup
{
    /// <summary>Acts in its own block only.</summary>
    NonModal,
    Motion, Cycle, Plane, Distance, FeedMode, Units, RadiusCompensation, LengthOffset, ReturnLevel, WorkOffset,
    PathControl, Scaling, Rotation, Mirror, Polar, SpeedMode, MacroCall,

    /// <summary>M0 M1 M2 M30 M60.</summary>
    Stop,
    ToolChange, Spindle, Coolant, Override, Subprogram,

    /// <summary>M codes that belong to none of the groups above.</summary>
    Other,
}
