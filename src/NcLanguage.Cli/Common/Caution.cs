using NcLanguage.Checks;

namespace NcLanguage.Cli.Common;

/// <summary>What everything told about a program must be read with.</summary>
static class Caution
{
    public const string Text =
        "A check is no proof. Prove the program at the machine: single block, dry run above the part, a hand on feed hold. "
        + "Local codes and licensed practice come first.";

    /// <summary>Tells on the screen that a page or a drawing is written, and how many there are of what whoever opens it should look at first.</summary>
    public static void TellWritten(string path, int count, string what)
    {
        using var screen = Screen.Open();
        screen.WriteLine($"{path} written{(count > 0 ? $"; {Say.Count(count, what)} found in the program" : "")}.");
        screen.WriteParagraph(Text, 0);
    }
}
