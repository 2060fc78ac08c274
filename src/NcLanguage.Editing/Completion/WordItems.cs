using NcLanguage.Control.Codes;

namespace NcLanguage.Editing;

/// <summary>Words that the codes of the block still need or may take, and what is known of their numbers.</summary>
static class WordItems
{
    /// <summary>Places of holes that are shown where no letter asks for them.</summary>
    const int MostPlaces = 3;

    /// <summary>Offers words where none has been begun: needed ones with the best number for each, those carried over, the rest.</summary>
    public static void AddNew(Spot spot, CompletionItems items)
    {
        var seen = new HashSet<char>();
        foreach (var code in CodeWords.Codes(spot.Step))
        {
            foreach (var fact in CodeWords.Of(spot.Analysis, spot.Line, spot.Step, code))
            {
                var letter = fact.Use.Letter;
                if (spot.Step.Words.Has(letter) || !seen.Add(letter))
                    continue;
                var isMissing = fact.Standing == WordStanding.Missing;
                AddLetter(spot, items, isMissing ? 0 : fact.Standing == WordStanding.Carried ? 20 : 30, letter,
                    fact.Describe(spot.Analysis, spot.After), CompletionTopics.OfWord(code, letter));
                if (isMissing)
                    AddValues(spot, items, letter, 10, most: 1);
            }
        }
        AddOwn(spot, items, seen);
        AddPlaces(spot, items);
        if (seen.Add('T') && !spot.Step.Words.Has('T'))
            AddLetter(spot, items, 60, 'T', AddressTable.Find('T')!.Name, CompletionTopics.OfAddress('T'));
        if (seen.Add('S') && !spot.Step.Words.Has('S'))
            AddLetter(spot, items, 60, 'S', AddressTable.Find('S')!.Name, CompletionTopics.OfAddress('S'));
    }

    /// <summary>What the machine file says that the codes of its own take.</summary>
    static void AddOwn(Spot spot, CompletionItems items, HashSet<char> seen)
    {
        foreach (ref readonly var token in spot.Analysis.Main.BlockAt(spot.Line).Tokens)
            if (OwnCodeHover.At(spot.Analysis, token) is { } code)
                foreach (var letter in code.Words)
                    if (!spot.Step.Words.Has(letter) && seen.Add(letter))
                        AddLetter(spot, items, 30, letter, $"word of {code.Text}", CompletionTopics.OfAddress(letter));
    }

    /// <summary>Offers the numbers that are known of a letter just typed.</summary>
    public static void AddNumbers(Spot spot, CompletionItems items)
    {
        var isName = spot.Place.Letter is 'T' or 'H' or 'D';
        // In a number of his own nobody wants another one, unless the number is a name.
        if (!isName && (spot.Place.Typed.Length > 0 || spot.Place.GoesOn))
            return;
        AddValues(spot, items, spot.Place.Letter, 0, int.MaxValue);
    }

    static void AddLetter(Spot spot, CompletionItems items, int rank, char letter, string detail, string topic)
    {
        var text = spot.Style.Case(letter.ToString());
        items.Add(rank, new CompletionEntry(text, CompletionKind.Word, detail, text) { Topic = topic });
    }

    static void AddPlaces(Spot spot, CompletionItems items)
    {
        if (!spot.Step.Words.Has('X') && !spot.Step.Words.Has('Y') && spot.Cycle > 0)
            AddValues(spot, items, 'X', 12, MostPlaces, withLow: false);
    }

    static void AddValues(Spot spot, CompletionItems items, char letter, int rank, int most, bool withLow = true)
    {
        foreach (var value in WordValue.Of(spot, letter).Where(value => withLow || !value.Low).Take(most))
        {
            // T, H and D name something: what is typed picks one. All others stand for themselves.
            var isName = letter is 'T' or 'H' or 'D';
            if (isName && spot.Place.Kind == PlaceKind.Word && !value.Text.AsSpan(1).TrimStart('0').StartsWith(spot.Place.Typed.AsSpan().TrimStart('0'), StringComparison.Ordinal))
                continue;
            items.Add(value.Low ? rank + 5 : rank, new CompletionEntry(value.Text, CompletionKind.Value, value.Detail, value.Text)
            {
                FilterText = isName ? null : value.Text[..1], Documentation = value.Documentation,
            });
        }
    }
}
