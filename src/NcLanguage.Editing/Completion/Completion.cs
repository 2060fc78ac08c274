using NcLanguage.Checks.Analysis;

namespace NcLanguage.Editing;

/// <summary>Offers what fits at the cursor: codes, words with their numbers, whole blocks, variables, names.</summary>
public static class Completion
{
    /// <summary>The offer at a byte column of a line, both from 0; empty where nothing fits: in comments, in numbers, outside the text.</summary>
    /// <param name="takesSnippets">Whether the editor takes text with places to fill in.</param>
    public static CompletionAnswer At(ProgramAnalysis analysis, int line, int column, bool takesSnippets)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        if (line < 0 || line >= analysis.Text.LineCount)
            return CompletionAnswer.None(line, column);
        var place = CursorPlace.Of(analysis.Main.BlockAt(line), column);
        if (place.Kind == PlaceKind.Nothing)
            return CompletionAnswer.None(line, column);
        var spot = new Spot(analysis, line, place, takesSnippets);
        var items = new CompletionItems();
        Add(spot, items);
        return new CompletionAnswer(items.Ranked(), line, place.Start, place.End, items.IsIncomplete);
    }

    static void Add(Spot spot, CompletionItems items)
    {
        switch (spot.Place.Kind)
        {
            case PlaceKind.RuleName:
                RuleItems.Add(spot, items);
                break;
            case PlaceKind.BlockNumber:
                NumberItems.AddBlockNumbers(spot, items);
                break;
            case PlaceKind.Variable:
                ExpressionItems.AddVariables(spot, items, 0);
                break;
            case PlaceKind.Operand:
                if (spot.Place.Typed.Length == 0)
                    ExpressionItems.AddVariables(spot, items, 0);
                ExpressionItems.AddFunctions(spot, items, 100);
                break;
            case PlaceKind.Operator:
                ExpressionItems.AddOperators(spot, items);
                break;
            case PlaceKind.Blank when spot.Place.Behind == Behind.Block:
                WordItems.AddNew(spot, items);
                CodeItems.Add(spot, items, '\0', 100);
                AddLines(spot, items, 200);
                StatementItems.Add(spot, items, 300);
                break;
            case PlaceKind.Word when spot.Place.Behind == Behind.Block:
                AddWord(spot, items);
                StatementItems.Add(spot, items, 300);
                break;
            case PlaceKind.Letters when spot.Place.Behind == Behind.Block:
                AddLines(spot, items, 0);
                StatementItems.Add(spot, items, 300);
                break;
            case PlaceKind.Blank or PlaceKind.Word or PlaceKind.Letters:
                StatementItems.Add(spot, items, 0);
                break;
        }
    }

    static void AddWord(Spot spot, CompletionItems items)
    {
        switch (spot.Place.Letter)
        {
            case 'G' or 'M':
                CodeItems.Add(spot, items, spot.Place.Letter, 0);
                break;
            case 'P' when NumberItems.CallsByP(spot):
                NumberItems.AddPrograms(spot, items);
                break;
            case 'O' when spot.IsAtBlockStart:
                NumberItems.AddSubroutines(spot, items);
                break;
            default:
                WordItems.AddNumbers(spot, items);
                break;
        }
        if (spot.Place.Typed.Length == 0 || spot.Place.Letter is 'G' or 'T')
            AddLines(spot, items, 200);
    }

    /// <summary>Whole blocks: only where the line has none yet, and only those whose label begins as what was typed.</summary>
    static void AddLines(Spot spot, CompletionItems items, int rank)
    {
        if (!spot.IsAtBlockStart || !spot.IsAtBlockEnd || spot.Place.GoesOn)
            return;
        var begun = spot.Place.Kind == PlaceKind.Word ? spot.Place.Letter + spot.Place.Typed : spot.Place.Typed;
        var lines = new CompletionItems();
        CycleLines.Add(spot, lines, rank);
        PatternLines.Add(spot, lines, rank + 20);
        StartLines.Add(spot, lines, rank + 30);
        items.Take(lines, entry => entry.Label.StartsWith(begun, StringComparison.OrdinalIgnoreCase));
    }
}
