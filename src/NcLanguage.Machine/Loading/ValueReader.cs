using NcLanguage.Machine.Geometry;
using NcLanguage.Machine.Json;
using NcLanguage.Machine.Profiles;

namespace NcLanguage.Machine.Loading;

/// <summary>Reads single values of a setup or machine file. What is wrong becomes a problem and the answer null: never a default.</summary>
sealed class ValueReader(ProblemList problems, LengthUnit unit)
{
    static readonly string[] AxisNames = ["X", "Y", "Z"];

    public ProblemList Problems => problems;

    public LengthUnit Unit => unit;

    /// <summary>Reports a wrong value and what becomes of it.</summary>
    public void Wrong(ByteRange range, string message, string? instead = null, string? replacement = null) =>
        problems.Add(ProblemKind.Value, range, $"{message}; {instead ?? "it counts as not given"}.", replacement);

    /// <summary>The one member of its name; null where the name is given more than once, which is reported.</summary>
    /// <param name="given">All members of that name, at least one.</param>
    public JsonMember? TheOnly(IReadOnlyList<JsonMember> given)
    {
        if (given.Count == 1)
            return given[0];
        Wrong(given[1].NameRange, $"\"{MessageText.Clip(given[0].Name)}\" is given {given.Count} times, first on line {problems.LineOf(given[0].NameRange)}", "none of them is used");
        return null;
    }

    /// <summary>A number without unit of length.</summary>
    public double? Number(JsonMember member, Bounds bounds, string? instead = null) =>
        Number(member.Value, $"\"{member.Name}\"", bounds, instead);

    /// <summary>A length, or a rate made of one, in mm.</summary>
    public double? Length(JsonMember member, Bounds bounds, string? instead = null) =>
        ToMm(Number(member, bounds, instead));

    /// <summary>A whole number.</summary>
    public int? Whole(JsonMember member, Bounds bounds, string? instead = null)
    {
        if (Number(member, bounds, instead) is not { } number)
            return null;
        if (number == Math.Floor(number))
            return (int)number;
        Wrong(member.Value.Range, $"\"{member.Name}\" is {Bounds.Format(number)} but must be a whole number", instead);
        return null;
    }

    /// <summary>Text that is not blank and that a line of a message can show.</summary>
    public string? Text(JsonMember member, string? instead = null)
    {
        var value = member.Value;
        if (value.Kind != JsonKind.Text)
            Wrong(value.Range, $"\"{member.Name}\" must be text in double quotes, not {Describe(value)}", instead);
        else if (string.IsNullOrWhiteSpace(value.Text))
            Wrong(value.Range, $"\"{member.Name}\" is blank", instead);
        else if (value.Text.Any(sign => char.IsControl(sign) && sign != '\t'))
            Wrong(value.Range, $"\"{member.Name}\" holds a line end or another control character, which no message can show", instead);
        else
            return value.Text;
        return null;
    }

    /// <summary>A row of signs of ASCII, in any order.</summary>
    public string? Signs(JsonMember member, string wanted, string? instead = null)
    {
        var value = member.Value;
        if (value.Kind == JsonKind.Text && ProgramMark.AreSigns(value.Text))
            return value.Text;
        Wrong(value.Range, $"\"{member.Name}\" must be {wanted}, not {Describe(value)}", instead);
        return null;
    }

    /// <summary>One of the named choices, or of a family of names that goes on behind them.</summary>
    /// <param name="isOfFamily">Whether a text is a name of the family.</param>
    /// <param name="family">What the family is, as the end of the list of choices in a message.</param>
    public string? Choice(JsonMember member, IEnumerable<string> choices, string? instead = null, Func<string, bool>? isOfFamily = null, string? family = null)
    {
        var value = member.Value;
        if (value.Kind == JsonKind.Text && (choices.Contains(value.Text) || isOfFamily?.Invoke(value.Text) == true))
            return value.Text;
        var nearest = value.Kind == JsonKind.Text ? NearestName.Find(value.Text, choices) : null;
        Wrong(
            value.Range, $"\"{member.Name}\" must be one of {string.Join(", ", choices)}{(family is null ? "" : $", or {family}")}, not {Describe(value)}{NearestName.Hint(nearest)}", instead,
            NearestName.Replacement(nearest));
        return null;
    }

    public bool? Truth(JsonMember member, string? instead = null)
    {
        if (member.Value.Kind == JsonKind.Boolean)
            return member.Value.Truth;
        Wrong(member.Value.Range, $"\"{member.Name}\" must be true or false, not {Describe(member.Value)}", instead);
        return null;
    }

    /// <summary>A place [x, y, z], in mm.</summary>
    public Point3? Point(JsonMember member, string? instead = null)
    {
        var numbers = Numbers(member, AxisNames, instead);
        return numbers is null || !unit.IsKnown
            ? null
            : new Point3(ToMm(numbers[0]) ?? 0, ToMm(numbers[1]) ?? 0, ToMm(numbers[2]) ?? 0);
    }

    /// <summary>A list of as many lengths as there are <paramref name="names"/> (axes, or words such as "least"), in the file's unit.</summary>
    public double[]? Numbers(JsonMember member, IReadOnlyList<string> names, string? instead = null)
    {
        var value = member.Value;
        if (value.Kind != JsonKind.Array || value.Items.Count != names.Count)
        {
            var found = value.Kind == JsonKind.Array ? $"a list of {value.Items.Count}" : Describe(value);
            Wrong(value.Range, $"\"{member.Name}\" must be a list of {names.Count} numbers [{string.Join(", ", names)}], not {found}", instead);
            return null;
        }
        var numbers = new double[names.Count];
        var sound = true;
        for (var i = 0; i < numbers.Length; i++)
        {
            var number = Number(value.Items[i], $"{(char.IsLower(names[i][0]) ? "The " : "")}{names[i]} of \"{member.Name}\"", Bounds.Coordinate, instead ?? $"\"{member.Name}\" counts as not given");
            sound &= number is not null;
            numbers[i] = number ?? 0;
        }
        return sound ? numbers : null;
    }

    /// <summary>The box between the two corners, or null where one is missing or an axis runs backwards; <paramref name="what"/> names it in messages.</summary>
    public Box3? Box(Point3? min, Point3? max, JsonValue value, string what, string instead)
    {
        if (min is not { } low || max is not { } high)
            return null;
        for (var axis = 0; axis < 3; axis++)
        {
            if (low[axis] <= high[axis])
                continue;
            var from = Bounds.Format(low[axis] / unit.Millimetres);
            var to = Bounds.Format(high[axis] / unit.Millimetres);
            var range = value.Single("min")?.Items[axis].Range ?? value.Range;
            Wrong(range, $"In {AxisNames[axis]} the min of {what}, {from}, is above its max, {to}", instead);
            return null;
        }
        return new Box3(low, high);
    }

    /// <summary>True for an object; reports anything else.</summary>
    public bool IsObject(JsonValue value, string what, string? instead = null)
    {
        if (value.Kind == JsonKind.Object)
            return true;
        Wrong(value.Range, $"{what} must be an object in braces {{ }}, not {Describe(value)}", instead);
        return false;
    }

    /// <summary>The items of a list, or none and a problem.</summary>
    public IReadOnlyList<JsonValue>? Items(JsonMember member)
    {
        if (member.Value.Kind == JsonKind.Array)
            return member.Value.Items;
        Wrong(member.Value.Range, $"\"{member.Name}\" must be a list in brackets [ ], not {Describe(member.Value)}");
        return null;
    }

    /// <summary>What the rows of a list are read as; a list that is none, and rows that cannot be read, are told and left out.</summary>
    public IEnumerable<T> Rows<T>(JsonMember member, Func<JsonValue, ValueReader, T?> readRow) where T : class =>
        (Items(member) ?? []).Select(row => readRow(row, this)).OfType<T>();

    /// <summary>A number in its bounds.</summary>
    public double? Number(JsonValue value, string what, Bounds bounds, string? instead = null)
    {
        if (value.Kind != JsonKind.Number)
            Wrong(value.Range, $"{what} must be a number, not {Describe(value)}", instead);
        else if (double.IsInfinity(value.Number))
            Wrong(value.Range, $"{what} is a number too large to be read; it must be {(value.Number > 0 ? $"at most {Bounds.Format(bounds.Greatest)}" : $"at least {Bounds.Format(bounds.Least)}")}", instead);
        else if (bounds.Complain(value.Number) is { } complaint)
            Wrong(value.Range, $"{what} is {Bounds.Format(value.Number)} but {complaint}", instead);
        else
            return value.Number;
        return null;
    }

    /// <summary>Millimetres of a length in the file's unit; null where either is not known.</summary>
    public double? ToMm(double? length) => unit.IsKnown ? length * unit.Millimetres : null;

    /// <summary>A value as a message names it.</summary>
    public static string Describe(JsonValue value) => value.Kind switch
    {
        JsonKind.Object => "an object",
        JsonKind.Array => "a list",
        JsonKind.Text => $"the text \"{MessageText.Clip(value.Text)}\"",
        JsonKind.Number => $"the number {Bounds.Format(value.Number)}",
        JsonKind.Boolean => value.Truth ? "true" : "false",
        _ => "null",
    };
}
