namespace NcLanguage.Cli.Common;

/// <summary>What everything told about a program must be read with.</summary>
static class Caution
{
    public const string Text =
        "A check is no proof. Prove the program at the machine: single block, dry run above the part, a hand on feed hold. "
        + "Local codes and licensed practice come first.";
}
