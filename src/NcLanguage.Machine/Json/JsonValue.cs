namespace NcLanguage.Machine.Json;

enum JsonKind { Object, Array, Text, Number, Boolean, Null }

/// <summary>A stretch of the file's bytes; <paramref name="End"/> is the first byte after it.</summary>
readonly record struct ByteRange(int Start, int End);

/// <summary>One value of a JSON file with its place, so that a complaint can point at it.</summary>
sealed class JsonValue
{
    public required JsonKind Kind { get; init; }

    public required ByteRange Range { get; init; }

    /// <summary>The unescaped text of a <see cref="JsonKind.Text"/>.</summary>
    public string Text { get; init; } = "";

    /// <summary>The value of a <see cref="JsonKind.Number"/>; infinite where the file's number is too large.</summary>
    public double Number { get; init; }

    /// <summary>The value of a <see cref="JsonKind.Boolean"/>.</summary>
    public bool Truth { get; init; }

    /// <summary>The members of an <see cref="JsonKind.Object"/> in the order written, repeats included.</summary>
    public IReadOnlyList<JsonMember> Members { get; init; } = [];

    /// <summary>The values of an <see cref="JsonKind.Array"/>.</summary>
    public IReadOnlyList<JsonValue> Items { get; init; } = [];

    public bool Has(string name) => Members.Any(member => member.Name == name);

    /// <summary>The member's value, or null where the name is absent or given more than once.</summary>
    public JsonValue? Single(string name)
    {
        JsonValue? found = null;
        foreach (var member in Members)
        {
            if (member.Name != name)
                continue;
            if (found is not null)
                return null;
            found = member.Value;
        }
        return found;
    }
}

/// <summary>One <c>"name": value</c> of an object; <paramref name="NameRange"/> includes the quotes.</summary>
sealed record JsonMember(string Name, ByteRange NameRange, JsonValue Value);
