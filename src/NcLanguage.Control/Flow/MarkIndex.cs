using NcLanguage.Syntax.Lexing;

namespace NcLanguage.Control.Flow;

/// <summary>The statements and programs of a text by their numbers: a run with very many calls or loops asks for one at each of them, and what that costs must not
/// grow with the text. Statements belong together within one program: none is looked for beyond the next O or %.</summary>
sealed class MarkIndex
{
    readonly Mark[] _marks;
    readonly Dictionary<(StatementKind Statement, int Number, bool BehindO), List<int>> _statements = [];
    readonly Dictionary<int, List<int>> _branches = [];
    readonly Dictionary<int, Region> _programs = [];
    readonly List<int> _bounds = [];

    /// <param name="marks">All of a text, in its order.</param>
    /// <param name="lines">How many lines the text has.</param>
    public MarkIndex(Mark[] marks, int lines)
    {
        _marks = marks;
        for (var i = 0; i < marks.Length; i++)
            if (marks[i].BoundsProgram)
                _bounds.Add(i);
            else if (marks[i] is { Kind: MarkKind.Structure } mark)
            {
                Add(_statements, (mark.Statement, mark.Number, mark.BehindO), i);
                if (mark is { BehindO: true, Statement: StatementKind.ElseIf or StatementKind.Else or StatementKind.EndIf })
                    Add(_branches, mark.Number, i);
            }
        // Of two programs with one number the first counts.
        for (var i = marks.Length - 1; i >= 0; i--)
        {
            if (marks[i].Kind == MarkKind.Program)
                _programs[marks[i].Number] = new Region(marks[i].Line, lines);
            if (marks[i].BoundsProgram)
                lines = marks[i].Line;
        }
    }

    /// <summary>The program with a number; null where there is none.</summary>
    public Region? ProgramOf(int number) => _programs.TryGetValue(number, out var region) ? region : null;

    /// <summary>The line of the first SUB with a number, in whatever program of the text; −1 where there is none.</summary>
    public int FirstSubroutine(int number) => _statements.TryGetValue((StatementKind.Sub, number, true), out var places) ? _marks[places[0]].Line : -1;

    /// <summary>The line of the first statement of this kind and number behind a line (both 0-based); −1 where there is none.</summary>
    public int Next(int line, StatementKind statement, int number, bool behindO) =>
        _statements.TryGetValue((statement, number, behindO), out var places) && Behind(places, line) is var at && at < places.Count && AreTogether(line, _marks[places[at]].Line)
            ? _marks[places[at]].Line : -1;

    /// <summary>The line of the last statement of this kind and number before a line; −1 where there is none.</summary>
    public int Last(int line, StatementKind statement, int number, bool behindO) =>
        _statements.TryGetValue((statement, number, behindO), out var places) && Behind(places, line - 1) is var at and > 0 && AreTogether(_marks[places[at - 1]].Line, line)
            ? _marks[places[at - 1]].Line : -1;

    /// <summary>The first ELSEIF, ELSE or ENDIF with a number behind a line; null where there is none.</summary>
    public Mark? NextBranch(int line, int number) =>
        _branches.TryGetValue(number, out var places) && Behind(places, line) is var at && at < places.Count && AreTogether(line, _marks[places[at]].Line)
            ? _marks[places[at]] : null;

    /// <summary>Whether two lines, the first not behind the second, belong to one program.</summary>
    bool AreTogether(int first, int second) => Behind(_bounds, first) == Behind(_bounds, second);

    static void Add<TKey>(Dictionary<TKey, List<int>> places, TKey key, int mark)
        where TKey : notnull
    {
        if (!places.TryGetValue(key, out var here))
            places.Add(key, here = new List<int>(1));
        here.Add(mark);
    }

    /// <summary>Which of these marks, in the order of the text, is the first behind a line; their number where none is.</summary>
    int Behind(List<int> places, int line)
    {
        var (low, high) = (0, places.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (_marks[places[middle]].Line <= line)
                low = middle + 1;
            else
                high = middle;
        }
        return low;
    }
}
