using System.CommandLine;

namespace NcLanguage.Cli.Figures;

/// <summary><c>figure …</c>: what is reckoned at the desk before a program is written.</summary>
static class FigureCommand
{
    public static Command Create() => new("figure", "Reckons speeds, feeds, depths, threads, pecks, times and places of holes, each with its formula and source.")
    {
        SpeedCommands.Speed(),
        SpeedCommands.Feed(),
        ShapeCommands.Spot(),
        ShapeCommands.Point(),
        ShapeCommands.Tap(),
        ShapeCommands.Peck(),
        ShapeCommands.Chord(),
        TimeCommands.Dwell(),
        TimeCommands.Time(),
        PatternCommands.Circle(),
        PatternCommands.Arc(),
        PatternCommands.Grid(),
    };
}
