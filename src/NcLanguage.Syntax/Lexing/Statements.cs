using NcLanguage.Syntax.Expressions;

namespace NcLanguage.Syntax.Lexing;

/// <summary>Statements that steer the order in which blocks run.</summary>
public enum StatementKind : byte
{
    None, If, Then, Else, EndIf, ElseIf, Goto, While, EndWhile, Do, End, Repeat, EndRepeat, Break, Continue, Sub, EndSub, Call, Return,
}

/// <summary>Recognises the words that steer the order of blocks.</summary>
public static class Statements
{
    static readonly (byte[] Name, StatementKind Kind)[] All =
    [
        ("IF"u8.ToArray(), StatementKind.If), ("THEN"u8.ToArray(), StatementKind.Then), ("GOTO"u8.ToArray(), StatementKind.Goto),
        ("WHILE"u8.ToArray(), StatementKind.While), ("DO"u8.ToArray(), StatementKind.Do), ("END"u8.ToArray(), StatementKind.End),
        ("ELSE"u8.ToArray(), StatementKind.Else), ("ELSEIF"u8.ToArray(), StatementKind.ElseIf), ("ENDIF"u8.ToArray(), StatementKind.EndIf),
        ("ENDWHILE"u8.ToArray(), StatementKind.EndWhile), ("REPEAT"u8.ToArray(), StatementKind.Repeat),
        ("ENDREPEAT"u8.ToArray(), StatementKind.EndRepeat), ("BREAK"u8.ToArray(), StatementKind.Break),
        ("CONTINUE"u8.ToArray(), StatementKind.Continue), ("SUB"u8.ToArray(), StatementKind.Sub), ("ENDSUB"u8.ToArray(), StatementKind.EndSub),
        ("CALL"u8.ToArray(), StatementKind.Call), ("RETURN"u8.ToArray(), StatementKind.Return),
    ];

    /// <summary>Reads a statement word whose letters stand together and no further letter follows.</summary>
    public static bool TryRead(ReadOnlySpan<byte> line, int at, out StatementKind kind, out int end)
    {
        kind = StatementKind.None;
        end = at;
        // Nearly every word of a program is one letter and a number: leave at once.
        if (at + 1 >= line.Length || !Scan.IsLetter(line[at + 1]))
            return false;
        while (end < line.Length && Scan.IsLetter(line[end]))
            end++;
        var run = line[at..end];
        foreach (var (name, candidate) in All)
        {
            if (run.Length == name.Length && System.Text.Ascii.EqualsIgnoreCase(run, name))
            {
                kind = candidate;
                return true;
            }
        }
        return false;
    }

    /// <summary>Whether a condition or a number belongs to the statement.</summary>
    public static bool TakesValue(StatementKind kind) => kind
        is StatementKind.If or StatementKind.ElseIf or StatementKind.While or StatementKind.Goto or StatementKind.Do or StatementKind.End
        or StatementKind.Repeat;
}
