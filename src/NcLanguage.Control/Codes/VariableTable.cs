using System.Collections.Immutable;
using System.Globalization;
using NcLanguage.Control.State;
using NcLanguage.Syntax.Expressions;
using static NcLanguage.Control.Codes.Tables.Row;

namespace NcLanguage.Control.Codes;

/// <summary>What a run of numbered variables holds.</summary>
public sealed record VariableEntry
{
    /// <summary>The first number of the run.</summary>
    public required int First { get; init; }

    /// <summary>The last number of the run; the first where it is one variable.</summary>
    public required int Last { get; init; }

    /// <summary>What one of them is called.</summary>
    public required string Name { get; init; }

    /// <summary>What each holds, in one sentence.</summary>
    public required string Meaning { get; init; }

    /// <summary>Whether the variables are one for each axis, in the order X Y Z A B C.</summary>
    public bool IsByAxis { get; init; }

    /// <summary>Whether they are the program's own: the control neither reads nor writes them.</summary>
    public bool IsFree { get; init; }

    public required string Source { get; init; }

    /// <summary>As listed: #5220, or #5061 to #5066.</summary>
    public string Text => First == Last ? Number(First) : $"{Number(First)} to {Number(Last)}";

    /// <summary>What one variable of the run is: the name, with its axis where there is one for each.</summary>
    /// <param name="number">Within the run.</param>
    public string NameOf(int number) => IsByAxis ? $"{Name}, {"XYZABC"[number - First]}" : Name;

    static string Number(int number) => "#" + number.ToString(CultureInfo.InvariantCulture);
}

/// <summary>The numbered variables: those the control itself reads and writes, and the rest (NISTIR 6556 §3.3.2 and table 2).</summary>
public static class VariableTable
{
    const int Axes = 6;
    const string Table2 = "NISTIR 6556 table 2";

    /// <summary>One row a run, by number; the first two are every variable that no later row names.</summary>
    public static ImmutableArray<VariableEntry> All { get; } =
    [
        new()
        {
            First = Expression.FirstVariable,
            Last = Variables.LastLocal,
            Name = "local variable",
            Meaning = "Whatever the program puts into it; a program called by G65 has its own, in which the words of the call stand.",
            IsFree = true,
            Source = Nist("3.3.2") + ", local: " + Practice,
        },
        new()
        {
            First = Variables.LastLocal + 1,
            Last = Expression.LastVariable,
            Name = "common variable",
            Meaning = "Whatever the program puts into it; the programs that it calls read and set the same ones.",
            IsFree = true,
            Source = Nist("3.3.2") + ", common: " + Practice,
        },
        new()
        {
            First = 0,
            Last = 0,
            Name = "empty variable",
            Meaning = "Always empty: a comparison with it asks whether a variable was set (#5 EQ #0), a setting to it empties one (#5=#0), and no word takes it as a number.",
            Source = Practice,
        },
        new()
        {
            First = 3000,
            Last = 3000,
            Name = "alarm",
            Meaning = "Setting it to anything but 0 stops the control with an alarm, which shows the comment beside it.",
            Source = Practice,
        },
        new()
        {
            First = 4001,
            Last = 4014,
            Name = "code in force",
            Meaning = "The G code in force, by group: #4001 motion, #4002 plane, #4003 G90 or G91, #4005 feed mode, #4006 units, #4007 radius compensation, "
                + "#4008 length offset, #4009 cycle, #4010 G98 or G99, #4014 work offset.",
            Source = Practice + ", from memory",
        },
        ByAxis(5001, "end of the block before", "Where the block before has ended, in work coordinates.", Practice, 3),
        ByAxis(5021, "machine position", "Where the spindle's gauge point stands, in machine coordinates.", Practice, 3),
        ByAxis(5041, "work position", "Where the tool stands, in work coordinates.", Practice, 3),
        ByAxis(5061, "result of a probe move", "Where the probe touched in the last probe move."),
        ByAxis(5161, "reference point of G28", "The place that G28 moves to, in machine coordinates."),
        ByAxis(5181, "reference point of G30", "The place that G30 moves to, in machine coordinates."),
        ByAxis(5211, "shift of G92", "The shift that G92 has put on the work coordinates."),
        new()
        {
            First = 5220,
            Last = 5220,
            Name = "number of the work offset in force",
            Meaning = "The number of the work offset in force, from 1 for G54 to 9 for G59.3.",
            Source = Table2,
        },
        WorkOffset(1, "G54"), WorkOffset(2, "G55"), WorkOffset(3, "G56"), WorkOffset(4, "G57"), WorkOffset(5, "G58"),
        WorkOffset(6, "G59"), WorkOffset(7, "G59.1"), WorkOffset(8, "G59.2"), WorkOffset(9, "G59.3"),
    ];

    /// <summary>The row a variable belongs to, or null where there is no variable of that number.</summary>
    public static VariableEntry? Find(int number)
    {
        for (var i = All.Length - 1; i >= 0; i--)
        {
            if (number >= All[i].First && number <= All[i].Last)
                return All[i];
        }

        return null;
    }

    static VariableEntry WorkOffset(int number, string code) =>
        ByAxis(5201 + (20 * number), $"datum of work offset {number} ({code})", $"Where the datum of work offset {number} ({code}) lies, in machine coordinates.");

    static VariableEntry ByAxis(int first, string name, string meaning, string source = Table2, int axes = Axes) => new()
    {
        First = first,
        Last = first + axes - 1,
        Name = name,
        Meaning = meaning,
        IsByAxis = true,
        Source = source,
    };
}
