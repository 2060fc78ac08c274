using System.Collections.Immutable;
using static NcLanguage.Control.Codes.Tables.Row;

namespace NcLanguage.Control.Codes;

/// <summary>One word that steers which block runs next.</summary>
public sealed record StatementEntry
{
    /// <summary>As written, upper case.</summary>
    public required string Keyword { get; init; }

    /// <summary>Whether it stands behind an O word, whose number pairs beginning and end.</summary>
    public required bool BehindO { get; init; }

    /// <summary>How a whole statement is written; small letters stand for numbers, <c>…</c> for what is free.</summary>
    public required string Form { get; init; }

    public required string Name { get; init; }

    /// <summary>What the control does, in one sentence.</summary>
    public required string Meaning { get; init; }

    public required string Source { get; init; }
}

/// <summary>Jumps, conditions, loops and subroutines.</summary>
public static class StatementTable
{
    public static ImmutableArray<StatementEntry> All { get; } =
    [
        Plain("IF", "IF […] GOTO n", "condition", "Carries out what follows in the block when the value in brackets is not nought."),
        Plain("THEN", "IF […] THEN #n=…", "conditional setting", "Sets the variable when the value in brackets is not nought."),
        Plain("GOTO", "GOTO n", "jump", "Goes on at the block whose N number is n."),
        Plain("WHILE", "WHILE […] DO n", "loop", "Runs the blocks up to END n again and again while the value in brackets is not nought."),
        Plain("DO", "DO n", "loop without condition", "Begins the blocks that run again and again up to END n."),
        Plain("END", "END n", "end of a loop", "Goes back to the DO with the same number."),
        Numbered("SUB", "On SUB", "subroutine", "Begins subroutine n, which is passed over until it is called."),
        Numbered("ENDSUB", "On ENDSUB […]", "end of a subroutine", "Goes back to the block behind the call."),
        Numbered("RETURN", "On RETURN […]", "early end of a subroutine", "Goes back to the block behind the call without running the rest."),
        Numbered("CALL", "On CALL […] […]", "subroutine call", "Runs subroutine n with the values in brackets as its variables from #1 on."),
        Numbered("IF", "On IF […]", "condition", "Runs the blocks that follow when the value in brackets is not nought."),
        Numbered("ELSEIF", "On ELSEIF […]", "further condition", "Runs the blocks that follow when nothing before held and this value is not nought."),
        Numbered("ELSE", "On ELSE", "otherwise", "Runs the blocks that follow when no condition before held."),
        Numbered("ENDIF", "On ENDIF", "end of a condition", "Ends the blocks that depend on the condition."),
        Numbered("WHILE", "On WHILE […]", "loop", "Runs the blocks up to ENDWHILE again and again while the value in brackets is not nought, or closes a DO loop."),
        Numbered("ENDWHILE", "On ENDWHILE", "end of a loop", "Goes back to the WHILE with the same number."),
        Numbered("DO", "On DO", "loop with the condition at its end", "Begins the blocks that run up to the WHILE with the same number, at least once."),
        Numbered("REPEAT", "On REPEAT […]", "counted loop", "Runs the blocks up to ENDREPEAT as many times as the value in brackets says."),
        Numbered("ENDREPEAT", "On ENDREPEAT", "end of a counted loop", "Goes back to the REPEAT with the same number until the count is reached."),
        Numbered("BREAK", "On BREAK", "way out of a loop", "Leaves the loop n at once."),
        Numbered("CONTINUE", "On CONTINUE", "next pass of a loop", "Leaves out the rest of this pass of loop n."),
    ];

    /// <summary>The row of a keyword in any case, or null.</summary>
    /// <param name="keyword">The word alone.</param>
    /// <param name="behindO">Whether it stands behind an O word.</param>
    public static StatementEntry? Find(ReadOnlySpan<char> keyword, bool behindO)
    {
        foreach (var row in All)
        {
            if (row.BehindO == behindO && keyword.Equals(row.Keyword, StringComparison.OrdinalIgnoreCase))
                return row;
        }

        return null;
    }

    static StatementEntry Plain(string keyword, string form, string name, string meaning) =>
        new() { Keyword = keyword, BehindO = false, Form = form, Name = name, Meaning = meaning, Source = Practice };

    static StatementEntry Numbered(string keyword, string form, string name, string meaning) =>
        new() { Keyword = keyword, BehindO = true, Form = form, Name = name, Meaning = meaning, Source = Practice };
}
