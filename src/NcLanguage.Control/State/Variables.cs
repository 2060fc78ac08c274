using System.Collections.Immutable;
using NcLanguage.Syntax.Expressions;

namespace NcLanguage.Control.State;

/// <summary>The values of numbered and named variables; an immutable value. A variable that was never set is not known.</summary>
public sealed class Variables : IEquatable<Variables>
{
    readonly ImmutableSortedDictionary<int, double> _numbered;

    Variables(ImmutableSortedDictionary<int, double> numbered) => _numbered = numbered;

    /// <summary>No variable is known.</summary>
    public static Variables None { get; } = new(ImmutableSortedDictionary<int, double>.Empty);

    /// <summary>The value of #number, or NaN.</summary>
    public double Get(int number) => _numbered.TryGetValue(number, out var value) ? value : double.NaN;

    /// <summary>The same values with #number set; NaN makes it not known. Null when none is known any more, as in a state that knows none.</summary>
    public Variables? With(int number, double value)
    {
        var numbered = double.IsNaN(value) ? _numbered.Remove(number) : _numbered.SetItem(number, value);
        return numbered.IsEmpty ? null : new(numbered);
    }

    public bool Equals(Variables? other) =>
        ReferenceEquals(this, other) || (other is not null && _numbered.Count == other._numbered.Count && _numbered.SequenceEqual(other._numbered));

    public override bool Equals(object? obj) => Equals(obj as Variables);

    public override int GetHashCode() => _numbered.Count;
}

/// <summary>Lets expressions read a state's variables.</summary>
readonly struct VariableReader(Variables? variables) : IVariables
{
    public double Get(int number) => variables?.Get(number) ?? double.NaN;

    public double Get(scoped ReadOnlySpan<byte> name) => double.NaN;
}
