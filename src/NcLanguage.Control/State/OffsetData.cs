using System.Collections.Immutable;
using NcLanguage.Machine.Geometry;

namespace NcLanguage.Control.State;

/// <summary>A datum that the program has set, mm; NaN where not known.</summary>
/// <param name="Origin">In machine coordinates.</param>
/// <param name="Moved">From where the setup has it. A datum of which the setup says nothing is meant to lie where the program first puts it.</param>
/// <param name="PutFirst">The axes, as bits, along which nobody had a place for it before.</param>
public readonly record struct SetDatum(Point3 Origin, Point3 Moved, int PutFirst);

/// <summary>A tool's length or radius in the control's list, mm: the size and what wear adds to it.</summary>
public readonly record struct SetSize(double Size, double Wear)
{
    public double Sum => Size + Wear;
}

/// <summary>Offsets that the program itself has written (G10), over those of the setup: an immutable value.</summary>
public sealed class OffsetData : IEquatable<OffsetData>
{
    readonly ImmutableSortedDictionary<int, SetDatum> _datums;
    readonly ImmutableSortedDictionary<int, SetSize> _lengths;
    readonly ImmutableSortedDictionary<int, SetSize> _radii;

    OffsetData(
        ImmutableSortedDictionary<int, SetDatum> datums, ImmutableSortedDictionary<int, SetSize> lengths, ImmutableSortedDictionary<int, SetSize> radii,
        bool isLost = false)
    {
        (_datums, _lengths, _radii) = (datums, lengths, radii);
        IsLost = isLost;
    }

    /// <summary>The program has written nothing.</summary>
    public static OffsetData None { get; } = new(
        ImmutableSortedDictionary<int, SetDatum>.Empty, ImmutableSortedDictionary<int, SetSize>.Empty, ImmutableSortedDictionary<int, SetSize>.Empty);

    /// <summary>The program has written something of which is not known what: no offset is known any more.</summary>
    public static OffsetData Lost { get; } = new(None._datums, None._lengths, None._radii, isLost: true);

    /// <summary>True when no offset is known any more.</summary>
    public bool IsLost { get; }

    /// <summary>The datum of a work offset, or null where the program has not set it.</summary>
    public SetDatum? Datum(int workOffset) => _datums.TryGetValue(workOffset, out var datum) ? datum : null;

    /// <summary>The length of an H number, or null where the program has not set it.</summary>
    public SetSize? Length(int number) => _lengths.TryGetValue(number, out var size) ? size : null;

    /// <summary>The radius of a D number, or null where the program has not set it.</summary>
    public SetSize? Radius(int number) => _radii.TryGetValue(number, out var size) ? size : null;

    public OffsetData WithDatum(int workOffset, SetDatum datum) => new(_datums.SetItem(workOffset, datum), _lengths, _radii, IsLost);

    public OffsetData WithLength(int number, SetSize length) => new(_datums, _lengths.SetItem(number, length), _radii, IsLost);

    public OffsetData WithRadius(int number, SetSize radius) => new(_datums, _lengths, _radii.SetItem(number, radius), IsLost);

    public bool Equals(OffsetData? other) =>
        ReferenceEquals(this, other)
        || (other is not null && IsLost == other.IsLost && _datums.SequenceEqual(other._datums) && _lengths.SequenceEqual(other._lengths)
            && _radii.SequenceEqual(other._radii));

    public override bool Equals(object? obj) => Equals(obj as OffsetData);

    public override int GetHashCode() => HashCode.Combine(_datums.Count, _lengths.Count, _radii.Count, IsLost);
}
