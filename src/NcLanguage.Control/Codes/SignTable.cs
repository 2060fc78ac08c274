using System.Collections.Immutable;
using static NcLanguage.Control.Codes.Tables.Row;

namespace NcLanguage.Control.Codes;

/// <summary>One sign that has a meaning of its own in a program.</summary>
public sealed record SignEntry
{
    /// <summary>As written: %, ( ).</summary>
    public required string Text { get; init; }

    /// <summary>The trade's name for it, such as "block skip".</summary>
    public required string Name { get; init; }

    /// <summary>What the control makes of it, in one sentence.</summary>
    public required string Meaning { get; init; }

    public required string Source { get; init; }
}

/// <summary>Signs other than letters, digits and operators.</summary>
public static class SignTable
{
    public static ImmutableArray<SignEntry> All { get; } =
    [
        Sign("%", "beginning or end of the file", "Stands alone on the line before the first block and on the one behind the last, where the control asks for it.", Nist("3.1")),
        Sign("/", "block skip", "Lets the block be passed over while block skip is on at the machine; a digit behind it names one of several switches.", Nist("2.2.2") + ", the digit: " + Practice),
        Sign(":", "program number or alignment block", "Stands in the place of O, or of N in a block from which the program can be started again.", Iso),
        Sign("( )", "comment", "Holds a remark for the reader, which the control passes over; it ends on its own line and holds no further bracket.", Nist("3.3.4")),
        Sign("(MSG, )", "message", "Shows the rest of the comment to the operator.", Nist("3.3.5")),
        Sign(";", "comment to the end of the line", "Turns everything behind it on its line into a comment.", Practice),
        Sign("#", "variable", "Stands before the number of a variable, or before its name in angle brackets, and gives its value.", Nist("3.3.2") + ", names: " + Practice),
        Sign("#<name>", "named variable", "Gives the value of the variable that the name in angle brackets stands for, in the program or subroutine that sets it, or everywhere where the name begins with _; case and blanks make no other name.", Practice),
        Sign("=", "setting of a variable", "Gives a variable a new value when all other words of the block have been read.", Nist("3.3.3")),
        Sign("[ ]", "expression", "Holds an expression, whose value stands in the place of a number.", Nist("3.3.2")),
    ];

    /// <summary>The row of a sign as written in the table, or null.</summary>
    public static SignEntry? Find(string text)
    {
        foreach (var row in All)
        {
            if (row.Text == text)
                return row;
        }

        return null;
    }

    static SignEntry Sign(string text, string name, string meaning, string source) =>
        new() { Text = text, Name = name, Meaning = meaning, Source = source };
}
