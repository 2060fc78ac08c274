using NcLanguage.Machine.Json;

namespace NcLanguage.Machine.Loading;

/// <summary>Puts the value of one member into the target.</summary>
delegate T FieldReader<T>(T target, JsonMember member, ValueReader read);

/// <summary>Whether a member may be absent, and whether null may stand for "not known".</summary>
enum Presence
{
    /// <summary>May be absent or null.</summary>
    Optional,

    /// <summary>May be absent, but null is a mistake: the object's other members decide whether it is needed.</summary>
    NotNull,

    /// <summary>Must be there.</summary>
    Required,
}

/// <summary>One row of a table that says what an object may hold.</summary>
sealed record Field<T>(string Name, FieldReader<T> Apply, Presence Presence = Presence.Optional)
{
    /// <summary>What becomes of the target when the member is given more than once; null where leaving it out says "not known".</summary>
    public Func<T, T>? Unread { get; init; }
}

/// <summary>The members an object may hold, as a table. They are applied in the order of the table, not of the file, so that a row
/// may build on those above it. <paramref name="what"/> names the object in messages: "the setup", "a tool".</summary>
sealed class ObjectShape<T>(string what, params Field<T>[] fields)
{
    readonly Field<T>[] _fields = fields;

    /// <summary>The names of the members.</summary>
    public IReadOnlyList<string> Names { get; } = [.. fields.Select(row => row.Name)];

    /// <summary>Why a name that looks like a member can be none, as the end of a message; null where there is nothing to say.</summary>
    public Func<string, string?>? WhyNot { get; init; }

    /// <summary>The row of a name that belongs to a family of names; null for others.</summary>
    public Func<string, Field<T>?>? Family { get; init; }

    /// <summary>The target with every member of the object applied; each mistake becomes a problem.</summary>
    public T Read(T target, JsonValue value, ValueReader read)
    {
        var members = value.Members.ToLookup(member => member.Name);
        ReportUnknown(value, members, read);
        var rows = Family is null ? _fields : _fields.Concat(members.Select(named => Family(named.Key)).OfType<Field<T>>());
        foreach (var row in rows)
        {
            var given = members[row.Name].ToList();
            if (given.Count == 0)
            {
                if (row.Presence == Presence.Required)
                    read.Wrong(new(value.Range.Start, value.Range.Start + 1), $"{MessageText.Capital(what)} needs \"{row.Name}\"", "it is left out");
            }
            else if (read.TheOnly(given) is not { } member)
            {
                target = row.Unread is null ? target : row.Unread(target);
            }
            else if (row.Presence != Presence.Optional || member.Value.Kind != JsonKind.Null)
            {
                target = row.Apply(target, member, read);
            }
        }
        return target;
    }

    void ReportUnknown(JsonValue value, ILookup<string, JsonMember> members, ValueReader read)
    {
        List<string> absent = [.. Names.Where(name => !members.Contains(name))];
        foreach (var member in value.Members)
        {
            if (Names.Contains(member.Name) || Family?.Invoke(member.Name) is not null)
                continue;
            if (WhyNot?.Invoke(member.Name) is { } reason)
            {
                read.Problems.Add(ProblemKind.UnknownKey, member.NameRange, $"{MessageText.Capital(what)} has no member \"{MessageText.Clip(member.Name)}\", so it is ignored: {reason}");
                continue;
            }
            var nearest = NearestName.Find(member.Name, absent);
            var hint = nearest is null
                ? $"it knows {string.Join(", ", Names.Where(name => name[0] != '$'))}."
                : $"did you mean \"{nearest}\"?";
            read.Problems.Add(
                ProblemKind.UnknownKey, member.NameRange,
                $"{MessageText.Capital(what)} has no member \"{MessageText.Clip(member.Name)}\", so it is ignored: {hint}",
                NearestName.Replacement(nearest));
        }
    }
}
