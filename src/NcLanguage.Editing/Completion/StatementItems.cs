using System.Globalization;
using NcLanguage.Control.Codes;

namespace NcLanguage.Editing;

/// <summary>Statements that may stand at the cursor, with what belongs to them.</summary>
static class StatementItems
{
    public static void Add(Spot spot, CompletionItems items, int rank)
    {
        // G8 begins no statement.
        if (spot.Place is { Kind: PlaceKind.Word, Typed.Length: > 0 })
            return;
        foreach (var row in StatementTable.All)
        {
            if (row.BehindO != (spot.Place.Behind == Behind.NumberO) || !Fits(row, spot) || !row.Keyword.StartsWith(Begun(spot), StringComparison.Ordinal))
                continue;
            items.Add(rank, new CompletionEntry(spot.Style.Case(row.Keyword), CompletionKind.Statement, row.Name, Write(spot, row))
            {
                IsSnippet = spot.TakesSnippets, Topic = CompletionTopics.OfStatement(row),
            });
        }
    }

    static string Begun(Spot spot) => spot.Place.Kind == PlaceKind.Word ? spot.Place.Letter.ToString() : spot.Place.Typed;

    static bool Fits(StatementEntry row, Spot spot) => (spot.Place.Behind, row.Keyword) switch
    {
        (Behind.NumberO, _) => true,
        // A bracket opens the condition; no word or statement may stand there.
        (Behind.Keyword, _) => false,
        (Behind.If, var keyword) => keyword is "THEN" or "GOTO",
        (Behind.While, var keyword) => keyword == "DO",
        (_, "END") when !row.BehindO => spot.IsAtBlockStart && LoopsToEnd(spot).Count > 0,
        // THEN alone says nothing; behind other words of a block no statement follows.
        (_, var keyword) => keyword != "THEN" && spot.IsAtBlockStart,
    };

    static string Write(Spot spot, StatementEntry row)
    {
        var writer = new LineWriter(spot);
        if (!spot.TakesSnippets)
            return writer.Text(row.Keyword).NewText;
        switch (row.Keyword)
        {
            case "IF" when !row.BehindO:
                return writer.Text("IF [").Hole("").Raw("]").Text("GOTO ").Hole("").NewText;
            case "WHILE" when !row.BehindO:
                var number = FreeLoop(spot);
                return writer.Text("WHILE [").Hole("").Raw("]").Text($"DO {number}").NewLine().Hole("").NewLine().Text($"END {number}").NewText;
            case "IF" or "ELSEIF" or "WHILE" or "REPEAT":
                return writer.Text(row.Keyword).Text("[").Hole("").Raw("]").NewText;
            case "GOTO":
                return writer.Text("GOTO ").Hole("").NewText;
            case "THEN":
                return writer.Text("THEN #").Hole("").Raw("=").Hole("").NewText;
            case "DO" when !row.BehindO:
                return writer.Text("DO ").Hole(FreeLoop(spot).ToString(CultureInfo.InvariantCulture)).NewText;
            case "END" when !row.BehindO:
                return writer.Text("END ").Hole(LoopsToEnd(spot)[^1].ToString(CultureInfo.InvariantCulture)).NewText;
            default:
                return writer.Text(row.Keyword).NewText;
        }
    }

    /// <summary>The least number that no loop around the cursor has.</summary>
    static int FreeLoop(Spot spot)
    {
        var around = LoopsAround(spot);
        var number = 1;
        while (around.Contains(number))
            number++;
        return number;
    }

    static IReadOnlyList<int> LoopsToEnd(Spot spot) => spot.Analysis.Main.Flow?.Text.LoopsWithoutEndAt(spot.Line) ?? [];

    static IReadOnlyList<int> LoopsAround(Spot spot) => spot.Analysis.Main.Flow?.Text.LoopsOpenAt(spot.Line) ?? [];
}
