namespace NcLanguage.Machine.Cutting;

/// <summary>What the table gives for one quantity: from the least to the greatest value, and who says so.</summary>
/// <param name="Least">m/min for speeds, mm for feeds per turn or tooth.</param>
/// <param name="Greatest">Not below <paramref name="Least"/>; the same unit.</param>
/// <param name="Material">The material whose row was found, which may be the family of the one asked for; "all materials" where that is not known.</param>
/// <param name="Source">The source of each row found, joined by semicolons.</param>
public readonly record struct CuttingRange(double Least, double Greatest, string Material, string Source);
