using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using NcLanguage.Syntax.Expressions;

namespace NcLanguage.Control.State;

/// <summary>The values of numbered and named variables; an immutable value. A variable is vacant until it is set; once set, its value may be not known (NaN).</summary>
public sealed class Variables : IEquatable<Variables>
{
    /// <summary>Numbers up to this one belong to the program or call that runs; those above to all (common practice).</summary>
    public const int LastLocal = 33;

    /// <summary>Names that begin with it are known to all; others belong to the program or call that runs (common practice, from memory).</summary>
    const char CommonMark = '_';

    readonly Group _locals;
    readonly Group _common;

    Variables(in Group locals, in Group common) => (_locals, _common) = (locals, common);

    /// <summary>Nothing has been set.</summary>
    public static Variables None { get; } = new(Group.Empty(areOthersKnown: true), Group.Empty(areOthersKnown: true));

    /// <summary>Any variable may hold anything.</summary>
    public static Variables Unknown { get; } = new(Group.Empty(areOthersKnown: false), Group.Empty(areOthersKnown: false));

    /// <summary>The value of #number: NaN where it is not known, <see cref="Expression.Unset"/> where it was never set.</summary>
    public double Get(int number) => IsLocal(number) ? _locals.Get(_locals.Numbered, number) : _common.Get(_common.Numbered, number);

    /// <summary>A name, as it stands between &lt; and &gt;, as it is known here: without blanks, in lower case.</summary>
    public static string NameIn(ReadOnlySpan<byte> written) =>
        Encoding.UTF8.GetString(written).Replace(" ", "", StringComparison.Ordinal).Replace("\t", "", StringComparison.Ordinal).ToLowerInvariant();

    /// <summary>The value of a named variable; the name in lower case.</summary>
    public double Get(string name) => IsLocal(name) ? _locals.Get(_locals.Named, name) : _common.Get(_common.Named, name);

    /// <summary>What has been set, as it is written (#5, #&lt;name&gt;), with its value; NaN where that is not known.</summary>
    public IEnumerable<(string Name, double Value)> InUse =>
        _locals.Numbered.Concat(_common.Numbered).Select(pair => ("#" + pair.Key.ToString(CultureInfo.InvariantCulture), pair.Value))
            .Concat(_locals.Named.Concat(_common.Named).OrderBy(pair => pair.Key, StringComparer.Ordinal).Select(pair => ($"#<{pair.Key}>", pair.Value)));

    /// <summary>The same values with #number set; NaN makes it not known.</summary>
    public Variables With(int number, double value) =>
        IsLocal(number) ? new Variables(_locals.With(number, value), _common) : new Variables(_locals, _common.With(number, value));

    /// <summary>The same values with a named variable set.</summary>
    public Variables With(string name, double value) =>
        IsLocal(name) ? new Variables(_locals.With(name, value), _common) : new Variables(_locals, _common.With(name, value));

    static bool IsLocal(int number) => number <= LastLocal;

    static bool IsLocal(string name) => !name.StartsWith(CommonMark);

    /// <summary>The same values for a call with arguments: its own local variables, all others vacant.</summary>
    public Variables ForCall(IReadOnlyList<(int Number, double Value)> arguments)
    {
        var locals = Group.Empty(areOthersKnown: true);
        foreach (var (number, value) in arguments)
            locals = locals.With(number, value);
        return new Variables(locals, _common);
    }

    /// <summary>These values with the local variables of another: behind the return from a call with arguments.</summary>
    public Variables WithLocalsOf(Variables caller) => new(caller._locals, _common);

    /// <summary>What is the same in both; what differs is not known.</summary>
    public static Variables Join(Variables a, Variables b) =>
        a.Equals(b) ? a : new Variables(Group.Join(a._locals, b._locals), Group.Join(a._common, b._common));

    public bool Equals(Variables? other) => ReferenceEquals(this, other) || (other is not null && _locals.IsSame(other._locals) && _common.IsSame(other._common));

    public override bool Equals(object? obj) => Equals(obj as Variables);

    public override int GetHashCode() =>
        HashCode.Combine(_locals.Numbered.Count, _locals.Named.Count, _common.Numbered.Count, _common.Named.Count);

    /// <summary>Variables that come and go together.</summary>
    /// <param name="AreOthersKnown">Whether those that are not listed are known to be vacant.</param>
    readonly record struct Group(ImmutableSortedDictionary<int, double> Numbered, ImmutableSortedDictionary<string, double> Named, bool AreOthersKnown)
    {
        static readonly ImmutableSortedDictionary<string, double> NoNames = ImmutableSortedDictionary.Create<string, double>(StringComparer.Ordinal);

        public static Group Empty(bool areOthersKnown) => new(ImmutableSortedDictionary<int, double>.Empty, NoNames, areOthersKnown);

        public double Get<T>(ImmutableSortedDictionary<T, double> values, T key) where T : notnull =>
            values.TryGetValue(key, out var value) ? value : AreOthersKnown ? Expression.Unset : double.NaN;

        public Group With(int number, double value) => this with { Numbered = With(Numbered, number, value) };

        public Group With(string name, double value) => this with { Named = With(Named, name, value) };

        // What is set from a vacant variable is vacant itself.
        static ImmutableSortedDictionary<T, double> With<T>(ImmutableSortedDictionary<T, double> values, T key, double value) where T : notnull =>
            Expression.IsVacant(value) ? values.Remove(key) : values.SetItem(key, value);

        public static Group Join(in Group a, in Group b) => new(
            Join(a.Numbered, b.Numbered, a.AreOthersKnown, b.AreOthersKnown),
            Join(a.Named, b.Named, a.AreOthersKnown, b.AreOthersKnown),
            a.AreOthersKnown && b.AreOthersKnown);

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

        public bool IsSame(in Group other) => AreOthersKnown == other.AreOthersKnown && IsSame(Numbered, other.Numbered) && IsSame(Named, other.Named);

        static bool IsSame<T>(ImmutableSortedDictionary<T, double> a, ImmutableSortedDictionary<T, double> b) where T : notnull =>
            ReferenceEquals(a, b) || (a.Count == b.Count && a.SequenceEqual(b));
    }
}
