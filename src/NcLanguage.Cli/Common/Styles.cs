using Spectre.Console;

namespace NcLanguage.Cli.Common;

/// <summary>How text looks on a terminal, alike in all that the commands tell.</summary>
static class Styles
{
    public static readonly Style Heading = new(decoration: Decoration.Bold);
    public static readonly Style Faint = new(decoration: Decoration.Dim);

    /// <summary>Errors, contacts, and holes that are not as drawn.</summary>
    public static readonly Style Wrong = new(Color.Red, decoration: Decoration.Bold);

    public static readonly Style Warning = new(Color.Yellow, decoration: Decoration.Bold);
    public static readonly Style Note = new(Color.Blue);

    /// <summary>What mends a finding.</summary>
    public static readonly Style Fix = new(Color.Green);
}
