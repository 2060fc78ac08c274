namespace NcLanguage.Checks.Drawing;

/// <summary>General tolerances for lengths that have none of their own on the drawing.</summary>
public static class GeneralTolerance
{
    /// <summary>± mm of ISO 2768-1, class v (very coarse), as a published table has them: which class a drawing is made to is not known, and what is off by more is off in all of them. Below 3 mm, where
    /// that class gives none, as up to 6 mm.</summary>
    public static double Coarsest(double mm) => mm switch
    {
        <= 6 => 0.5,
        <= 30 => 1,
        <= 120 => 1.5,
        <= 400 => 2.5,
        <= 1000 => 4,
        <= 2000 => 6,
        _ => 8,
    };
}
