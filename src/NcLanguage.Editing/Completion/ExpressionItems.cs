using System.Globalization;
using System.Text;
using NcLanguage.Checks;
using NcLanguage.Control.Codes;
using NcLanguage.Control.State;

namespace NcLanguage.Editing;

/// <summary>What expressions are made of: variables with what they hold, functions, operators.</summary>
static class ExpressionItems
{
    /// <summary>Lines to each side whose variables are listed beside those that hold something.</summary>
    const int LinesAround = 200;

    /// <summary>The common variables that controls have and a program may use (common practice, from memory).</summary>
    const int FirstCommon = 100;
    const int LastCommon = 199;

    /// <summary>Stops the control where it is set; nobody reads it.</summary>
    const int Alarm = 3000;

    /// <summary>Axes a three-axis mill has.</summary>
    const int Axes = 3;

    /// <summary>Below functions: of the control's own variables few are asked for.</summary>
    const int OfControl = 120;

    /// <summary>Behind all others: nothing but a comparison or a setting has a use for it.</summary>
    const int OfNothing = 130;

    /// <summary>Offers variables: those that hold something, where one is set the first that is free, those named nearby, those of the control.</summary>
    public static void AddVariables(Spot spot, CompletionItems items, int rank)
    {
        var known = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        var sets = spot.Place.IsSetting;
        foreach (var (name, value) in (spot.Before.Variables ?? Variables.None).InUse)
        {
            known.Add(name);
            Add(spot, items, rank, name, double.IsNaN(value) ? "value " + Lengths.NotKnown : $"= {Say.Number(value, 6)}");
        }
        var nearby = Nearby(spot);
        if (sets && FirstFree(known, nearby) is { } free)
            Add(spot, items, rank + 5, free, "not used yet");
        foreach (var name in nearby)
            if (known.Add(name))
                Add(spot, items, rank + 10, name, "not set before this block");
        foreach (var row in VariableTable.All)
        {
            if (row.IsFree || (sets ? IsOnlyRead(row) : row.First == Alarm))
                continue;
            var last = row.IsByAxis ? row.First + Axes - 1 : row.Last;
            for (var number = row.First; number <= last; number++)
                if (NameOf(row, number) is { } name && known.Add("#" + number.ToString(CultureInfo.InvariantCulture)))
                    Add(spot, items, rank + (number == 0 ? OfNothing : OfControl), "#" + number.ToString(CultureInfo.InvariantCulture), name);
        }
    }

    /// <summary>Whether no setting changes what it holds: nothing, the codes in force, where the tool stands (common practice, from memory).</summary>
    static bool IsOnlyRead(VariableEntry row) => row.First is 0 or 4001 or 5001 or 5021 or 5041;

    /// <summary>The first common variable that is neither in use nor written nearby; null where all are.</summary>
    static string? FirstFree(HashSet<string> known, List<string> nearby)
    {
        for (var number = FirstCommon; number <= LastCommon; number++)
            if ("#" + number.ToString(CultureInfo.InvariantCulture) is var name && !known.Contains(name) && !nearby.Contains(name))
                return name;
        return null;
    }

    /// <summary>What a variable of the control is; null for one of a run that holds nothing.</summary>
    static string? NameOf(VariableEntry row, int number) => number is < 4001 or > 4014 ? row.NameOf(number) : number switch
    {
        4001 => "motion code in force",
        4002 => "plane in force",
        4003 => "G90 or G91 in force",
        4005 => "feed mode in force",
        4006 => "units in force",
        4007 => "radius compensation in force",
        4008 => "length offset code in force",
        4009 => "cycle in force",
        4010 => "G98 or G99 in force",
        4014 => "work offset in force",
        _ => null,
    };

    static void Add(Spot spot, CompletionItems items, int rank, string name, string detail)
    {
        if (spot.Place.Kind == PlaceKind.Variable && !name.StartsWith(spot.Place.Typed, StringComparison.OrdinalIgnoreCase))
            return;
        items.Add(rank, new CompletionEntry(name, CompletionKind.Variable, detail, name) { Topic = CompletionTopics.OfVariable(name) });
    }

    /// <summary>The variables written in the lines around, as they stand there; what is being typed is none of them, nor what it is for.</summary>
    static List<string> Nearby(Spot spot)
    {
        var names = new List<string>();
        var text = spot.Analysis.Text;
        for (var line = Math.Max(0, spot.Line - LinesAround); line < Math.Min(text.LineCount, spot.Line + LinesAround); line++)
        {
            if (line == spot.Line)
                continue;
            var bytes = text.Line(line);
            for (var at = bytes.IndexOf((byte)'#'); at >= 0 && at < bytes.Length;)
            {
                var end = at + 1;
                if (end < bytes.Length && bytes[end] == '<')
                    end = bytes[end..].IndexOf((byte)'>') is var close and >= 0 ? end + close + 1 : at + 1;
                else
                    while (end < bytes.Length && CursorPlace.IsDigit(bytes[end]))
                        end++;
                if (end > at + 1)
                    names.Add(Encoding.UTF8.GetString(bytes[at..end]));
                var next = bytes[end..].IndexOf((byte)'#');
                at = next < 0 ? -1 : end + next;
            }
        }
        return names;
    }

    /// <summary>Offers functions, with their brackets.</summary>
    public static void AddFunctions(Spot spot, CompletionItems items, int rank)
    {
        foreach (var row in FunctionTable.All)
        {
            if (row.IsOperator || !row.Text.StartsWith(spot.Place.Typed, StringComparison.Ordinal))
                continue;
            var writer = new LineWriter(spot).Text(row.Text).Raw("[").Hole("");
            if (row.Text == "ATAN")
                writer.Raw("]/[").Hole("");
            var closed = spot.TakesSnippets ? writer.Raw("]").NewText : spot.Style.Case(row.Text) + "[";
            items.Add(rank, new CompletionEntry(spot.Style.Case(row.Text), CompletionKind.Function, $"{row.Name} · {row.Example} is {Say.Number(row.ExampleValue, 6)}", closed)
            {
                IsSnippet = spot.TakesSnippets, Topic = CompletionTopics.OfFunction(row.Text),
            });
        }
    }

    /// <summary>Offers operators that are words; signs are typed faster than chosen.</summary>
    public static void AddOperators(Spot spot, CompletionItems items)
    {
        foreach (var row in FunctionTable.All)
            if (row.IsOperator && char.IsAsciiLetter(row.Text[0]) && row.Text.StartsWith(spot.Place.Typed, StringComparison.Ordinal))
                items.Add(0, new CompletionEntry(spot.Style.Case(row.Text), CompletionKind.Operator, $"{row.Name} · {row.Example} is {Say.Number(row.ExampleValue, 6)}", spot.Style.Case(row.Text))
                {
                    Topic = CompletionTopics.OfFunction(row.Text),
                });
    }
}
