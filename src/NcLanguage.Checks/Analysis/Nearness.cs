namespace NcLanguage.Checks.Analysis;

/// <summary>How the moves of a step pass the obstacles.</summary>
enum Nearness : byte
{
    NotAsked,

    /// <summary>They stay in a room where nothing stands within the clearance, wherever in it the tool is.</summary>
    Free,

    /// <summary>Nothing was found within the clearance.</summary>
    Far,

    /// <summary>Where they lead is not known.</summary>
    Lost,

    /// <summary>Something stands within the clearance, or a place is not known.</summary>
    Near,
}
