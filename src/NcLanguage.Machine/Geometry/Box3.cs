namespace NcLanguage.Machine.Geometry;

/// <summary>A box along the axes, in mm. <see cref="Min"/> is not above <see cref="Max"/> on any axis.</summary>
public readonly record struct Box3(Point3 Min, Point3 Max)
{
    /// <summary>True when the place lies in the box or on its surface.</summary>
    public bool Contains(Point3 p) =>
        p.X >= Min.X && p.X <= Max.X && p.Y >= Min.Y && p.Y <= Max.Y && p.Z >= Min.Z && p.Z <= Max.Z;
}
