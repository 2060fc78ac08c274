using NcLanguage.Control.Codes;

namespace NcLanguage.Editing;

/// <summary>The cursor within an expression: between brackets, or behind the = of a setting.</summary>
static class ExpressionPlace
{
    /// <summary>The place; null where the cursor stands in no expression.</summary>
    /// <param name="from">Where the stretch without comments begins that the cursor stands in.</param>
    public static CursorPlace? Of(ReadOnlySpan<byte> line, int from, int column)
    {
        Span<int> open = stackalloc int[64];
        var depth = 0;
        var equals = -1;
        for (var at = from; at < column; at++)
        {
            if (line[at] == '[' && depth++ < open.Length)
                open[depth - 1] = at + 1;
            else if (line[at] == ']')
                depth = Math.Max(0, depth - 1);
            else if (line[at] == '=' && depth == 0)
                equals = at + 1;
        }
        return depth > open.Length ? default(CursorPlace)
            : depth > 0 ? Read(line, open[depth - 1], column, inBrackets: true)
            : equals > 0 ? Read(line, equals, column, inBrackets: false)
            : null;
    }

    /// <summary>Goes over the values and operators from a bracket or = on; null where the expression ends before the cursor.</summary>
    static CursorPlace? Read(ReadOnlySpan<byte> line, int at, int column, bool inBrackets)
    {
        var wantsValue = true;
        while (at < column)
        {
            var start = at;
            var c = line[at];
            if (CursorPlace.IsBlank(c))
            {
                at++;
            }
            else if (c == '#')
            {
                at = EndOfVariable(line, at, column);
                if (at == column)
                    return CursorPlace.Make(PlaceKind.Variable, line, start, column);
                wantsValue = false;
            }
            else if (CursorPlace.IsDigit(c) || c == '.')
            {
                while (at < column && (CursorPlace.IsDigit(line[at]) || line[at] == '.'))
                    at++;
                if (at == column)
                    return default(CursorPlace);
                wantsValue = false;
            }
            else if (CursorPlace.IsLetter(c))
            {
                while (at < column && CursorPlace.IsLetter(line[at]))
                    at++;
                var isOperator = !wantsValue && FunctionTable.Find(CursorPlace.Upper(line[start..at])) is { IsOperator: true };
                if (!wantsValue && !inBrackets && !isOperator)
                    return null;
                if (at == column)
                    return CursorPlace.Make(wantsValue ? PlaceKind.Operand : PlaceKind.Operator, line, start, column);
                wantsValue |= isOperator;
            }
            else if (c == '[')
            {
                at = BehindBracket(line, at, column);
                wantsValue = false;
            }
            else
            {
                at++;
                wantsValue = true;
            }
        }
        if (wantsValue)
            return CursorPlace.Make(PlaceKind.Operand, line, column, column);
        var isBehindBlank = CursorPlace.IsBlank(line[column - 1]);
        return !isBehindBlank ? default(CursorPlace) : inBrackets ? CursorPlace.Make(PlaceKind.Operator, line, column, column) : null;
    }

    static int EndOfVariable(ReadOnlySpan<byte> line, int at, int column)
    {
        at++;
        if (at < column && line[at] == '<')
        {
            var close = line[at..column].IndexOf((byte)'>');
            return close < 0 ? column : at + close + 1;
        }
        while (at < column && CursorPlace.IsDigit(line[at]))
            at++;
        return at;
    }

    static int BehindBracket(ReadOnlySpan<byte> line, int at, int column)
    {
        for (var depth = 0; at < column; at++)
        {
            depth += line[at] == '[' ? 1 : line[at] == ']' ? -1 : 0;
            if (depth == 0)
                return at + 1;
        }
        return column;
    }
}
