using System.Collections.Immutable;
using System.Globalization;
using NcLanguage.Syntax.Expressions;

namespace NcLanguage.Control.State;

/// <summary>The values of numbered and named variables; an immutable value. A variable is vacant until it is set; once set, its value may be not known (NaN).</summary>
public sealed class Variables : IEquatable<Variables>
{
    /// <summary>Numbers up to this one belong to the program or call that runs; those above to all (common practice).</summary>
    public const int LastLocal = 33;

    static readonly ImmutableSortedDictionary<string, double> NoNames = ImmutableSortedDictionary.Create<string, double>(StringComparer.Ordinal);

    readonly ImmutableSortedDictionary<int, double> _locals;
    readonly ImmutableSortedDictionary<int, double> _common;
    readonly ImmutableSortedDictionary<string, double> _named;
    readonly bool _areLocalsKnown;
    readonly bool _areOthersKnown;

    Variables(
        ImmutableSortedDictionary<int, double> locals, ImmutableSortedDictionary<int, double> common, ImmutableSortedDictionary<string, double> named,
        bool areLocalsKnown, bool areOthersKnown)
    {
        (_locals, _common, _named) = (locals, common, named);
        (_areLocalsKnown, _areOthersKnown) = (areLocalsKnown, areOthersKnown);
    }

    /// <summary>Nothing has been set.</summary>
    public static Variables None { get; } = new(ImmutableSortedDictionary<int, double>.Empty, ImmutableSortedDictionary<int, double>.Empty, NoNames, true, true);

    /// <summary>Any variable may hold anything.</summary>
    public static Variables Unknown { get; } = new(ImmutableSortedDictionary<int, double>.Empty, ImmutableSortedDictionary<int, double>.Empty, NoNames, false, false);

    /// <summary>The value of #number: NaN where it is not known, <see cref="Expression.Unset"/> where it was never set.</summary>
    public double Get(int number)
    {
        var isLocal = number <= LastLocal;
        if ((isLocal ? _locals : _common).TryGetValue(number, out var value))
            return value;
        return (isLocal ? _areLocalsKnown : _areOthersKnown) ? Expression.Unset : double.NaN;
    }

    /// <summary>The value of a named variable; the name in lower case.</summary>
    public double Get(string name) => _named.TryGetValue(name, out var value) ? value : _areOthersKnown ? Expression.Unset : double.NaN;

    /// <summary>What has been set, as it is written (#5, #&lt;name&gt;), with its value; NaN where that is not known.</summary>
    public IEnumerable<(string Name, double Value)> InUse =>
        _locals.Concat(_common).Select(pair => ("#" + pair.Key.ToString(CultureInfo.InvariantCulture), pair.Value))
            .Concat(_named.Select(pair => ($"#<{pair.Key}>", pair.Value)));

    /// <summary>The same values with #number set; NaN makes it not known.</summary>
    public Variables With(int number, double value)
    {
        // What is set from a vacant variable is vacant itself.
        var isVacant = Expression.IsVacant(value);
        var isLocal = number <= LastLocal;
        var group = isLocal ? _locals : _common;
        group = isVacant ? group.Remove(number) : group.SetItem(number, value);
        return isLocal
            ? new Variables(group, _common, _named, _areLocalsKnown, _areOthersKnown)
            : new Variables(_locals, group, _named, _areLocalsKnown, _areOthersKnown);
    }

    /// <summary>The same values with a named variable set.</summary>
    public Variables With(string name, double value) =>
        new(_locals, _common, Expression.IsVacant(value) ? _named.Remove(name) : _named.SetItem(name, value), _areLocalsKnown, _areOthersKnown);

    /// <summary>The same values for a call with arguments: its own local variables, all others vacant.</summary>
    public Variables ForCall(IReadOnlyList<(int Number, double Value)> arguments)
    {
        var locals = ImmutableSortedDictionary<int, double>.Empty;
        foreach (var (number, value) in arguments)
            if (!Expression.IsVacant(value))
                locals = locals.SetItem(number, value);
        return new Variables(locals, _common, _named, true, _areOthersKnown);
    }

    /// <summary>These values with the local variables of another: behind the return from a call with arguments.</summary>
    public Variables WithLocalsOf(Variables caller) => new(caller._locals, _common, _named, caller._areLocalsKnown, _areOthersKnown);

    /// <summary>What is the same in both; what differs is not known.</summary>
    public static Variables Join(Variables a, Variables b) => a.Equals(b)
        ? a
        : new Variables(
            Join(a._locals, b._locals, a._areLocalsKnown, b._areLocalsKnown),
            Join(a._common, b._common, a._areOthersKnown, b._areOthersKnown),
            Join(a._named, b._named, a._areOthersKnown, b._areOthersKnown),
            a._areLocalsKnown && b._areLocalsKnown, a._areOthersKnown && b._areOthersKnown);

    static ImmutableSortedDictionary<T, double> Join<T>(
        ImmutableSortedDictionary<T, double> a, ImmutableSortedDictionary<T, double> b, bool isAKnown, bool isBKnown) where T : notnull
    {
        var joined = a;
        foreach (var (name, value) in a)
            if (!b.TryGetValue(name, out var other) || !other.Equals(value))
                joined = isBKnown || b.ContainsKey(name) ? joined.SetItem(name, double.NaN) : joined.Remove(name);
        foreach (var (name, _) in b)
            if (!a.ContainsKey(name) && isAKnown)
                joined = joined.SetItem(name, double.NaN);
        return joined;
    }

    public bool Equals(Variables? other) =>
        ReferenceEquals(this, other)
        || (other is not null && _areLocalsKnown == other._areLocalsKnown && _areOthersKnown == other._areOthersKnown
            && Same(_locals, other._locals) && Same(_common, other._common) && Same(_named, other._named));

    static bool Same<T>(ImmutableSortedDictionary<T, double> a, ImmutableSortedDictionary<T, double> b) where T : notnull =>
        ReferenceEquals(a, b) || (a.Count == b.Count && a.SequenceEqual(b));

    public override bool Equals(object? obj) => Equals(obj as Variables);

    public override int GetHashCode() => HashCode.Combine(_locals.Count, _common.Count, _named.Count);
}
